/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.reconciler.DirtyRegion;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.reconciler.IReconcilingStrategyExtension;
import org.eclipse.jface.text.reconciler.Reconciler;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.core.runtime.IProgressMonitor;
import org.faultwright.workbench.live.LiveTexts;

/** Checks the text a moment after the last key, on a thread of its own, and marks what was found. */
public final class CheckingReconciler extends Reconciler {
    private static final int MILLISECONDS_AFTER_A_KEY = 100;

    private final FindingMarks marks = new FindingMarks();
    private IDocument document;

    public CheckingReconciler() {
        setDelay(MILLISECONDS_AFTER_A_KEY);
        setIsIncrementalReconciler(false);
        setReconcilingStrategy(new CheckingStrategy(), IDocument.DEFAULT_CONTENT_TYPE);
    }

    @Override
    public void install(ITextViewer viewer) {
        if (viewer instanceof ISourceViewer source) {
            marks.install(source);
        }
        super.install(viewer);
    }

    @Override
    public void uninstall() {
        marks.uninstall();
        if (document != null) {
            LiveTexts.get().close(document);
        }
        super.uninstall();
    }

    private final class CheckingStrategy implements IReconcilingStrategy, IReconcilingStrategyExtension {
        @Override
        public void setDocument(IDocument opened) {
            if (document != null && document != opened) {
                LiveTexts.get().close(document);
            }
            document = opened;
        }

        @Override
        public void reconcile(DirtyRegion region, IRegion subRegion) {
            check();
        }

        @Override
        public void reconcile(IRegion partition) {
            check();
        }

        @Override
        public void setProgressMonitor(IProgressMonitor monitor) {
            // a check is too short to show progress for
        }

        @Override
        public void initialReconcile() {
            check();
        }

        private void check() {
            if (document != null) {
                LiveTexts.get().check(document);
            }
        }
    }
}
