/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.ui.handlers.HandlerUtil;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.look.DialogParent;

/** Asks for a new procedure, to be put into the folder that is at hand. */
public final class NewProcedureHandler extends AbstractHandler {
    @Override
    public Object execute(ExecutionEvent event) {
        new NewProcedureDialog(DialogParent.shell(), folder(event)).open();
        return null;
    }

    /** The one chosen on the shelf, or of the text in front, or the first on the shelf; never the demo, which is looked at. */
    static Path folder(ExecutionEvent event) {
        Optional<IContainer> chosen = HandlerUtil.getCurrentSelection(event) instanceof IStructuredSelection selection
                && selection.getFirstElement() instanceof IResource resource ? Optional.of(resource instanceof IProject project ? Folders.place(project)
                        : resource instanceof IContainer container ? container : resource.getParent()) : Optional.empty();
        return chosen.or(() -> Editors.active().map(editor -> editor.getEditorInput().getAdapter(IFile.class)).map(IFile::getParent))
                .filter(folder -> !folder.getProject().getName().equals(Folders.DEMO)).map(IContainer::getLocation).map(location -> location.toPath())
                .orElseGet(PlacePage::atHand);
    }
}
