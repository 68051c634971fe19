/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.core.runtime.Path;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.workbench.editor.Editors;

/** Begins a procedure as a file of its own, with its blanks. */
public final class NewProcedureHandler extends AbstractHandler {
    private static final String TITLE = "New procedure";

    @Override
    public Object execute(ExecutionEvent event) {
        Shell shell = HandlerUtil.getActiveShell(event);
        IContainer folder = folder(event);
        if (folder == null) {
            MessageDialog.openInformation(shell, TITLE, "Open a folder of procedures first; the new one is put there.");
            return null;
        }
        InputDialog dialog = new InputDialog(shell, TITLE, "Name of the procedure, such as CalderFaintLabels:", "",
                name -> problem(folder, name));
        if (dialog.open() == Window.OK) {
            create(shell, folder.getFile(new Path(dialog.getValue() + ".procedure")), dialog.getValue());
        }
        return null;
    }

    private static String problem(IContainer folder, String name) {
        if (!Beginning.isName(name)) {
            return "Use letters and digits, a letter first; a word of the language cannot be a name.";
        }
        return folder.getFile(new Path(name + ".procedure")).exists() ? "There is a procedure of that name." : null;
    }

    private static void create(Shell shell, IFile file, String name) {
        try {
            file.create(new ByteArrayInputStream(Beginning.procedure(name).text().getBytes(StandardCharsets.UTF_8)), true,
                    new NullProgressMonitor());
            Editors.open(file);
        } catch (CoreException refused) {
            MessageDialog.openError(shell, TITLE, "The file cannot be made: " + refused.getMessage());
        }
    }

    private static IContainer folder(ExecutionEvent event) {
        if (HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection selection
                && selection.getFirstElement() instanceof IResource resource) {
            return resource instanceof IContainer container ? container : resource.getParent();
        }
        return java.util.Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects())
                .filter(project -> project.isOpen()).findFirst().orElse(null);
    }
}
