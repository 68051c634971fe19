/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.settings.dialog;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.faultwright.workbench.look.DialogParent;

/** Opens the settings. */
public final class SettingsHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        new SettingsDialog(DialogParent.shell()).open();
        return null;
    }
}
