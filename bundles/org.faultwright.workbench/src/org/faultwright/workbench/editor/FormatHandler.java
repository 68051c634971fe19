/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.faultwright.language.TextFormatter;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.DialogParent;

/** Lays the text in front out evenly. */
public final class FormatHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Optional<LiveText> live = ActiveText.get().place()
                .flatMap(place -> LiveTexts.get().current(place.live().document()));
        if (live.isPresent() && !live.get().text().document().problems().isEmpty()) {
            MessageDialog.openInformation(DialogParent.shell(), "Format",
                    "This text cannot be read in full yet. See the findings, then format it.");
            return null;
        }
        live.flatMap(text -> ActiveText.get().editor()).filter(ProcedureEditor.class::isInstance)
                .map(ProcedureEditor.class::cast).filter(ProcedureEditor::validateEditorInputState)
                .ifPresent(FormatHandler::format);
        return null;
    }

    /** Changes only the white space that differs, and leaves cursor and selection on their words. */
    static void format(ProcedureEditor editor) {
        String before = editor.document().get();
        List<DocumentEdits.Edit> edits = DocumentEdits.between(before, TextFormatter.format(before));
        try {
            DocumentEdits.applyKeepingSelection(edits, editor, editor.document());
        } catch (BadLocationException changed) {
            ILog.of(FormatHandler.class).error("The text changed while it was formatted.", changed);
        }
    }
}
