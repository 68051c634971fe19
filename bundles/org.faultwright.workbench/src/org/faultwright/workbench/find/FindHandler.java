/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;

/** Opens the view for finding, with what is selected in the text. */
public final class FindHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        String selected = HandlerUtil.getActivePart(event) instanceof ITextEditor editor
                && editor.getSelectionProvider().getSelection() instanceof ITextSelection text ? text.getText() : "";
        boolean words = selected != null && !selected.isBlank() && selected.indexOf('\n') < 0;
        FindView.open(HandlerUtil.getActiveWorkbenchWindow(event).getActivePage(), words ? "\"" + selected.replace("\"", "") + "\"" : "");
        return null;
    }
}
