/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.look;

import java.util.Map;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.menus.CommandContributionItem;
import org.eclipse.ui.menus.CommandContributionItemParameter;

/** Entries of menus for our own commands, each with its picture. */
public final class Menus {
    private static final String OWN = "org.faultwright.workbench.";
    private static final Map<String, String> PICTURES = Map.ofEntries(Map.entry("newProcedure", "procedure"),
            Map.entry("newLibrary", "library"), Map.entry("print", "card"), Map.entry("welcome", "faultwright"),
            Map.entry("openFolder", "folder"), Map.entry("publish", "publish"), Map.entry("nextFinding", "findings"),
            Map.entry("previousFinding", "findings"), Map.entry("nextOnPath", "nextInPath"),
            Map.entry("previousOnPath", "previousInPath"), Map.entry("helpTopics", "note"),
            Map.entry("about", "faultwright"), Map.entry("walk", "walk"), Map.entry("find", "find"),
            Map.entry("compare", "compare"), Map.entry("faultTable", "table"));

    private Menus() {
    }

    /** @param command the last part of the command's id */
    public static CommandContributionItem item(IWorkbenchWindow window, String command) {
        CommandContributionItemParameter parameter = new CommandContributionItemParameter(window, null, OWN + command,
                CommandContributionItem.STYLE_PUSH);
        parameter.icon = Icons.descriptor(PICTURES.getOrDefault(command, "none")).orElse(null);
        return new CommandContributionItem(parameter);
    }

    /** Does what an entry of that command would do. */
    public static void run(String command) {
        try {
            PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand(OWN + command, null);
        } catch (CommandException impossible) {
            ILog.of(Menus.class).error("The command " + command + " cannot be run.", impossible);
        }
    }
}
