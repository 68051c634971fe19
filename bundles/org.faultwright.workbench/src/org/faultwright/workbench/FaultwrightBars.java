/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench;

import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.actions.ActionFactory;
import org.eclipse.ui.actions.ActionFactory.IWorkbenchAction;
import org.eclipse.ui.application.ActionBarAdvisor;
import org.eclipse.ui.application.IActionBarConfigurer;
import org.eclipse.ui.menus.CommandContributionItem;
import org.eclipse.ui.menus.CommandContributionItemParameter;

/** The menus and the tool bar; nothing in them that a technician has no use for. */
final class FaultwrightBars extends ActionBarAdvisor {
    private static final String OWN = "org.faultwright.workbench.";

    private IWorkbenchWindow window;
    private IWorkbenchAction save;
    private IWorkbenchAction undo;
    private IWorkbenchAction redo;

    FaultwrightBars(IActionBarConfigurer configurer) {
        super(configurer);
    }

    @Override
    protected void makeActions(IWorkbenchWindow made) {
        window = made;
        save = action(ActionFactory.SAVE);
        undo = action(ActionFactory.UNDO);
        redo = action(ActionFactory.REDO);
    }

    private IWorkbenchAction action(ActionFactory factory) {
        IWorkbenchAction action = factory.create(window);
        register(action);
        return action;
    }

    @Override
    protected void fillMenuBar(IMenuManager bar) {
        MenuManager file = menu(bar, "&File", "file");
        command(file, "newProcedure", "procedure");
        command(file, "openFolder", "folder");
        file.add(new Separator());
        file.add(save);
        file.add(action(ActionFactory.SAVE_ALL));
        file.add(action(ActionFactory.REVERT));
        file.add(new Separator());
        command(file, "publish", "publish");
        file.add(new Separator());
        file.add(action(ActionFactory.QUIT));

        MenuManager edit = menu(bar, "&Edit", "edit");
        edit.add(undo);
        edit.add(redo);
        edit.add(new Separator());
        edit.add(action(ActionFactory.CUT));
        edit.add(action(ActionFactory.COPY));
        edit.add(action(ActionFactory.PASTE));
        edit.add(action(ActionFactory.SELECT_ALL));
        edit.add(new Separator());
        edit.add(action(ActionFactory.FIND));
        edit.add(new Separator());
        command(edit, "rename", "act");
        command(edit, "format", "example");

        MenuManager check = menu(bar, "&Check", "check");
        command(check, "nextFinding", "findings");
        command(check, "previousFinding", "findings");
        check.add(new Separator());
        command(check, "nextOnPath", "nextInPath");
        command(check, "previousOnPath", "previousInPath");

        MenuManager help = menu(bar, "&Help", "help");
        command(help, "helpTopics", "note");
        help.add(new Separator());
        command(help, "about", "faultwright");
    }

    private static MenuManager menu(IMenuManager bar, String title, String id) {
        MenuManager menu = new MenuManager(title, OWN + id);
        bar.add(menu);
        return menu;
    }

    private void command(IMenuManager menu, String command, String picture) {
        menu.add(item(command, picture, CommandContributionItem.STYLE_PUSH));
    }

    private CommandContributionItem item(String command, String picture, int style) {
        CommandContributionItemParameter parameter = parameter(command, picture);
        parameter.style = style;
        return new CommandContributionItem(parameter);
    }

    private CommandContributionItemParameter parameter(String command, String picture) {
        CommandContributionItemParameter parameter = new CommandContributionItemParameter(window, null, OWN + command,
                CommandContributionItem.STYLE_PUSH);
        parameter.icon = Pictures.descriptor(picture).orElse(null);
        return parameter;
    }
}
