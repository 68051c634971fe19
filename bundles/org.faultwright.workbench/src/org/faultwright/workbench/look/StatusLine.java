/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.Optional;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.action.IStatusLineManager;
import org.eclipse.ui.IEditorSite;
import org.eclipse.ui.IViewSite;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.HandlerUtil;

/** Sentences in the line at the foot of the window: a command that finds nothing to do says so. */
public final class StatusLine {
    private StatusLine() {
    }

    /** Says why a command did nothing; without a sentence, what was said before goes. */
    public static void say(ExecutionEvent event, Optional<String> sentence) {
        Optional.ofNullable(HandlerUtil.getActiveWorkbenchWindow(event)).map(IWorkbenchWindow::getActivePage)
                .map(IWorkbenchPage::getActivePart).flatMap(StatusLine::line)
                .ifPresent(line -> line.setMessage(sentence.orElse(null)));
    }

    private static Optional<IStatusLineManager> line(IWorkbenchPart part) {
        if (part.getSite() instanceof IEditorSite editor) {
            return Optional.of(editor.getActionBars().getStatusLineManager());
        }
        return part.getSite() instanceof IViewSite view ? Optional.of(view.getActionBars().getStatusLineManager()) : Optional.empty();
    }
}
