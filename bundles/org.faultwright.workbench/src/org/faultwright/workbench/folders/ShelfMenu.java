/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.commands.IHandler;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.action.Action;
import org.eclipse.jface.action.IMenuManager;
import org.eclipse.jface.action.MenuManager;
import org.eclipse.jface.action.Separator;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.program.Program;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.IWorkbenchPartSite;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.Menus;

/** What can be done with a file or a folder: the menu under the right button, and the keys F2 and Delete. */
final class ShelfMenu {
    private static final String ENDING = ".procedure";

    private final TreeViewer tree;
    private final IWorkbenchWindow window;

    ShelfMenu(TreeViewer tree, IWorkbenchPartSite site) {
        this.tree = tree;
        this.window = site.getWorkbenchWindow();
        MenuManager menu = new MenuManager();
        menu.setRemoveAllWhenShown(true);
        menu.addMenuListener(this::fill);
        tree.getControl().setMenu(menu.createContextMenu(tree.getControl()));
        IHandlerService keys = site.getService(IHandlerService.class);
        keys.activateHandler(IWorkbenchCommandConstants.FILE_RENAME, handler(this::rename));
        keys.activateHandler(IWorkbenchCommandConstants.EDIT_DELETE, handler(this::delete));
    }

    /** Its key is listed with all others; it works while the shelf is in front. */
    private IHandler handler(Consumer<IFile> does) {
        return new AbstractHandler() {
            @Override
            public Object execute(ExecutionEvent event) {
                file().ifPresent(does);
                return null;
            }
        };
    }

    private Optional<IResource> chosen() {
        return tree.getStructuredSelection().getFirstElement() instanceof IResource resource ? Optional.of(resource) : Optional.empty();
    }

    private Optional<IFile> file() {
        return chosen().filter(IFile.class::isInstance).map(IFile.class::cast);
    }

    private void fill(IMenuManager menu) {
        file().ifPresent(file -> {
            menu.add(action("Open", file, Editors::open));
            menu.add(action("Rename\u2026\tF2", file, this::rename));
            menu.add(action("Delete\u2026\tDel", file, this::delete));
            menu.add(new Separator());
        });
        menu.add(Menus.item(window, "newProcedure"));
        menu.add(Menus.item(window, "newLibrary"));
        menu.add(Menus.item(window, "openFolder"));
        chosen().ifPresent(resource -> {
            menu.add(new Separator());
            menu.add(action("Open in the file manager", resource, ShelfMenu::showOutside));
            menu.add(action("Take the folder off", resource, this::takeOff));
        });
    }

    private static <T> Action action(String title, T of, Consumer<T> does) {
        Action action = new Action(title) {
            @Override
            public void run() {
                does.accept(of);
            }
        };
        return action;
    }

    private void rename(IFile file) {
        String before = file.getName().substring(0, file.getName().length() - ENDING.length());
        InputDialog dialog = new InputDialog(shell(), "Rename the file", "New name of the file \"" + file.getName()
                + "\". A library's file bears the name of the library.", before, typed -> problem(file, before, typed));
        if (dialog.open() == Window.OK) {
            change("renamed", file, () -> file.move(file.getFullPath().removeLastSegments(1).append(dialog.getValue() + ENDING), true,
                    new NullProgressMonitor()));
        }
    }

    private static String problem(IFile file, String before, String typed) {
        if (typed.equals(before)) {
            return "";
        }
        if (!typed.matches("\\w+")) {
            return "Use letters, digits and _.";
        }
        return file.getParent().getFile(new org.eclipse.core.runtime.Path(typed + ENDING)).exists()
                ? "There is a file of that name." : null;
    }

    private void delete(IFile file) {
        int answer = MessageDialog.open(MessageDialog.QUESTION, shell(), "Delete", "Delete the file \"" + file.getName()
                + "\" from the disk? This cannot be taken back here.", org.eclipse.swt.SWT.NONE, "Delete", "Cancel");
        if (answer == 0) {
            change("deleted", file, () -> file.delete(true, new NullProgressMonitor()));
        }
    }

    private static void showOutside(IResource resource) {
        Path path = resource.getLocation().toPath();
        Program.launch((resource instanceof IFile ? path.getParent() : path).toString());
    }

    private void takeOff(IResource resource) {
        Folders.takeOff(resource.getProject(), shell());
    }

    /** A change of files that may be refused. */
    private interface Change {
        void run() throws CoreException;
    }

    private void change(String what, IResource of, Change change) {
        try {
            change.run();
        } catch (CoreException refused) {
            MessageDialog.openInformation(shell(), "Procedures", "\"" + of.getName() + "\" could not be " + what
                    + ". May you write in its folder, and is it not open in another program?");
        }
    }

    private Shell shell() {
        return tree.getControl().getShell();
    }
}
