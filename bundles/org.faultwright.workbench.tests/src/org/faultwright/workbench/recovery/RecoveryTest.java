/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.recovery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.ui.PlatformUI;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** What a window that was killed leaves behind, and what the next one makes of it. */
@ExtendWith(KeepPicture.class)
class RecoveryTest {
    @Test
    void should_keep_a_copy_within_two_seconds_and_drop_it_when_the_text_is_given_up() throws CoreException, BadLocationException {
        try (Bench bench = new Bench()) {
            IFile file = bench.file("Kept.procedure", "procedure Kept \"Kept\"\n");
            ProcedureEditor editor = bench.open(file);
            long typed = System.nanoTime();
            editor.document().replace(0, 0, "// typed\n");

            Waiting.until("a copy is kept", () -> copy(file).isPresent());

            assertTrue(System.nanoTime() - typed < 2_000_000_000L + 1_000_000_000L, "two seconds, and one for a busy machine");
            assertEquals("// typed\nprocedure Kept \"Kept\"\n", copy(file).orElseThrow().text());
            editor.close(false);
            Waiting.until("the copy is gone", () -> copy(file).isEmpty());
        }
    }

    @Test
    void should_offer_the_unsaved_text_at_the_next_start() throws CoreException, java.io.IOException {
        try (Bench bench = new Bench()) {
            IFile file = bench.file("Killed.procedure", "procedure Killed \"Saved\"\n");
            new UnsavedText(Bench.path(file).toString(), "procedure Killed \"Not saved\"\n").keep(Recovery.get().folder());
            List<String> said = Dialogs.answer(RecoveryDialog.TITLE, "Take the unsaved text");

            Recovery.ask(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell());

            assertTrue(said.get(0).contains("Killed.procedure"), said.toString());
            ProcedureEditor editor = bench.open(file);
            assertEquals("procedure Killed \"Not saved\"\n", editor.document().get());
            assertTrue(editor.isDirty());
        }
    }

    @Test
    void should_keep_the_file_when_told_to() throws CoreException, java.io.IOException {
        try (Bench bench = new Bench()) {
            IFile file = bench.file("Killed.procedure", "procedure Killed \"Saved\"\n");
            new UnsavedText(Bench.path(file).toString(), "procedure Killed \"Not saved\"\n").keep(Recovery.get().folder());
            Dialogs.answer(RecoveryDialog.TITLE, "Keep the file");

            Recovery.ask(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell());

            assertEquals(Optional.empty(), copy(file));
        }
    }

    @Test
    void should_offer_a_text_that_was_put_off_again_whatever_was_done_with_its_file() throws Exception {
        try (Bench bench = new Bench()) {
            IFile file = bench.file("Killed.procedure", "procedure Killed \"Saved\"\n");
            UnsavedText put = new UnsavedText(Bench.path(file).toString(), "procedure Killed \"Not saved\"\n");
            put.keep(Recovery.get().folder());
            Dialogs.answer(RecoveryDialog.TITLE, "Decide later");
            Recovery.ask(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell());

            ProcedureEditor looked = bench.open(file);
            looked.close(false);
            Waiting.until("the editor is closed", () -> PlatformUI.getWorkbench().getActiveWorkbenchWindow()
                    .getActivePage().getEditorReferences().length == 0);
            ProcedureEditor changed = bench.open(file);
            changed.document().replace(0, 0, "// another\n");
            Waiting.until("what is typed now is kept too", () -> copies(file).size() == 2);
            changed.doSave(new NullProgressMonitor());

            assertEquals(List.of(put), copies(file));
            Dialogs.answer(RecoveryDialog.TITLE, "Take the unsaved text");
            Recovery.ask(PlatformUI.getWorkbench().getActiveWorkbenchWindow().getShell());
            assertEquals(put.text(), changed.document().get());
            assertEquals(List.of(put), copies(file), "until it is saved");
            changed.doSave(new NullProgressMonitor());
            assertEquals(List.of(), copies(file));
        }
    }

    private static List<UnsavedText> copies(IFile file) {
        return Recovery.get().left().stream().filter(copy -> copy.file().equals(Bench.path(file).toString())).toList();
    }

    private static Optional<UnsavedText> copy(IFile file) {
        return Recovery.get().left().stream().filter(copy -> copy.file().equals(Bench.path(file).toString())).findFirst();
    }
}
