/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.start;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.eclipse.core.resources.IResourceChangeEvent;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.publish.WholeFile;
import org.faultwright.workbench.live.Folders;

/** What comes before and right after the window: its workspace, a second window, a damaged workspace. */
public final class StartSequence {
    static final String TITLE = "Faultwright";
    static final String OPEN_ALREADY = "Faultwright is open already";
    static final String BEGUN_ANEW = "Damaged, and begun anew";
    private static final String SHOW = "Show that window";
    private static final String CANCEL = "Cancel";
    private static Map<Workspace.Part, Path> damaged = Map.of();

    private StartSequence() {
    }

    /**
     * @param beforeAsking takes away what would lie over a question
     * @return whether a window may open; otherwise the user knows why, or the other window is in front
     */
    public static boolean mayOpen(Runnable beforeAsking) {
        try {
            if (!Workspace.take()) {
                beforeAsking.run();
                if (!another()) {
                    return false;
                }
            }
        } catch (IOException refused) {
            beforeAsking.run();
            MessageDialog.openError(null, TITLE, "The folder " + Workspace.folder()
                    + " cannot be written to, so nothing could be kept there. Start with -data and another folder.");
            return false;
        }
        damaged = Workspace.open();
        return true;
    }

    private static boolean another() throws IOException {
        boolean named = Workspace.wasNamed();
        String words = "The workspace " + Workspace.folder() + " has a window already."
                + (named ? " For a second one, name another workspace after -data." : " A second one has a workspace of its own.");
        String[] buttons = named ? new String[] {SHOW, CANCEL} : new String[] {SHOW, "Open another window", CANCEL};
        int answer = MessageDialog.open(MessageDialog.QUESTION, null, OPEN_ALREADY, words, SWT.NONE, buttons);
        if (answer == 0) {
            Doorbell.ring(Workspace.folder());
        }
        return answer == 1 && !named && Workspace.takeAnother();
    }

    /** Opens again what was open in a workspace that had to be set aside, and says so. */
    public static void opened(Shell window) {
        List<Path> open = Folders.open();
        List<Path> missing = Workspace.listed().stream().filter(Files::isDirectory).filter(folder -> !open.contains(folder)).toList();
        Folders.takeOffUnreadable();
        missing.forEach(StartSequence::link);
        if (!damaged.isEmpty() || !missing.isEmpty()) {
            String words = words(damaged, missing);
            window.getDisplay().asyncExec(() -> MessageDialog.openInformation(window, BEGUN_ANEW, words));
        }
        ResourcesPlugin.getWorkspace().addResourceChangeListener(event -> writeList(),
                IResourceChangeEvent.POST_CHANGE);
        writeList();
        Doorbell.listen(window);
    }

    /** What was damaged, what has been done about it, and where the damaged files are. */
    static String words(Map<Workspace.Part, Path> damaged, List<Path> again) {
        StringBuilder words = new StringBuilder();
        if (damaged.containsKey(Workspace.Part.FOLDERS) || !again.isEmpty()) {
            words.append("The list of open folders was damaged and has been begun anew")
                    .append(again.isEmpty() ? ". " : ", with the folders that were open. ");
        }
        if (damaged.containsKey(Workspace.Part.ARRANGEMENT)) {
            words.append("The arrangement of the window was damaged; it is as at the first start. ");
        }
        words.append("Your procedures are untouched in their folders.");
        if (!damaged.isEmpty()) {
            words.append("\n\nWhat was damaged is kept in ")
                    .append(damaged.values().stream().map(Path::toString).collect(Collectors.joining(" and "))).append('.');
        }
        return words.toString();
    }

    private static void link(Path folder) {
        try {
            Folders.link(folder);
        } catch (CoreException refused) {
            ILog.of(StartSequence.class).warn("The folder " + folder + " could not be opened again.", refused);
        }
    }

    private static String written = "";

    /** Keeps the list of open folders where a damaged workspace does not take it along. */
    private static synchronized void writeList() {
        TreeSet<String> folders = new TreeSet<>();
        Folders.open().forEach(folder -> folders.add(folder.toString()));
        String list = String.join("\n", folders) + "\n";
        if (!list.equals(written)) {
            try {
                WholeFile.replace(Workspace.list(), list);
                written = list;
            } catch (IOException refused) {
                ILog.of(StartSequence.class).warn("The list of open folders could not be written.", refused);
            }
        }
    }
}
