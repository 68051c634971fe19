/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.FileDialog;
import org.faultwright.publish.WholeFile;
import org.faultwright.workbench.live.Folders;

/** Save as: the text goes into another file, and the editor goes on with that one. */
final class SavingAs {
    static final String TITLE = "Save as";
    static final String SAVED = "Saved";
    private static final String ENDING = ".procedure";

    private SavingAs() {
    }

    static void ask(ProcedureEditor editor) {
        FileDialog dialog = new FileDialog(editor.getSite().getShell(), SWT.SAVE);
        dialog.setText(TITLE);
        // asked below: the ending may be put to the name after the dialog has asked
        dialog.setOverwrite(false);
        dialog.setFilterExtensions(new String[] {"*" + ENDING});
        editor.file().ifPresent(file -> {
            dialog.setFilterPath(FileStates.path(file).getParent().toString());
            dialog.setFileName(file.getName());
        });
        Optional.ofNullable(dialog.open()).ifPresent(chosen -> save(editor, Path.of(chosen)));
    }

    /**
     * Writes the text in UTF-8 to a path and goes on with that file. Asks before it writes over another file, and before it opens a
     * folder that is not open.
     */
    static void save(ProcedureEditor editor, Path chosen) {
        Path path = chosen.toString().endsWith(ENDING) ? chosen : Path.of(chosen + ENDING);
        if (Files.exists(path) && !FileStates.writesOver(editor, path)) {
            return;
        }
        try {
            WholeFile.replace(path, editor.document().get());
        } catch (IOException refused) {
            FileStates.tell(editor, FileStates.NOT_SAVED, path + " could not be written; the text is still here. "
                    + "Choose a folder that has room and that you may write to.");
            return;
        }
        if (Editors.file(path.toString()).isEmpty() && !FileStates.opensFolder(editor, path)) {
            editor.say("A copy is saved as " + path + ".");
            return;
        }
        try {
            editor.moveTo(file(path));
            editor.say("Saved as " + path + ".");
        } catch (CoreException refused) {
            FileStates.tell(editor, TITLE, "The text is in " + path + " now, but that file cannot be opened here: "
                    + refused.getStatus().getMessage() + " The editor stays with " + editor.getEditorInput().getName() + ".");
        }
    }

    private static IFile file(Path path) throws CoreException {
        Optional<IFile> known = Editors.file(path.toString());
        if (known.isEmpty()) {
            Folders.link(path.getParent());
        }
        IFile file = Editors.file(path.toString()).orElseThrow(() -> new CoreException(
                org.eclipse.core.runtime.Status.error(path + " cannot be found")));
        file.refreshLocal(IResource.DEPTH_ZERO, new NullProgressMonitor());
        return file;
    }
}
