/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.TreeSet;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.publish.WholeFile;
import org.faultwright.workbench.shelf.Folders;

/** What comes before and right after the window: its workspace, a second window, a damaged workspace. */
public final class Starting {
    static final String TITLE = "Faultwright";
    private static Optional<Path> damaged = Optional.empty();

    private Starting() {
    }

    /** @return whether a window may open; otherwise the user knows why, or the other window is in front */
    public static boolean mayOpen() {
        try {
            if (!Workspace.take() && !another()) {
                return false;
            }
        } catch (IOException refused) {
            MessageDialog.openError(null, TITLE, "The folder " + Workspace.folder()
                    + " cannot be written to, so nothing could be kept there. Start with -data and another folder.");
            return false;
        }
        damaged = Workspace.open();
        return true;
    }

    private static boolean another() throws IOException {
        int answer = MessageDialog.open(MessageDialog.QUESTION, null, TITLE, "Faultwright is open already, with the workspace "
                + Workspace.folder() + ".", SWT.NONE, "Show that window", "Open another window", "Cancel");
        if (answer == 0) {
            Doorbell.ring(Workspace.folder());
            return false;
        }
        if (answer != 1) {
            return false;
        }
        if (!Workspace.takeAnother()) {
            MessageDialog.openInformation(null, TITLE, "This workspace was named when Faultwright was started. Name another one"
                    + " after -data to have a second window.");
            return false;
        }
        return true;
    }

    /** Opens again what was open in a workspace that had to be set aside, and says so. */
    public static void opened(Shell window) {
        boolean empty = ResourcesPlugin.getWorkspace().getRoot().getProjects().length == 0;
        if (damaged.isPresent() || empty && !Workspace.listed().isEmpty()) {
            Workspace.listed().stream().filter(Files::isDirectory).forEach(Starting::link);
            String kept = damaged.map(aside -> " What was damaged is kept in " + aside + ".").orElse("");
            window.getDisplay().asyncExec(() -> MessageDialog.openInformation(window, TITLE, "The workspace was damaged and has been"
                    + " begun anew, with the folders that were open. Your procedures are untouched in their folders." + kept));
        }
        ResourcesPlugin.getWorkspace().addResourceChangeListener(event -> writeList(),
                IResourceChangeEvent.POST_CHANGE);
        writeList();
        Doorbell.listen(window);
    }

    private static void link(Path folder) {
        try {
            Folders.link(folder);
        } catch (CoreException refused) {
            ILog.of(Starting.class).warn("The folder " + folder + " could not be opened again.", refused);
        }
    }

    private static String written = "";

    /** Keeps the list of open folders where a damaged workspace does not take it along. */
    private static synchronized void writeList() {
        TreeSet<String> folders = new TreeSet<>();
        for (IProject project : ResourcesPlugin.getWorkspace().getRoot().getProjects()) {
            try {
                for (IResource member : project.isOpen() ? project.members() : new IResource[0]) {
                    if (member.isLinked() && member.getLocation() != null) {
                        folders.add(member.getLocation().toOSString());
                    }
                }
            } catch (CoreException gone) {
                // a folder that is being taken off the shelf at this moment
                continue;
            }
        }
        String list = String.join("\n", folders) + "\n";
        if (!list.equals(written)) {
            try {
                WholeFile.replace(Workspace.list(), list);
                written = list;
            } catch (IOException refused) {
                ILog.of(Starting.class).warn("The list of open folders could not be written.", refused);
            }
        }
    }
}
