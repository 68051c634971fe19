/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.IConfigurationElement;
import org.eclipse.core.runtime.IExecutableExtension;
import org.faultwright.workbench.look.StatusLine;

/** Goes along the path that proves the chosen finding. */
public final class FollowPathHandler extends AbstractHandler implements IExecutableExtension {
    private int direction = 1;

    @Override
    public void setInitializationData(IConfigurationElement element, String property, Object data) {
        direction = "previous".equals(data) ? -1 : 1;
    }

    @Override
    public Object execute(ExecutionEvent event) {
        ChosenFinding chosen = ChosenFinding.get();
        int before = chosen.step();
        chosen.goTo(before + direction);
        StatusLine.say(event, chosen.step() != before ? Optional.empty() : Optional.of(refusal(chosen)));
        return null;
    }

    private String refusal(ChosenFinding chosen) {
        if (chosen.finding().isEmpty()) {
            return "Choose a finding first; this goes along the path that proves it.";
        }
        if (chosen.finding().get().path().isEmpty()) {
            return "The chosen finding needs no path; its sentence proves it.";
        }
        return direction > 0 ? "This is the end of the path." : "This is the beginning of the path.";
    }
}
