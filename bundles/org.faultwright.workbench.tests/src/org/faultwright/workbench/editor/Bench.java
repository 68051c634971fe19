/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.io.ByteArrayInputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.live.LiveTexts;

/** A folder of its own for a test that changes files. */
public final class Bench implements AutoCloseable {
    private static final NullProgressMonitor NOBODY = new NullProgressMonitor();
    private final IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject("a bench for tests");

    public Bench() throws CoreException {
        if (project.exists()) {
            project.delete(true, true, NOBODY);
        }
        project.create(NOBODY);
        project.open(NOBODY);
    }

    public IFile file(String name, String text) throws CoreException {
        return file(name, text, StandardCharsets.UTF_8);
    }

    public IFile file(String name, String text, Charset charset) throws CoreException {
        IFile file = project.getFile(name);
        file.create(new ByteArrayInputStream(text.getBytes(charset)), true, NOBODY);
        return file;
    }

    public static Path path(IFile file) {
        return file.getLocation().toPath();
    }

    public ProcedureEditor open(IFile file) {
        ProcedureEditor editor = (ProcedureEditor) Editors.open(file).orElseThrow();
        Waiting.until("the text is checked", () -> LiveTexts.get().of(editor.document()).isPresent());
        return editor;
    }

    @Override
    public void close() throws CoreException {
        PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage().closeAllEditors(false);
        project.delete(true, true, NOBODY);
    }
}
