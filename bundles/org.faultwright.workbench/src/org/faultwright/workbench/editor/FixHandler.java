/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.ISourceViewer;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.StatusLine;

/** Offers the fixes for the finding at the cursor. */
public final class FixHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        StatusLine.say(event, ActiveText.get().place().filter(FixHandler::hasFix).isPresent() ? Optional.empty()
                : Optional.of("No fix is offered at the cursor. Check, Next finding goes to the next finding."));
        ActiveText.get().editor().map(editor -> editor.getAdapter(ITextOperationTarget.class))
                .filter(target -> target.canDoOperation(ISourceViewer.QUICK_ASSIST))
                .ifPresent(target -> target.doOperation(ISourceViewer.QUICK_ASSIST));
        return null;
    }

    private static boolean hasFix(ActiveText.Place place) {
        return place.live().text().findingsAt(place.offset()).stream()
                .anyMatch(finding -> !LiveTexts.get().services().fixes(finding).isEmpty());
    }
}
