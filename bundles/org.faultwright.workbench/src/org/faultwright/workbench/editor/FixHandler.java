/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.ISourceViewer;
import org.faultwright.workbench.live.ActiveText;

/** Offers the fixes for the finding at the cursor. */
public final class FixHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        ActiveText.get().editor().map(editor -> editor.getAdapter(ITextOperationTarget.class))
                .filter(target -> target.canDoOperation(ISourceViewer.QUICK_ASSIST))
                .ifPresent(target -> target.doOperation(ISourceViewer.QUICK_ASSIST));
        return null;
    }
}
