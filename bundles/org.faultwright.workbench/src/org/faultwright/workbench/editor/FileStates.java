/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.workbench.files.SafeOverwrite;

/** What is said and asked when the file of an open text is not what it was. */
final class FileStates {
    static final String CHANGED = "Changed outside";
    static final String NOT_SAVED = "Not saved";
    static final String NOT_SAVED_YET = "Close";
    static final String OTHER_ENCODING = "Another encoding";

    private FileStates() {
    }

    static boolean isThere(IFile file) {
        return file.getLocation() == null ? file.exists() : Files.exists(file.getLocation().toPath());
    }

    static String gone(ProcedureEditor editor) {
        return name(editor) + " was deleted. Its text is still here; Save writes the file again.";
    }

    static String protectedWords(ProcedureEditor editor) {
        return name(editor) + " is write-protected. File, Save as\u2026 makes a copy that can be changed.";
    }

    /** Says what there is to say about a file that has just been opened. */
    static void opened(ProcedureEditor editor) {
        if (editor.isWriteProtected()) {
            editor.say(protectedWords(editor));
        } else if (!editor.charset().equals(StandardCharsets.UTF_8)) {
            editor.getSite().getShell().getDisplay().asyncExec(() -> offerConversion(editor));
        }
    }

    private static void offerConversion(ProcedureEditor editor) {
        if (editor.getSite().getShell().isDisposed() || editor.isDirty() || editor.file().isEmpty()) {
            return;
        }
        String encoding = editor.charset().displayName();
        int answer = ask(editor, MessageDialog.QUESTION, OTHER_ENCODING, name(editor) + " is written in " + encoding
                + ", not in UTF-8 as procedures are. Convert it, so that every sign such as \u03a9 can be written in it?",
                "Convert to UTF-8", "Leave it in " + encoding);
        if (answer == 0) {
            convert(editor);
        }
    }

    /** Writes the text as it was read, in UTF-8. */
    static void convert(ProcedureEditor editor) {
        try {
            byte[] bytes = editor.document().get().getBytes(StandardCharsets.UTF_8);
            IFile file = editor.file().orElseThrow();
            SafeOverwrite.during(file, bytes.length, () -> file.setContents(new java.io.ByteArrayInputStream(bytes),
                    IResource.KEEP_HISTORY, new NullProgressMonitor()));
            editor.takeFile();
            editor.say(name(editor) + " is in UTF-8 now.");
        } catch (CoreException refused) {
            tell(editor, NOT_SAVED, name(editor) + " could not be converted; it is as it was. " + refused.getMessage());
        }
    }

    /** The file and the text in the editor were both changed. */
    static void changedOutside(ProcedureEditor editor) {
        int answer = ask(editor, MessageDialog.QUESTION, CHANGED, name(editor)
                + " was changed by another program, and the text here has changes that are not saved. Which one is to stay?",
                "Keep the text here", "Take the file");
        if (answer == 1) {
            editor.takeFile();
        } else {
            editor.say("The text here was kept; Save will ask before it writes over the file.");
        }
    }

    /** @return 0 to save, 1 to give the text up, anything else to leave it open */
    static int closing(ProcedureEditor editor) {
        return ask(editor, MessageDialog.QUESTION, NOT_SAVED_YET, "What you changed in " + name(editor) + " is not saved yet.",
                "Save", "Give it up", "Cancel");
    }

    static void writeProtected(ProcedureEditor editor) {
        int answer = ask(editor, MessageDialog.WARNING, NOT_SAVED, name(editor)
                + " is write-protected, so the text cannot be saved there.", "Save as\u2026", "Not now");
        if (answer == 0) {
            SavingAs.ask(editor);
        }
    }

    /** Whether the text is to take the place of a file that is there. */
    static boolean writesOver(ProcedureEditor editor, Path path) {
        return ask(editor, MessageDialog.QUESTION, SavingAs.TITLE, "There is a file " + path
                + " already. Is the text here to take its place?", "Cancel", "Write over it") == 1;
    }

    /** Whether the folder of a file that was just written, and lies in none that is open, is to be opened with all that is in it. */
    static boolean opensFolder(ProcedureEditor editor, Path path) {
        return ask(editor, MessageDialog.QUESTION, SavingAs.SAVED, "The text is in " + path + " now, which lies in no open folder. "
                + "Go on with " + name(editor) + ", or open all of " + path.getParent() + " and go on with the new file?",
                "Go on with " + name(editor), "Open the folder") == 1;
    }

    static void notSaved(ProcedureEditor editor, CoreException refused) {
        IFile file = editor.file().orElseThrow();
        if (isThere(file) && !file.isSynchronized(IResource.DEPTH_ZERO)
                || refused.getStatus().getCode() == org.eclipse.core.resources.IResourceStatus.OUT_OF_SYNC_LOCAL) {
            int answer = ask(editor, MessageDialog.QUESTION, NOT_SAVED, name(editor)
                    + " was changed by another program since it was read. What that wrote goes when it is written over; \"Compare\" has it then.",
                    "Not now", "Save as\u2026", "Write over it");
            if (answer == 2) {
                editor.writeOver();
            } else if (answer == 1) {
                SavingAs.ask(editor);
            }
            return;
        }
        if (!editor.charset().newEncoder().canEncode(editor.document().get())) {
            int answer = ask(editor, MessageDialog.QUESTION, NOT_SAVED, name(editor) + " is written in "
                    + editor.charset().displayName() + ", which has no place for some of the signs in it.",
                    "Save in UTF-8", "Not now");
            if (answer == 0) {
                convert(editor);
            }
            return;
        }
        int answer = ask(editor, MessageDialog.WARNING, NOT_SAVED, name(editor)
                + " could not be written; the text here is as it was. Is there room in its folder, and may you write there?",
                "Save as\u2026", "Not now");
        if (answer == 0) {
            SavingAs.ask(editor);
        }
    }

    static void tell(ProcedureEditor editor, String title, String sentence) {
        MessageDialog.openInformation(editor.getSite().getShell(), title, sentence);
    }

    private static int ask(ProcedureEditor editor, int kind, String title, String sentence, String... buttons) {
        Shell shell = editor.getSite().getShell();
        return MessageDialog.open(kind, shell, title, sentence, org.eclipse.swt.SWT.NONE, buttons);
    }

    private static String name(ProcedureEditor editor) {
        return "\"" + editor.getEditorInput().getName() + "\"";
    }

    static Path path(IFile file) {
        return file.getLocation().toPath();
    }
}
