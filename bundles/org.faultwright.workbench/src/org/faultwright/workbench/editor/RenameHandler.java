/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.language.server.NameInText;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.Renaming;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Gives the thing named at the cursor another name everywhere in the text. */
public final class RenameHandler extends AbstractHandler {
    private static final String TITLE = "Rename";

    @Override
    public Object execute(ExecutionEvent event) {
        Optional<ActiveText.Place> place = ActiveText.get().place();
        Optional<LiveText> live = place.flatMap(there -> LiveTexts.get().current(there.live().document()));
        live.ifPresent(text -> ask(HandlerUtil.getActiveShell(event), text, place.get().offset()));
        return null;
    }

    private static void ask(Shell shell, LiveText live, int offset) {
        OpenText text = live.text();
        Optional<NameInText> name = text.nameAt(offset);
        Optional<String> refused = Renaming.refusal(text, offset, "Another1");
        if (refused.isPresent()) {
            MessageDialog.openInformation(shell, TITLE, refused.get());
            return;
        }
        InputDialog dialog = new InputDialog(shell, TITLE, "New name of the " + name.orElseThrow().kind() + " "
                + name.get().name() + ", which stands at " + name.get().uses().size() + " places:",
                name.get().name().text(), typed -> Renaming.refusal(text, offset, typed).orElse(null));
        if (dialog.open() == Window.OK) {
            Fixing.apply(Renaming.rename(text, offset, dialog.getValue()), live.document());
        }
    }
}
