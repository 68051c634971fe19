/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.publish.WholeFile;

/** Writes a new text into a folder, puts the folder on the shelf and opens the text. A file that is there is never touched. */
final class NewText {
    private static final String ENDING = ".procedure";

    private NewText() {
    }

    static Path file(Path folder, String name) {
        return folder.resolve(name + ENDING);
    }

    /** @return whether the text is there; otherwise the user knows why not */
    static boolean write(Shell shell, String title, Path folder, String name, String text) {
        Path file = file(folder, name);
        try {
            WholeFile.create(file, text);
            FileDrop.text(file);
            return true;
        } catch (FileAlreadyExistsException there) {
            tell(shell, title, "There is a file " + file + " already; it stays as it is. Take another name.");
        } catch (IOException refused) {
            tell(shell, title, file + " could not be written. Is there room, and may you write there?");
        } catch (CoreException refused) {
            tell(shell, title, file + " is written, but cannot be opened: " + refused.getStatus().getMessage());
            return true;
        }
        return false;
    }

    private static void tell(Shell shell, String title, String words) {
        MessageDialog.openInformation(shell, title, words);
    }
}
