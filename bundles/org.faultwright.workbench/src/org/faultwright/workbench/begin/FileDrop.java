/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DropTarget;
import org.eclipse.swt.dnd.DropTargetAdapter;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;

/** Files and folders that are dropped onto the window: folders go onto the shelf, procedures are opened, tables begin a procedure. */
public final class FileDrop extends DropTargetAdapter {
    private static final String TITLE = "Open";
    private static final String ENDING = ".procedure";

    private final Supplier<Shell> window;

    private FileDrop(Supplier<Shell> window) {
        this.window = window;
    }

    /** Lets files be dropped onto a control. */
    public static void onto(Control control) {
        DropTarget target = new DropTarget(control, DND.DROP_COPY | DND.DROP_LINK | DND.DROP_MOVE | DND.DROP_DEFAULT);
        target.setTransfer(new Transfer[] {FileTransfer.getInstance()});
        target.addDropListener(new FileDrop(control::getShell));
    }

    /** The same for the place of the texts, which has a target of its own. */
    public static DropTargetAdapter forTexts(Supplier<Shell> window) {
        return new FileDrop(window);
    }

    @Override
    public void dragEnter(DropTargetEvent event) {
        // the files stay where they are
        event.detail = (event.operations & DND.DROP_COPY) != 0 ? DND.DROP_COPY : DND.DROP_LINK;
    }

    @Override
    public void drop(DropTargetEvent event) {
        if (event.data instanceof String[] paths) {
            List<Path> dropped = java.util.Arrays.stream(paths).map(Path::of).toList();
            // after the other window has its answer: what follows may ask something
            event.display.asyncExec(() -> open(dropped, window.get()));
        }
    }

    /** Opens a folder or a file. */
    public static void open(Path path, Shell shell) {
        open(List.of(path), shell);
    }

    public static void open(List<Path> dropped, Shell shell) {
        List<String> refused = new ArrayList<>();
        for (Path path : dropped) {
            try {
                if (Files.isDirectory(path)) {
                    if (!Folders.open().contains(path)) {
                        Folders.link(path);
                    }
                } else if (path.toString().endsWith(ENDING)) {
                    text(path);
                } else if (path.toString().toLowerCase(Locale.ROOT).matches(".*\\.(csv|tsv|xlsx)")) {
                    DroppedTable.begin(path, shell);
                } else {
                    refused.add("\"" + path.getFileName() + "\" is neither a procedure nor a table (CSV, XLSX).");
                }
            } catch (CoreException not) {
                refused.add(not.getStatus().getMessage());
            }
        }
        if (!refused.isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, String.join("\n", refused));
        }
    }

    /** A text is opened with its folder, so that the libraries beside it are found. */
    static void text(Path path) throws CoreException {
        Optional<IFile> file = Folders.file(path);
        if (file.isEmpty()) {
            Folders.link(path.getParent());
            file = Folders.file(path);
        }
        if (file.isPresent()) {
            file.get().refreshLocal(IResource.DEPTH_ZERO, new NullProgressMonitor());
            Editors.open(file.get());
        }
    }
}
