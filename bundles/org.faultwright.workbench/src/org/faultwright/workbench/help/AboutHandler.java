/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.runtime.Platform;
import org.eclipse.jface.dialogs.MessageDialog;
import org.faultwright.workbench.look.DialogParent;
import org.faultwright.workbench.look.Icons;

/** Says what this program is. */
public final class AboutHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        String version = Platform.getBundle("org.faultwright.workbench").getVersion().toString();
        new MessageDialog(DialogParent.shell(), "About Faultwright", Icons.of("faultwright").orElse(null),
                "Faultwright " + version + "\n\nA workbench for writing, proving and printing repair procedures.\n\n"
                        + "It computes; it does not declare anything safe. Local codes, the maker's instructions and "
                        + "licensed practice come first. Mains, stored energy and lithium cells are for trained people.\n\n"
                        + "\u00a9 2026 The Faultwright contributors. Eclipse Public License 2.0.",
                MessageDialog.NONE, 0, "Close").open();
        return null;
    }
}
