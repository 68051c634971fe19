/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.welcome;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.ui.handlers.HandlerUtil;

/** Shows the welcome. */
public final class WelcomeHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        Welcome.open(HandlerUtil.getActiveWorkbenchWindow(event).getActivePage());
        return null;
    }
}
