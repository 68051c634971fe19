/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.handlers.HandlerUtil;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.language.TextFormatter;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Lays the text in front out evenly. */
public final class FormatHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Optional<LiveText> live = ActiveText.get().place()
                .flatMap(place -> LiveTexts.get().current(place.live().document()));
        if (live.isPresent() && !live.get().text().document().problems().isEmpty()) {
            MessageDialog.openInformation(HandlerUtil.getActiveShell(event), "Lay out evenly",
                    "This text cannot be read in full yet; see the findings, then lay it out.");
            return null;
        }
        live.ifPresent(text -> format(text.document()));
        return null;
    }

    private static void format(IDocument document) {
        String before = document.get();
        String after = TextFormatter.format(before);
        if (!after.equals(before)) {
            Optional<ITextEditor> editor = ActiveText.get().editor();
            int offset = ActiveText.get().place().map(ActiveText.Place::offset).orElse(0);
            document.set(after);
            editor.ifPresent(open -> open.selectAndReveal(Math.min(offset, after.length()), 0));
        }
    }
}
