/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.ui.IWorkbenchWindow;
import org.faultwright.workbench.begin.FileDrop;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.RecentFolders;

/** The menu of the folders that were open lately and are not now. */
public final class RecentMenu {
    private RecentMenu() {
    }

    public static MenuManager of(IWorkbenchWindow window) {
        MenuManager menu = new MenuManager("&Recent folders", "org.faultwright.workbench.recent");
        menu.setRemoveAllWhenShown(true);
        menu.addMenuListener(shown -> fill(shown, window));
        menu.add(none());
        return menu;
    }

    private static void fill(IMenuManager menu, IWorkbenchWindow window) {
        List<Path> open = Folders.open();
        RecentFolders.all().stream().filter(folder -> !open.contains(folder) && Files.isDirectory(folder)).forEach(folder -> menu.add(new Action(
                folder.toString().replace("&", "&&")) {
            @Override
            public void run() {
                FileDrop.open(folder, window.getShell());
            }
        }));
        if (menu.isEmpty()) {
            menu.add(none());
        }
    }

    private static Action none() {
        Action none = new Action("None") {
        };
        none.setEnabled(false);
        return none;
    }
}
