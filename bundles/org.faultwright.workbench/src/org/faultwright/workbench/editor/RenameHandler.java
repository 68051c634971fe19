/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.server.NameInText;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.Renaming;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.DialogParent;

/** Gives the thing named at the cursor another name, in every file that names it. */
public final class RenameHandler extends AbstractHandler {
    static final String TITLE = "Rename";

    @Override
    public Object execute(ExecutionEvent event) {
        Optional<ActiveText.Place> place = ActiveText.get().place();
        Optional<LiveText> live = place.flatMap(there -> LiveTexts.get().current(there.live().document()));
        live.ifPresent(text -> ask(DialogParent.shell(), text, place.get().offset()));
        return null;
    }

    /** Asks for another name of what is named at this place of a text. */
    public static void ask(Shell shell, LiveText live, int offset) {
        OpenText text = live.text();
        Optional<NameInText> name = text.nameAt(offset);
        if (name.flatMap(NameInText::declared).isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, Renaming.refusal(text, offset, "Another1")
                    .orElse("There is no name at the cursor."));
            return;
        }
        InputDialog dialog = new InputDialog(shell, TITLE, "New name of the " + name.get().kind().word() + " \"" + name.get().name()
                + "\":", name.get().name().text(), typed -> refusal(text, name.get(), typed));
        if (dialog.open() == Window.OK) {
            rename(shell, name.get(), dialog.getValue());
        }
    }

    private static String refusal(OpenText text, NameInText name, String typed) {
        if (typed.equals(name.name().text())) {
            return "";
        }
        return Renaming.unfit(typed).or(() -> Renaming.taken(text, name, typed)).orElse(null);
    }

    /** Shows the places where there are several files, and writes the name. */
    static void rename(Shell shell, NameInText name, String typed) {
        try {
            NewName renaming = NewName.of(name.declared().orElseThrow(), typed);
            Optional<String> refused = renaming.refusal();
            if (refused.isPresent()) {
                MessageDialog.openInformation(shell, TITLE, "\"" + typed + "\" cannot be its name: " + refused.get());
                return;
            }
            if (renaming.edits().size() > 1 && new RenamePreview(shell, renaming).open() != Window.OK) {
                return;
            }
            renaming.write();
        } catch (CoreException refused) {
            MessageDialog.openInformation(shell, TITLE, refused.getStatus().getMessage());
        }
    }
}
