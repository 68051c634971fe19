/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.IConfigurationElement;
import org.eclipse.core.runtime.IExecutableExtension;

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
        chosen.goTo(chosen.step() + direction);
        return null;
    }
}
