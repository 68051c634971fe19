/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import java.util.Map;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.menus.CommandContributionItem;
import org.eclipse.ui.menus.CommandContributionItemParameter;

/** Entries of menus for our own commands, each with its picture. */
public final class Menus {
    private static final String OWN = "org.faultwright.workbench.";
    private static final Map<String, String> PICTURES = Map.ofEntries(Map.entry("newText", "procedure"),
            Map.entry("openFolder", "folder"), Map.entry("publish", "publish"), Map.entry("nextFinding", "findings"),
            Map.entry("previousFinding", "findings"), Map.entry("nextOnPath", "nextInPath"),
            Map.entry("previousOnPath", "previousInPath"), Map.entry("helpTopics", "note"),
            Map.entry("about", "faultwright"), Map.entry("walk", "walk"),
            Map.entry("faultTable", "table"));

    private Menus() {
    }

    /** @param command the last part of the command's id */
    public static CommandContributionItem item(IWorkbenchWindow window, String command) {
        CommandContributionItemParameter parameter = new CommandContributionItemParameter(window, null, OWN + command,
                CommandContributionItem.STYLE_PUSH);
        parameter.icon = Pictures.descriptor(PICTURES.getOrDefault(command, "none")).orElse(null);
        return new CommandContributionItem(parameter);
    }
}
