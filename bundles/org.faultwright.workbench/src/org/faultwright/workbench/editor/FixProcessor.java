/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.stream.Stream;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.contentassist.IContextInformation;
import org.eclipse.jface.text.quickassist.IQuickAssistInvocationContext;
import org.eclipse.jface.text.quickassist.IQuickAssistProcessor;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.graphics.Point;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.Icons;

/** Offers the fixes of what was found at the cursor. */
public final class FixProcessor implements IQuickAssistProcessor {
    @Override
    public ICompletionProposal[] computeQuickAssistProposals(IQuickAssistInvocationContext context) {
        IDocument document = context.getSourceViewer().getDocument();
        return LiveTexts.get().of(document).filter(LiveText::isCurrent).stream()
                .flatMap(live -> live.text().findingsAt(context.getOffset()).stream().flatMap(FixProcessor::offered))
                .toArray(ICompletionProposal[]::new);
    }

    /** Only what was tried: each one takes a check of the whole text. */
    private static Stream<ICompletionProposal> offered(Finding finding) {
        return LiveTexts.get().services().fixes(finding).stream().map(fix -> new Offered(finding, fix));
    }

    @Override
    public boolean canFix(Annotation annotation) {
        return annotation instanceof FindingMark mark && !mark.finding().fixes().isEmpty();
    }

    @Override
    public boolean canAssist(IQuickAssistInvocationContext context) {
        return true;
    }

    @Override
    public String getErrorMessage() {
        return null;
    }

    private record Offered(Finding finding, Fix fix) implements ICompletionProposal {
        @Override
        public void apply(IDocument document) {
            FixApplication.apply(fix, document);
        }

        @Override
        public String getDisplayString() {
            return fix.title();
        }

        @Override
        public String getAdditionalProposalInfo() {
            return finding.message() + "\n" + finding.advice();
        }

        @Override
        public Image getImage() {
            return Icons.of("do").orElse(null);
        }

        @Override
        public Point getSelection(IDocument document) {
            return FixApplication.toSelect(fix, document);
        }

        @Override
        public IContextInformation getContextInformation() {
            return null;
        }
    }
}
