/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.faultwright.workbench.live.ActiveText;

/** Makes the selected lines comments, or text again where all of them are comments. */
public final class ToggleCommentHandler extends AbstractHandler {
    private static final String COMMENT = "//";

    @Override
    public Object execute(ExecutionEvent event) {
        ActiveText.get().editor().filter(ProcedureEditor.class::isInstance).map(ProcedureEditor.class::cast)
                .filter(ProcedureEditor::validateEditorInputState).ifPresent(ToggleCommentHandler::toggle);
        return null;
    }

    static void toggle(ProcedureEditor editor) {
        IDocument document = editor.document();
        Position selected = editor.selection();
        try {
            int first = document.getLineOfOffset(selected.getOffset());
            int last = document.getLineOfOffset(Math.max(selected.getOffset(), selected.getOffset() + selected.getLength() - 1));
            boolean comments = true;
            for (int line = first; line <= last; line++) {
                String text = text(document, line);
                comments &= text.isBlank() || text.stripLeading().startsWith(COMMENT);
            }
            List<DocumentEdits.Edit> edits = new ArrayList<>();
            for (int line = first; line <= last; line++) {
                String text = text(document, line);
                if (!text.isBlank()) {
                    int at = document.getLineOffset(line) + text.length() - text.stripLeading().length();
                    edits.add(new DocumentEdits.Edit(at, comments ? COMMENT.length() : 0, comments ? "" : COMMENT));
                }
            }
            DocumentEdits.applyKeepingSelection(edits, editor, document);
        } catch (BadLocationException changed) {
            ILog.of(ToggleCommentHandler.class).error("The lines could not be made comments.", changed);
        }
    }

    private static String text(IDocument document, int line) throws BadLocationException {
        return document.get(document.getLineOffset(line), document.getLineInformation(line).getLength());
    }
}
