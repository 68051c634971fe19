/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import java.util.Arrays;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;

/** The open folders and the procedure texts in them; whatever else lies there stays out of sight. */
final class ShelfContent implements ITreeContentProvider {
    @Override
    public Object[] getElements(Object root) {
        return getChildren(root);
    }

    @Override
    public Object[] getChildren(Object parent) {
        if (!(parent instanceof IContainer folder) || !folder.isAccessible()) {
            return new Object[0];
        }
        if (folder instanceof IProject project && Folders.linked(project).isPresent()) {
            return getChildren(Folders.linked(project).get());
        }
        try {
            return Arrays.stream(folder.members()).filter(ShelfContent::belongs).toArray();
        } catch (CoreException unreadable) {
            ILog.of(ShelfContent.class).warn("The folder " + folder.getFullPath() + " cannot be read.", unreadable);
            return new Object[0];
        }
    }

    private static boolean belongs(IResource resource) {
        return FolderDocuments.isProcedureText(resource)
                || resource instanceof IContainer && !resource.getName().startsWith(".");
    }

    @Override
    public Object getParent(Object element) {
        if (!(element instanceof IResource resource)) {
            return null;
        }
        IContainer parent = resource.getParent();
        return parent instanceof IFolder folder && folder.isLinked() ? folder.getProject() : parent;
    }

    @Override
    public boolean hasChildren(Object element) {
        return getChildren(element).length > 0;
    }
}
