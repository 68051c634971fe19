/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.faultwright.language.server.NameInText;
import org.faultwright.procedure.Name;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.StatusLine;

/** Goes to where the name at the cursor is declared; "Back" in the Edit menu returns. */
public final class GoToDeclarationHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Optional<Name> declared = ActiveText.get().place().flatMap(place -> LiveTexts.get().current(place.live().document())
                .flatMap(live -> live.text().nameAt(place.offset())).flatMap(NameInText::declared));
        declared.ifPresent(name -> Editors.show(name.at()));
        StatusLine.say(event, declared.isPresent() ? Optional.empty()
                : Optional.of("There is no name at the cursor that is declared anywhere."));
        return null;
    }
}
