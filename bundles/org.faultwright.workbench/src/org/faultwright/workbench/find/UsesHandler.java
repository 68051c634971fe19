/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.swt.widgets.Display;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.language.server.FoundPlace;
import org.faultwright.language.server.NameInText;
import org.faultwright.language.server.OpenText;
import org.faultwright.procedure.Name;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.look.StatusLine;

/** Finds every place that names what is named at the cursor, or at the place that is chosen among those found, in all procedures. */
public final class UsesHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        IWorkbenchPage page = HandlerUtil.getActiveWorkbenchWindow(event).getActivePage();
        if (HandlerUtil.getActivePart(event) instanceof FindView view) {
            view.chosen().ifPresent(place -> ofPlace(page, place));
            return null;
        }
        Optional<Name> declared = ActiveText.get().place().flatMap(place -> LiveTexts.get().current(place.live().document())
                .flatMap(live -> live.text().nameAt(place.offset()))).flatMap(NameInText::declared);
        declared.ifPresent(name -> FindView.uses(page, name));
        StatusLine.say(event, declared.isPresent() ? Optional.empty() : Optional.of("There is no name at the cursor that is declared anywhere."));
        return null;
    }

    /** What is named in the words that were found, or what is declared there. */
    private static void ofPlace(IWorkbenchPage page, FoundPlace place) {
        Job.createSystem("Reading a text", (ICoreRunnable) monitor -> {
            OpenText text = LiveTexts.get().services().unchecked(place.at().source());
            Optional<Name> declared = text.nameAt(place.at().offset()).flatMap(NameInText::declared).or(() -> declared(text, place));
            Display.getDefault().asyncExec(() -> declared.ifPresent(name -> FindView.uses(page, name)));
        }).schedule();
    }

    private static Optional<Name> declared(OpenText text, FoundPlace place) {
        int at = place.name().isEmpty() ? -1 : text.source().lineText(place.at().line()).indexOf(place.name());
        return at < 0 ? Optional.empty() : text.nameAt(place.at().offset() - place.at().column() + 1 + at).flatMap(NameInText::declared);
    }
}
