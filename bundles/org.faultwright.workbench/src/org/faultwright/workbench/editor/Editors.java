/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.procedure.SourceRange;

/** Opens and finds editors. Only for the window's thread. */
public final class Editors {
    public static final String ID = "org.eclipse.ui.genericeditor.GenericEditor";

    private Editors() {
    }

    /** Opens the file that a range is in and selects it. */
    public static void show(SourceRange at) {
        file(at.source().name()).flatMap(Editors::open)
                .ifPresent(editor -> editor.selectAndReveal(at.offset(), at.length()));
    }

    public static Optional<ITextEditor> open(IFile file) {
        try {
            IEditorPart editor = IDE.openEditor(page().orElseThrow(), file, ID);
            return editor instanceof ITextEditor text ? Optional.of(text) : Optional.empty();
        } catch (PartInitException refused) {
            ILog.of(Editors.class).error("The file " + file + " cannot be opened.", refused);
            return Optional.empty();
        }
    }

    /** The editor that is in front. */
    public static Optional<ITextEditor> active() {
        return page().map(IWorkbenchPage::getActiveEditor).filter(ITextEditor.class::isInstance)
                .map(ITextEditor.class::cast);
    }

    public static Optional<IDocument> document(ITextEditor editor) {
        return Optional.ofNullable(editor.getDocumentProvider())
                .map(provider -> provider.getDocument(editor.getEditorInput()));
    }

    /** The file of the workspace that lies at this path. */
    public static Optional<IFile> file(String path) {
        IFile[] files = ResourcesPlugin.getWorkspace().getRoot().findFilesForLocationURI(Path.of(path).toUri());
        return files.length == 0 ? Optional.empty() : Optional.of(files[0]);
    }

    private static Optional<IWorkbenchPage> page() {
        IWorkbenchWindow window = PlatformUI.getWorkbench().getActiveWorkbenchWindow();
        return Optional.ofNullable(window).map(IWorkbenchWindow::getActivePage);
    }
}
