/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.text.DefaultInformationControl;
import org.eclipse.jface.text.IAutoEditStrategy;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.contentassist.ContentAssistant;
import org.eclipse.jface.text.contentassist.IContentAssistant;
import org.eclipse.jface.text.hyperlink.IHyperlinkDetector;
import org.eclipse.jface.text.presentation.IPresentationReconciler;
import org.eclipse.jface.text.quickassist.IQuickAssistAssistant;
import org.eclipse.jface.text.quickassist.QuickAssistAssistant;
import org.eclipse.jface.text.reconciler.IReconciler;
import org.eclipse.jface.text.source.IAnnotationHover;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.text.source.SourceViewerConfiguration;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Display;

/** What the editor of a procedure does: colours, checks, proposes, explains and mends. Nothing else is built in. */
final class ProcedureConfiguration extends SourceViewerConfiguration {
    static final int INDENT = 4;

    @Override
    public IPresentationReconciler getPresentationReconciler(ISourceViewer viewer) {
        return new ColouringReconciler();
    }

    @Override
    public IReconciler getReconciler(ISourceViewer viewer) {
        return new CheckingReconciler();
    }

    @Override
    public IContentAssistant getContentAssistant(ISourceViewer viewer) {
        ContentAssistant assistant = new ContentAssistant(true);
        assistant.setContentAssistProcessor(new CompletionProcessor(), IDocument.DEFAULT_CONTENT_TYPE);
        assistant.setInformationControlCreator(ProcedureConfiguration::plain);
        assistant.enableAutoActivation(true);
        assistant.enableAutoInsert(false);
        assistant.setAutoActivationDelay(300);
        assistant.setShowEmptyList(true); // whoever asks is told that there is nothing
        assistant.setEmptyMessage(CompletionProcessor.NOTHING_FITS);
        Display display = viewer.getTextWidget().getDisplay();
        assistant.setProposalSelectorBackground(display.getSystemColor(SWT.COLOR_LIST_BACKGROUND));
        assistant.setProposalSelectorForeground(display.getSystemColor(SWT.COLOR_LIST_FOREGROUND));
        return assistant;
    }

    @Override
    public IQuickAssistAssistant getQuickAssistAssistant(ISourceViewer viewer) {
        QuickAssistAssistant assistant = new QuickAssistAssistant();
        assistant.setQuickAssistProcessor(new FixProcessor());
        Display display = viewer.getTextWidget().getDisplay();
        assistant.setProposalSelectorBackground(display.getSystemColor(SWT.COLOR_LIST_BACKGROUND));
        assistant.setProposalSelectorForeground(display.getSystemColor(SWT.COLOR_LIST_FOREGROUND));
        assistant.setInformationControlCreator(ProcedureConfiguration::plain);
        return assistant;
    }

    private static DefaultInformationControl plain(org.eclipse.swt.widgets.Shell parent) {
        return new DefaultInformationControl(parent, true);
    }

    @Override
    public IInformationControlCreator getInformationControlCreator(ISourceViewer viewer) {
        return ProcedureConfiguration::plain;
    }

    @Override
    public ITextHover getTextHover(ISourceViewer viewer, String contentType) {
        return new ProcedureHover();
    }

    @Override
    public IAnnotationHover getAnnotationHover(ISourceViewer viewer) {
        return new MarginHover();
    }

    @Override
    public IHyperlinkDetector[] getHyperlinkDetectors(ISourceViewer viewer) {
        return new IHyperlinkDetector[] {new NameHyperlinks()};
    }

    @Override
    public IAutoEditStrategy[] getAutoEditStrategies(ISourceViewer viewer, String contentType) {
        return new IAutoEditStrategy[] {new IndentInBraces()};
    }

    @Override
    public int getTabWidth(ISourceViewer viewer) {
        return INDENT;
    }
}
