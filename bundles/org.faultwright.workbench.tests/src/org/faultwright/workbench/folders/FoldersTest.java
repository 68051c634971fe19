/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.folders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.faultwright.language.server.EditingServices;
import org.faultwright.procedure.SourceText;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.ShelfFile;
import org.faultwright.workbench.settings.WorkbenchSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders of the file system on the shelf. */
class FoldersTest {
    @TempDir
    private Path folder;

    @Test
    void should_list_the_titles_of_a_folder_and_follow_changes_outside() throws CoreException, IOException {
        Path file = folder.resolve("One.procedure");
        Files.writeString(file, "procedure One \"First title\"\n\nequipment \"Maker\" boards \"A\"\nrevision 3 released\n");
        IProject project = Folders.link(folder);
        try {
            IFile shown = Editors.file(file.toString()).orElseThrow();
            ShelfFile one = Waiting.untilPresent("it is checked", () -> FolderDocuments.get().of(shown).filter(ShelfFile::checked));
            assertEquals("First title", one.head().title());
            assertEquals("revision 3, released", one.head().revision());
            assertTrue(one.findings().size() > 0);

            Files.writeString(file, "procedure One \"Another title, and longer\"\n");
            shown.refreshLocal(IResource.DEPTH_ZERO, new NullProgressMonitor());

            Waiting.until("the title has changed",
                    () -> FolderDocuments.get().of(shown).filter(now -> now.head().title().startsWith("Another")).isPresent());
        } finally {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        }
        assertTrue(Files.exists(file));
    }

    /** Nobody says that there is something new. */
    @Test
    void should_see_by_itself_what_other_programs_write_change_and_delete() throws CoreException, IOException {
        IProject project = Folders.link(Files.createDirectory(folder.resolve("bench")));
        try {
            Path file = Files.writeString(folder.resolve("bench/Late.procedure"), "procedure Late \"Came late\"\n");
            Waiting.until("its title is there", () -> title(file).equals("Came late"));
            Files.writeString(file, "procedure Late \"Has changed since\"\n");
            Waiting.until("the title has changed", () -> title(file).equals("Has changed since"));
            Files.delete(file);
            Waiting.until("it is gone", () -> FolderDocuments.files().stream().noneMatch(one -> one.getName().equals("Late.procedure")));
        } finally {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        }
    }

    private static String title(Path file) {
        return Editors.file(file.toString()).flatMap(FolderDocuments.get()::of).map(known -> known.head().title()).orElse("");
    }

    @Test
    void should_stop_checking_when_told_to_keep_what_was_found_and_go_on() throws CoreException, IOException {
        for (int i = 0; i < 60; i++) {
            Files.writeString(folder.resolve("Many" + i + ".procedure"), "procedure Many" + i + " \"Title " + i + "\"\n");
        }
        Waiting.until("nothing else is being checked", () -> FolderDocuments.get().isComplete());
        FolderDocuments.get().stop();
        IProject project = Folders.link(folder);
        try {
            Waiting.until("the titles are there all the same", () -> FolderDocuments.files().stream().allMatch(file -> FolderDocuments.get().of(file).isPresent()));
            FolderDocuments.Progress stopped = FolderDocuments.get().progress();
            assertFalse(stopped.running());
            assertFalse(FolderDocuments.get().isComplete());
            assertEquals(FolderDocuments.files().size(), stopped.all());
            assertEquals(stopped.all() - 60, stopped.checked(), "what was checked before stays");

            FolderDocuments.get().goOn();

            Waiting.until("everything is checked", () -> FolderDocuments.get().isComplete());
            assertEquals(FolderDocuments.get().progress().all(), FolderDocuments.get().progress().checked());
        } finally {
            FolderDocuments.get().goOn();
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        }
    }

    @Test
    void should_show_the_texts_of_a_folder_right_under_its_name() throws CoreException, IOException {
        Files.writeString(folder.resolve("One.procedure"), "procedure One \"One\"\n");
        IProject project = Folders.link(folder);
        try {
            ShelfContent content = new ShelfContent();
            Object[] shown = content.getChildren(project);
            assertEquals(1, shown.length);
            assertEquals("One.procedure", ((IFile) shown[0]).getName());
            assertEquals(project, content.getParent(shown[0]));
            assertTrue(Folders.open().contains(folder));
        } finally {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        }
        assertFalse(Folders.open().contains(folder));
    }

    @Test
    void should_refuse_a_folder_that_is_none() {
        CoreException refused = assertThrows(CoreException.class, () -> Folders.link(folder.resolve("missing")));

        assertTrue(refused.getMessage().contains("There is no folder"), refused.getMessage());
    }

    @Test
    void should_refuse_a_folder_within_an_open_one() throws CoreException, IOException {
        Path inner = Files.createDirectory(folder.resolve("inner"));
        IProject project = Folders.link(folder);
        try {
            assertTrue(assertThrows(CoreException.class, () -> Folders.link(inner)).getMessage().contains("is within"));
            assertTrue(assertThrows(CoreException.class, () -> Folders.link(folder)).getMessage().contains("open already"));
        } finally {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
        }
    }

    /** A folder that is opened again stands for the next start: nothing is known of it but what was kept. */
    @Test
    void should_take_up_what_was_found_before_and_check_only_what_depends_on_a_change() throws CoreException, IOException {
        Path user = Files.writeString(folder.resolve("User.procedure"), "procedure User \"A user\"\nuses Shared\ncheck A \"a\" { yes -> Nowhere }\n");
        Path other = Files.writeString(folder.resolve("Other.procedure"), "procedure Other \"Another\"\ncheck A \"a\" { yes -> Nowhere }\n");
        Path library = Files.writeString(folder.resolve("Shared.procedure"), "library Shared \"Shared\"\n");
        ShelfFile before = openedAndChecked(user);
        assertTrue(before.findings().size() > 0);

        assertTrue(kept(user) && kept(other) && kept(library));
        assertEquals(said(before), said(openedAndChecked(user)));

        Files.writeString(library, "library Shared \"Shared, and with something that changes\"\n");
        assertFalse(kept(user));
        assertTrue(kept(other));
        Files.delete(library);
        ShelfFile without = openedAndChecked(user);
        assertTrue(said(without).stream().anyMatch(words -> words.contains("Shared")), said(without).toString());
    }

    private ShelfFile openedAndChecked(Path file) throws CoreException {
        IProject project = Folders.link(folder);
        try {
            ShelfFile found = Waiting.untilPresent("it is checked", () -> Editors.file(file.toString()).flatMap(FolderDocuments.get()::of).filter(ShelfFile::checked));
            Waiting.until("all is checked", () -> FolderDocuments.get().isComplete());
            return found;
        } finally {
            project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
            Waiting.until("it is off the shelf", () -> FolderDocuments.get().isComplete());
        }
    }

    /** Asked as a window asks that was just started. */
    private static boolean kept(Path file) throws IOException {
        return new EditingServices(Optional.of(WorkbenchSettings.calibrationDay())).kept(new SourceText(file.toString(), Files.readString(file))).isPresent();
    }

    private static List<String> said(ShelfFile shelved) {
        return shelved.findings().stream().map(finding -> finding.at() + " " + finding.rule() + " " + finding.message()).toList();
    }
}
