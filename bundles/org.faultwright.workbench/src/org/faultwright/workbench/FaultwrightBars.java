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
import org.faultwright.workbench.folders.RecentMenu;
import org.faultwright.workbench.look.Menus;

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
        save = action(ActionFactory.SAVE, "&Save");
        undo = action(ActionFactory.UNDO);
        redo = action(ActionFactory.REDO);
    }

    private IWorkbenchAction action(ActionFactory factory) {
        IWorkbenchAction action = factory.create(window);
        register(action);
        return action;
    }

    /** In our own words; the platform's speak of editors and of resources. */
    private IWorkbenchAction action(ActionFactory factory, String words) {
        IWorkbenchAction action = action(factory);
        action.setText(words);
        return action;
    }

    @Override
    protected void fillMenuBar(IMenuManager bar) {
        MenuManager file = menu(bar, "&File", "file");
        commands(file, "newProcedure", "newLibrary", "openFolder");
        file.add(RecentMenu.of(window));
        file.add(new Separator());
        file.add(save);
        file.add(action(ActionFactory.SAVE_AS, "Save &as\u2026"));
        file.add(action(ActionFactory.SAVE_ALL, "Save a&ll"));
        file.add(action(ActionFactory.REVERT, "&Back to the saved text"));
        file.add(action(ActionFactory.CLOSE, "&Close"));
        file.add(new Separator());
        commands(file, "publish", "print");
        file.add(new Separator());
        file.add(action(ActionFactory.QUIT, "&Quit"));

        MenuManager edit = menu(bar, "&Edit", "edit");
        edit.add(undo);
        edit.add(redo);
        edit.add(new Separator());
        edit.add(action(ActionFactory.CUT, "Cu&t"));
        edit.add(action(ActionFactory.COPY, "&Copy"));
        edit.add(action(ActionFactory.PASTE, "&Paste"));
        edit.add(action(ActionFactory.SELECT_ALL, "Select &all"));
        edit.add(new Separator());
        edit.add(action(ActionFactory.FIND, "&Find and replace\u2026"));
        commands(edit, "find");
        edit.add(new Separator());
        commands(edit, "goToDeclaration", "uses");
        edit.add(action(ActionFactory.BACKWARD_HISTORY));
        edit.add(action(ActionFactory.FORWARD_HISTORY));
        edit.add(new Separator());
        commands(edit, "rename", "format", "toggleComment");
        edit.add(new Separator());
        commands(edit, "settings");

        MenuManager check = menu(bar, "&Check", "check");
        commands(check, "nextFinding", "previousFinding", "fix", "fixAll");
        check.add(new Separator());
        commands(check, "nextOnPath", "previousOnPath");
        check.add(new Separator());
        commands(check, "walk", "faultTable", "compare");

        MenuManager help = menu(bar, "&Help", "help");
        commands(help, "welcome", "helpTopics");
        help.add(new Separator());
        commands(help, "about");
    }

    private static MenuManager menu(IMenuManager bar, String title, String id) {
        MenuManager menu = new MenuManager(title, OWN + id);
        bar.add(menu);
        return menu;
    }

    private void commands(IMenuManager menu, String... commands) {
        for (String command : commands) {
            menu.add(Menus.item(window, command));
        }
    }
}
