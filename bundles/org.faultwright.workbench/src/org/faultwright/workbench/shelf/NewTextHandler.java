/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Path;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.workbench.editor.Editors;

/** Begins a procedure or a library as a file of its own, with remarks to be written over. */
public final class NewTextHandler extends AbstractHandler {
    static final String TITLE = "New";
    static final String ENDING = ".procedure";
    private static final String LIBRARIES = "library";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = HandlerUtil.getActiveShell(event);
        Optional<IContainer> folder = folder(event);
        if (folder.isEmpty()) {
            MessageDialog.openInformation(shell, TITLE, "Open a folder of procedures first; the new one is put there.");
            return null;
        }
        NewTextDialog dialog = new NewTextDialog(shell, folder.get());
        if (dialog.open() == Window.OK) {
            create(shell, dialog.file(), dialog.beginning());
        }
        return null;
    }

    private static void create(Shell shell, IFile file, Beginning beginning) {
        try {
            file.create(new ByteArrayInputStream(beginning.text().getBytes(StandardCharsets.UTF_8)), true, new NullProgressMonitor());
            Editors.open(file);
        } catch (CoreException refused) {
            MessageDialog.openInformation(shell, TITLE, "\"" + file.getName() + "\" could not be made in " + file.getParent().getLocation()
                    + ". Is there room, and may you write there?");
        }
    }

    /** Where a new text of a kind goes: libraries beside the others, where there is a folder for them. */
    static IFile file(IContainer folder, boolean library, String name) {
        IFolder libraries = folder.getFolder(new Path(LIBRARIES));
        IContainer into = !library && folder.getName().equals(LIBRARIES) && !(folder instanceof IProject) ? folder.getParent()
                : library && libraries.exists() ? libraries : folder;
        return into.getFile(new Path(name + ENDING));
    }

    private static Optional<IContainer> folder(ExecutionEvent event) {
        if (HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection selection
                && selection.getFirstElement() instanceof IResource resource) {
            return Optional.of(resource instanceof IProject project ? Folders.place(project)
                    : resource instanceof IContainer container ? container : resource.getParent());
        }
        return Editors.active().map(editor -> editor.getEditorInput().getAdapter(IFile.class)).map(IFile::getParent)
                .or(() -> Folders.all().stream().findFirst().map(Folders::place));
    }
}
