/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.procedure.SourceRange;
import org.faultwright.workbench.files.LargestText;

/** Opens and finds editors. Only for the window's thread. */
public final class Editors {
    private static final String TITLE = "Open";

    private Editors() {
    }

    /** Opens the file that a range is in and selects it. */
    public static void show(SourceRange at) {
        file(at.source().name()).flatMap(Editors::open)
                .ifPresent(editor -> editor.selectAndReveal(at.offset(), at.length()));
    }

    public static Optional<ITextEditor> open(IFile file) {
        try {
            LargestText.check(file);
            IEditorPart editor = IDE.openEditor(page().orElseThrow(), file, ProcedureEditor.ID);
            return editor instanceof ITextEditor text ? Optional.of(text) : Optional.empty();
        } catch (PartInitException refused) {
            ILog.of(Editors.class).error("The file " + file + " cannot be opened.", refused);
            return Optional.empty();
        } catch (CoreException tooLarge) {
            MessageDialog.openInformation(page().orElseThrow().getWorkbenchWindow().getShell(), TITLE, tooLarge.getStatus().getMessage());
            return Optional.empty();
        }
    }

    /** Makes a text another one by changing only the stretch in which they differ, as one undo step. */
    public static void replace(IDocument document, String text) {
        String before = document.get();
        if (before.equals(text)) {
            return;
        }
        try {
            DocumentEdits.apply(List.of(DocumentEdits.middle(before, text)), document);
        } catch (BadLocationException changed) {
            ILog.of(Editors.class).error("The text changed while it was replaced.", changed);
        }
    }

    /** Where the stretch in which a text differs from another begins, and how long it is. */
    public static int[] differing(String text, String other) {
        DocumentEdits.Edit middle = DocumentEdits.middle(text, other);
        return new int[] {middle.offset(), middle.length()};
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
