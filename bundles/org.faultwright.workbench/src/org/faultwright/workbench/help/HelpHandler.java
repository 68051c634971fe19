/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;

/** Opens the help. */
public final class HelpHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        HelpView.showTopic(HelpTopics.FIRST);
        return null;
    }
}
