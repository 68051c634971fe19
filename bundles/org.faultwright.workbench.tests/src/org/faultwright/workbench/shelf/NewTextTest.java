/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.shelf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.eclipse.core.resources.IContainer;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.editor.Bench;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** New procedures and libraries. */
@ExtendWith(KeepPicture.class)
class NewTextTest {
    @TempDir
    private Path folder;
    private IProject project;
    private IContainer place;

    @BeforeEach
    void open_a_folder() throws CoreException {
        project = Folders.link(folder);
        place = Folders.place(project);
    }

    @AfterEach
    void take_it_off() throws CoreException {
        project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
    }

    @Test
    void should_begin_a_procedure_in_the_folder_itself() {
        NewTextDialog dialog = fill("Fan", false);

        assertEquals(folder.resolve("Fan.procedure"), Bench.path(dialog.file()));
        assertTrue(dialog.beginning().text().contains("procedure Fan"), dialog.beginning().text());
    }

    @Test
    void should_begin_a_library_beside_the_others() throws IOException, CoreException {
        Files.createDirectory(folder.resolve("library"));
        project.refreshLocal(IResource.DEPTH_INFINITE, new NullProgressMonitor());

        NewTextDialog dialog = fill("NorthBench", true);

        assertEquals(folder.resolve("library/NorthBench.procedure"), Bench.path(dialog.file()));
        assertTrue(dialog.beginning().text().contains("library NorthBench"), dialog.beginning().text());
    }

    @Test
    void should_not_begin_what_has_no_name_a_word_of_the_language_for_a_name_or_the_name_of_another() throws IOException, CoreException {
        Files.writeString(folder.resolve("Taken.procedure"), "procedure Taken \"Taken\"\n");
        project.refreshLocal(IResource.DEPTH_INFINITE, new NullProgressMonitor());

        for (String name : new String[] {"", "measure", "../Outside", "With space", "9Lives", "Taken"}) {
            assertFalse(canBegin(name), name);
        }
        assertTrue(canBegin("Free"));
    }

    @Test
    void should_put_a_procedure_beside_the_folder_of_libraries_when_that_is_chosen() throws IOException, CoreException {
        Files.createDirectory(folder.resolve("library"));
        project.refreshLocal(IResource.DEPTH_INFINITE, new NullProgressMonitor());
        IContainer libraries = place.getFolder(new org.eclipse.core.runtime.Path("library"));

        IFile file = NewTextHandler.file(libraries, false, "Fan");

        assertEquals(folder.resolve("Fan.procedure"), Bench.path(file));
        assertEquals(folder.resolve("library/NorthBench.procedure"), Bench.path(NewTextHandler.file(libraries, true, "NorthBench")));
    }

    private NewTextDialog fill(String name, boolean library) {
        NewTextDialog dialog = new NewTextDialog(shell(), place);
        Display.getCurrent().timerExec(200, () -> {
            type(dialog, name, library);
            press(dialog.getShell(), "Begin");
        });
        assertEquals(Window.OK, dialog.open());
        return dialog;
    }

    private boolean canBegin(String name) {
        NewTextDialog dialog = new NewTextDialog(shell(), place);
        boolean[] can = {false};
        Display.getCurrent().timerExec(100, () -> {
            type(dialog, name, false);
            can[0] = find(dialog.getShell(), Button.class, "Begin").isEnabled();
            dialog.close();
        });
        dialog.open();
        return can[0];
    }

    private static void type(NewTextDialog dialog, String name, boolean library) {
        if (library) {
            find(dialog.getShell(), Button.class, "Procedure").setSelection(false);
            find(dialog.getShell(), Button.class, "Library").setSelection(true);
        }
        find(dialog.getShell(), Text.class, "").setText(name);
    }

    private static void press(Shell in, String words) {
        find(in, Button.class, words).notifyListeners(org.eclipse.swt.SWT.Selection, new Event());
    }

    private static <T extends Control> T find(Composite in, Class<T> kind, String words) {
        for (Control child : in.getChildren()) {
            if (kind.isInstance(child) && (!(child instanceof Button button) || button.getText().replace("&", "").startsWith(words))) {
                return kind.cast(child);
            }
            T inner = child instanceof Composite composite ? find(composite, kind, words) : null;
            if (inner != null) {
                return inner;
            }
        }
        return null;
    }

    private static Shell shell() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell();
    }
}
