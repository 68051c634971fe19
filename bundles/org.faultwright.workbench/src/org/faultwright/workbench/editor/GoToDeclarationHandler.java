/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.faultwright.language.server.NameInText;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveTexts;

/** Goes to where the name at the cursor is declared; "Back" in the Edit menu returns. */
public final class GoToDeclarationHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        ActiveText.get().place().ifPresent(place -> LiveTexts.get().current(place.live().document())
                .flatMap(live -> live.text().nameAt(place.offset())).flatMap(NameInText::declared)
                .ifPresent(declared -> Editors.show(declared.at())));
        return null;
    }
}
