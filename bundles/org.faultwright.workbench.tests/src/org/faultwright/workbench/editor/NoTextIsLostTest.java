/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.editor;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.Position;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.faultwright.language.server.NameInText;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keys;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.files.SafeOverwrite;
import org.faultwright.workbench.live.FolderDocuments;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.live.ShelfFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Encodings, layout, names, and every state that a file can be in outside. */
@ExtendWith(KeepPicture.class)
class NoTextIsLostTest {
    private static final Charset WINDOWS = Charset.forName("windows-1252");
    private static final String TEXT = """
            procedure Small "Kälte, Résumé, 10 µA"

            equipment "Maker Model" boards "A"

            begin at SeeIt

            check   SeeIt "Does it glow?" {
              yes -> Fine
                no   ->   Refer
            }

            conclude Fine "Fine" {
                finds nothing
                report "It glows."
            }

            conclude Refer "Not solved here" {
                refers to "the senior technician"
                report "It does not glow."
            }
            """;

    private Bench bench;

    @BeforeEach
    void make_a_bench() throws CoreException {
        bench = new Bench();
    }

    @AfterEach
    void take_it_down() throws CoreException {
        bench.close();
    }

    // ---- encodings

    @Test
    void should_save_a_file_in_the_encoding_it_was_read_in() throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT, WINDOWS);
        List<String> said = Dialogs.answer(FileStates.OTHER_ENCODING, "Leave it in windows-1252");
        ProcedureEditor editor = bench.open(file);
        Waiting.until("the other encoding is told", () -> !said.isEmpty());
        assertEquals(TEXT, editor.document().get());

        editor.document().replace(TEXT.indexOf("glow?"), 4, "leuchtet über");
        editor.doSave(new NullProgressMonitor());

        assertArrayEquals(TEXT.replace("glow?", "leuchtet über?").getBytes(WINDOWS), Files.readAllBytes(Bench.path(file)));
        Path settings = Bench.path(file).resolveSibling(".settings/org.eclipse.core.resources.prefs");
        assertFalse(Files.exists(settings) && Files.readString(settings).contains("Small"), "nothing remembers what may become wrong");
    }

    @Test
    void should_convert_a_file_to_utf_8_when_told_to() throws CoreException, IOException {
        IFile file = bench.file("Small.procedure", TEXT, WINDOWS);
        List<String> said = Dialogs.answer(FileStates.OTHER_ENCODING, "Convert to UTF-8");

        ProcedureEditor editor = bench.open(file);

        Waiting.until("the other encoding is told", () -> !said.isEmpty());
        Waiting.until("the editor has read it again", () -> editor.charset().equals(StandardCharsets.UTF_8));
        assertEquals(TEXT, Files.readString(Bench.path(file)));
        assertEquals(TEXT, editor.document().get());
        assertFalse(editor.isDirty());
    }

    // ---- layout and names

    @Test
    void should_format_without_moving_the_cursor_and_take_it_back_without_selecting_anything() throws CoreException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        editor.select(new Position(TEXT.indexOf("glow"), 0));

        FormatHandler.format(editor);

        String formatted = editor.document().get();
        assertTrue(formatted.contains("check SeeIt"), formatted);
        assertEquals(new Position(formatted.indexOf("glow"), 0), editor.selection());
        editor.getAction(ITextEditorActionConstants.UNDO).run();
        assertEquals(TEXT, editor.document().get());
        assertEquals(new Position(TEXT.indexOf("glow"), 0), editor.selection());
    }

    @Test
    void should_take_a_renaming_back_in_one_step() throws CoreException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));

        RenameHandler.rename(editor.getSite().getShell(), named(editor, "SeeIt"), "Glows");

        assertEquals(TEXT.replace("SeeIt", "Glows"), editor.document().get());
        editor.getAction(ITextEditorActionConstants.UNDO).run();
        assertEquals(TEXT, editor.document().get());
    }

    @Test
    void should_refuse_a_name_that_another_step_has() throws CoreException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        List<String> said = Dialogs.answer(RenameHandler.TITLE, "OK");

        RenameHandler.rename(editor.getSite().getShell(), named(editor, "SeeIt"), "Fine");

        assertTrue(said.get(0).contains("Fine"), said.toString());
        assertEquals(TEXT, editor.document().get());
    }

    @Test
    void should_rename_a_name_of_a_library_in_every_file_after_showing_the_places() throws CoreException, IOException {
        IFile library = bench.file("Notes.procedure", "library Notes \"Notes\"\n\nnote Hot warning \"It is hot.\"\n");
        String user = TEXT.replace("equipment", "uses Notes\n\nequipment").replace("  yes ->", "    notes Hot\n  yes ->");
        IFile open = bench.file("Small.procedure", user);
        IFile closed = bench.file("Other.procedure", user.replace("Small", "Other"));
        ProcedureEditor editor = bench.open(open);
        List<String> said = Dialogs.answer("Rename \"Hot\" to \"Burns\"", "Rename");

        RenameHandler.rename(editor.getSite().getShell(), named(editor, "Hot"), "Burns");

        assertFalse(said.isEmpty());
        assertTrue(editor.document().get().contains("notes Burns"));
        assertTrue(editor.isDirty());
        assertTrue(Files.readString(Bench.path(library)).contains("note Burns"));
        assertTrue(Files.readString(Bench.path(closed)).contains("notes Burns"));
    }

    @Test
    void should_rename_nothing_where_one_of_the_files_is_write_protected() throws CoreException, IOException {
        IFile library = bench.file("Notes.procedure", "library Notes \"Notes\"\n\nnote Hot warning \"It is hot.\"\n");
        String user = TEXT.replace("equipment", "uses Notes\n\nequipment").replace("  yes ->", "    notes Hot\n  yes ->");
        IFile first = bench.file("First.procedure", user.replace("Small", "First"));
        IFile last = bench.file("Last.procedure", user.replace("Small", "Last"));
        ProcedureEditor editor = bench.open(library);
        assertTrue(Bench.path(last).toFile().setWritable(false));
        last.refreshLocal(0, null);
        Dialogs.answer("Rename \"Hot\" to \"Burns\"", "Rename");
        List<String> said = Dialogs.answer(RenameHandler.TITLE, "OK");

        RenameHandler.rename(editor.getSite().getShell(), named(editor, "Hot"), "Burns");

        Waiting.until("it is said", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("\"Last.procedure\" is write-protected"), said.toString());
        assertTrue(Files.readString(Bench.path(first)).contains("notes Hot"));
        assertFalse(editor.isDirty());
        assertTrue(Bench.path(last).toFile().setWritable(true));
    }

    @Test
    void should_put_back_what_is_renamed_where_a_later_file_cannot_be_written() throws CoreException, IOException {
        IFile library = bench.file("Notes.procedure", "library Notes \"Notes\"\n\nnote Hot warning \"It is hot.\"\n");
        String user = TEXT.replace("equipment", "uses Notes\n\nequipment").replace("  yes ->", "    notes Hot\n  yes ->");
        IFile first = bench.file("First.procedure", user.replace("Small", "First"));
        IFile last = bench.file("Last.procedure", user.replace("Small", "Last"), WINDOWS);
        ProcedureEditor editor = bench.open(library);
        NewName renaming = NewName.of(named(editor, "Hot").declared().orElseThrow(), "\u0127ot");

        CoreException refused = org.junit.jupiter.api.Assertions.assertThrows(CoreException.class, renaming::write);

        assertTrue(refused.getStatus().getMessage().startsWith("\"Last.procedure\" could not be written, so nothing was renamed."),
                refused.getStatus().getMessage());
        assertTrue(Files.readString(Bench.path(first)).contains("notes Hot"));
        assertTrue(new String(Files.readAllBytes(Bench.path(last)), WINDOWS).contains("notes Hot"));
        assertFalse(editor.isDirty());
    }

    // ---- clean or unsaved, and unchanged, changed, deleted or write-protected outside

    @Test
    void should_save_unsaved_text_to_an_unchanged_file() throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);

        editor.document().replace(0, 0, "// mine\n");
        editor.doSave(new NullProgressMonitor());

        assertEquals("// mine\n" + TEXT, Files.readString(Bench.path(file)));
        assertFalse(editor.isDirty());
    }

    @Test
    void should_take_in_a_change_outside_where_nothing_is_unsaved() throws CoreException, IOException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);

        outside(file, "// theirs\n" + TEXT);
        file.refreshLocal(0, null);

        Waiting.until("the change is shown", () -> editor.document().get().startsWith("// theirs"));
        assertFalse(editor.isDirty());
    }

    @Test
    void should_keep_unsaved_text_when_the_file_changed_and_ask_before_writing_over_it()
            throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        outside(file, "// theirs\n" + TEXT);
        List<String> said = Dialogs.answer(FileStates.CHANGED, "Keep the text here");

        editor.handleEditorInputChanged();

        assertTrue(said.get(0).contains("Small.procedure"), said.toString());
        assertTrue(editor.document().get().startsWith("// mine"));
        List<String> byReturn = new ArrayList<>();
        List<String> asked = Dialogs.answer(FileStates.NOT_SAVED, dialog -> byReturn.add(dialog.getDefaultButton().getText()), "Write over it");
        editor.doSave(new NullProgressMonitor());
        assertEquals(1, asked.size());
        assertEquals(List.of("Not now"), byReturn, "Return destroys nothing");
        assertEquals("// mine\n" + TEXT, Files.readString(Bench.path(file)));
        try (java.io.InputStream theirs = file.getHistory(null)[0].getContents()) {
            assertEquals("// theirs\n" + TEXT, new String(theirs.readAllBytes(), StandardCharsets.UTF_8), "what was written over is kept");
        }
    }

    @Test
    void should_take_the_changed_file_instead_of_unsaved_text_when_told_to() throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        outside(file, "// theirs\n" + TEXT);
        List<String> said = Dialogs.answer(FileStates.CHANGED, "Take the file");

        editor.handleEditorInputChanged();

        assertEquals(1, said.size());
        assertEquals("// theirs\n" + TEXT, editor.document().get());
        assertFalse(editor.isDirty());
    }

    @Test
    void should_keep_the_text_of_a_deleted_file_and_write_it_again() throws CoreException, IOException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);

        Files.delete(Bench.path(file));
        file.refreshLocal(0, null);

        Waiting.until("the text counts as unsaved", editor::isDirty);
        assertEquals(TEXT, editor.document().get());
        editor.doSave(new NullProgressMonitor());
        assertEquals(TEXT, Files.readString(Bench.path(file)));
        assertFalse(editor.isDirty());
    }

    @Test
    void should_keep_unsaved_text_of_a_file_that_was_changed_and_then_deleted_without_asking_again()
            throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        outside(file, "// theirs\n" + TEXT);
        Dialogs.answer(FileStates.CHANGED, "Keep the text here");
        editor.handleEditorInputChanged();
        Files.delete(Bench.path(file));
        file.refreshLocal(0, null);

        Waiting.until("the window has seen it", () -> !file.exists());
        editor.handleEditorInputChanged();
        editor.doSave(new NullProgressMonitor());

        assertEquals("// mine\n" + TEXT, Files.readString(Bench.path(file)));
    }

    @Test
    void should_keep_unsaved_text_of_a_file_that_was_deleted_and_ask_nothing() throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        List<String> asked = Dialogs.answer(FileStates.CHANGED, "Keep the text here");

        Files.delete(Bench.path(file));
        file.refreshLocal(0, null);
        Waiting.until("the window has seen it", () -> !file.exists());
        editor.handleEditorInputChanged();

        assertEquals("// mine\n" + TEXT, editor.document().get());
        assertTrue(editor.isDirty());
        editor.doSave(new NullProgressMonitor());
        assertEquals("// mine\n" + TEXT, Files.readString(Bench.path(file)));
        assertEquals(List.of(), asked);
    }

    @Test
    void should_let_nobody_type_into_a_file_that_was_write_protected_while_it_was_open_and_say_why() throws CoreException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        StyledText text = (StyledText) editor.getAdapter(Control.class);
        assertTrue(Bench.path(file).toFile().setWritable(false));

        Keys.press(text, 'x');

        assertEquals(TEXT, editor.document().get());
        assertFalse(editor.isDirty());
        assertTrue(Controls.all(text.getShell(), CLabel.class).stream().anyMatch(label -> label.getText() != null
                && label.getText().contains(FileStates.protectedWords(editor))));
        assertTrue(Bench.path(file).toFile().setWritable(true));
        Keys.press(text, 'x');
        assertEquals("x" + TEXT, editor.document().get(), "as soon as it may be written");
    }

    @Test
    void should_say_that_a_file_is_write_protected_before_anything_is_typed() throws CoreException {
        IFile file = bench.file("Small.procedure", TEXT);
        assertTrue(Bench.path(file).toFile().setWritable(false));

        ProcedureEditor editor = bench.open(file);

        assertTrue(editor.isEditorInputReadOnly());
        assertFalse(editor.validateEditorInputState());
    }

    @Test
    void should_offer_another_name_when_a_file_was_write_protected_under_unsaved_text()
            throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        assertTrue(Bench.path(file).toFile().setWritable(false));
        List<String> said = Dialogs.answer(FileStates.NOT_SAVED, "Not now");

        editor.doSave(new NullProgressMonitor());

        assertTrue(said.get(0).contains("write-protected"), said.toString());
        assertTrue(editor.isDirty());
        Path other = Bench.path(file).resolveSibling("Copy.procedure");
        SavingAs.save(editor, other);
        assertEquals("// mine\n" + TEXT, Files.readString(other));
        assertEquals("Copy.procedure", editor.getEditorInput().getName());
        assertFalse(editor.isDirty());
    }

    @Test
    void should_keep_the_editor_open_when_what_was_to_be_saved_before_closing_was_not()
            throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        assertTrue(Bench.path(file).toFile().setWritable(false));
        List<String> asked = Dialogs.answer(FileStates.NOT_SAVED_YET, "Save");
        Dialogs.answer(FileStates.NOT_SAVED, "Not now");

        boolean closed = editor.getSite().getPage().closeEditor(editor, true);

        assertEquals(1, asked.size());
        assertFalse(closed, "the window was told that nothing was saved");
        assertEquals("// mine\n" + TEXT, editor.document().get());
        assertTrue(editor.isDirty());
        assertTrue(Bench.path(file).toFile().setWritable(true));
    }

    @Test
    void should_ask_about_unsaved_text_before_its_folder_is_taken_off() throws CoreException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        List<String> asked = Dialogs.answer(FileStates.NOT_SAVED_YET, "Cancel");

        Folders.takeOff(file.getProject(), editor.getSite().getShell());

        assertEquals(1, asked.size());
        assertTrue(file.getProject().exists());
        assertTrue(editor.isDirty());
        assertEquals("// mine\n" + TEXT, editor.document().get());
    }

    @Test
    void should_cancel_a_save_that_was_refused_and_put_off() throws CoreException, IOException, BadLocationException {
        IFile file = bench.file("Small.procedure", TEXT);
        ProcedureEditor editor = bench.open(file);
        editor.document().replace(0, 0, "// mine\n");
        outside(file, "// theirs\n" + TEXT);
        Dialogs.answer(FileStates.NOT_SAVED, "Not now");
        NullProgressMonitor monitor = new NullProgressMonitor();

        editor.doSave(monitor);

        assertTrue(monitor.isCanceled());
        assertTrue(editor.isDirty());
    }

    @Test
    void should_leave_the_file_whole_when_the_new_text_cannot_be_written_whole() throws CoreException, IOException {
        IFile file = bench.file("Small.procedure", TEXT);
        Path path = Bench.path(file);
        java.nio.file.attribute.FileTime written = Files.getLastModifiedTime(path);

        CoreException refused = org.junit.jupiter.api.Assertions.assertThrows(CoreException.class,
                () -> SafeOverwrite.during(file, 100, () -> halfOf(path)));

        assertEquals("no room", refused.getStatus().getMessage());
        assertEquals(TEXT, Files.readString(path));
        assertEquals(written, Files.getLastModifiedTime(path));
        try (java.util.stream.Stream<Path> beside = Files.list(path.getParent())) {
            assertTrue(beside.noneMatch(other -> other.toString().endsWith(".part")), "nothing is left beside it");
        }
    }

    /** What a full disk leaves of a file. */
    private static void halfOf(Path path) throws CoreException {
        try {
            Files.writeString(path, "proced");
        } catch (IOException unexpected) {
            throw new java.io.UncheckedIOException(unexpected);
        }
        throw new CoreException(org.eclipse.core.runtime.Status.error("no room"));
    }

    @Test
    void should_ask_before_it_saves_over_another_file_although_the_ending_was_not_typed() throws CoreException, IOException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        Path other = Bench.path(bench.file("Other.procedure", "// of somebody else\n"));
        List<String> asked = Dialogs.answer(SavingAs.TITLE, "Cancel");

        SavingAs.save(editor, other.resolveSibling("Other"));

        assertTrue(asked.get(0).contains(other.toString()), asked.toString());
        assertEquals("// of somebody else\n", Files.readString(other));
        assertEquals("Small.procedure", editor.getEditorInput().getName());
    }

    @Test
    void should_say_where_the_text_is_when_its_new_folder_cannot_be_opened() throws CoreException, IOException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        Path around = Files.createTempDirectory("around");
        org.eclipse.core.resources.IProject inner = Folders.link(Files.createDirectory(around.resolve("inner")));
        Dialogs.answer(SavingAs.SAVED, "Open the folder");
        List<String> said = Dialogs.answer(SavingAs.TITLE, "OK");

        SavingAs.save(editor, around.resolve("Small.procedure"));
        inner.delete(org.eclipse.core.resources.IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());

        assertTrue(said.get(0).contains("The text is in " + around.resolve("Small.procedure")), said.toString());
        assertEquals(TEXT, Files.readString(around.resolve("Small.procedure")));
        assertEquals("Small.procedure", editor.getEditorInput().getName());
    }

    @Test
    void should_ask_before_it_opens_the_folder_of_a_copy() throws CoreException, IOException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        Path outside = Files.createTempDirectory("outside").resolve("Copy.procedure");
        List<String> asked = Dialogs.answer(SavingAs.SAVED, "Go on with \"Small.procedure\"");

        SavingAs.save(editor, outside);

        assertTrue(asked.get(0).contains(outside.toString()), asked.toString());
        assertEquals(TEXT, Files.readString(outside));
        assertEquals("Small.procedure", editor.getEditorInput().getName());
        assertFalse(Folders.open().contains(outside.getParent()));

        Dialogs.answer(SavingAs.TITLE, "Write over it");
        Dialogs.answer(SavingAs.SAVED, "Open the folder");
        SavingAs.save(editor, outside);
        assertEquals("Copy.procedure", editor.getEditorInput().getName());
        assertTrue(Folders.open().contains(outside.getParent()));
        editor.getSite().getPage().closeEditor(editor, false);
        for (org.eclipse.core.resources.IProject project : Folders.all()) {
            if (project.getName().equals(outside.getParent().getFileName().toString())) {
                project.delete(org.eclipse.core.resources.IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
            }
        }
    }

    // ---- what is too large

    @Test
    void should_refuse_a_line_of_a_megabyte_in_a_sentence() throws CoreException {
        IFile file = bench.file("Long.procedure", "x ".repeat(600_000));
        List<String> said = Dialogs.answer("Open", "OK");

        assertEquals(Optional.empty(), Editors.open(file));

        assertTrue(said.get(0).contains("Long.procedure"), said.toString());
    }

    @Test
    void should_say_of_a_file_too_large_to_be_read_that_nothing_in_it_was_checked() throws CoreException {
        IFile file = bench.file("Long.procedure", "x ".repeat(600_000));

        List<org.faultwright.analysis.Finding> found = Waiting.untilPresent("its turn has come",
                () -> FolderDocuments.get().of(file).filter(ShelfFile::checked)).findings();

        assertEquals(1, found.size());
        assertEquals(org.faultwright.analysis.Severity.ERROR, found.get(0).severity());
        assertTrue(found.get(0).message().endsWith("Nothing in it was checked."), found.get(0).message());
    }

    @Test
    void should_check_a_text_again_when_its_library_changes_however_long_its_remarks_are() throws CoreException {
        IFile library = bench.file("Notes.procedure", "library Notes \"Notes\"\n\nnote Hot warning \"It is hot.\"\n");
        String user = TEXT.replace("equipment", "// what was tried\n".repeat(300) + "uses Notes\n\nequipment")
                .replace("  yes ->", "    notes Hot\n  yes ->");
        IFile file = bench.file("Small.procedure", user);
        Waiting.until("both are checked", () -> FolderDocuments.get().of(file).filter(ShelfFile::checked).isPresent() && FolderDocuments.get().isComplete());

        library.setContents(new java.io.ByteArrayInputStream("library Notes \"Notes\"\n".getBytes(StandardCharsets.UTF_8)), true, false,
                new NullProgressMonitor());

        Waiting.until("the note is missed", () -> FolderDocuments.get().of(file).filter(known -> known.findings().stream()
                .anyMatch(finding -> finding.rule().equals("unknown-name"))).isPresent());
    }

    @Test
    void should_have_no_proposals_in_comments_and_in_titles() throws CoreException, BadLocationException {
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", TEXT));
        editor.document().replace(0, 0, "// a -> b\n");
        org.eclipse.jface.text.ITextViewer viewer = editor.getAdapter(org.eclipse.jface.text.ITextViewer.class);

        assertEquals(0, new CompletionProcessor().computeCompletionProposals(viewer, 7).length);
        assertEquals(0, new CompletionProcessor().computeCompletionProposals(viewer, editor.document().get().indexOf("glow")).length);
        assertTrue(new CompletionProcessor().computeCompletionProposals(viewer, editor.document().get().indexOf("Fine")).length > 0);
    }

    /** It is only shown: nothing of it is in the text, and it moves with what is typed. */
    @Test
    void should_show_where_a_step_runs_on_that_does_not_say_it() throws CoreException, BadLocationException {
        String text = TEXT.replace("check   SeeIt", "do Shake {\n    takes 1 min\n}\n\ncheck   SeeIt").replace("begin at SeeIt", "begin at Shake");
        ProcedureEditor editor = bench.open(bench.file("Small.procedure", text));
        int line = editor.document().getLineOfOffset(text.indexOf("takes 1 min"));

        Waiting.until("it is shown", () -> !editor.hints().behind(line).isEmpty());
        assertEquals(List.of("then -> SeeIt  Does it glow?"), editor.hints().behind(line));
        editor.document().replace(0, 0, "// two\n// lines\n");
        assertEquals(List.of("then -> SeeIt  Does it glow?"), editor.hints().behind(line + 2));
        assertFalse(editor.document().get().contains("then"));
    }

    private static NameInText named(ProcedureEditor editor, String name) {
        return LiveTexts.get().current(editor.document()).orElseThrow().text().nameAt(editor.document().get().indexOf(name))
                .orElseThrow();
    }

    /** Another program writes; a later time stamp is what the window goes by. */
    private static void outside(IFile file, String text) throws IOException {
        Path path = Bench.path(file);
        Files.writeString(path, text);
        Files.setLastModifiedTime(path, java.nio.file.attribute.FileTime.fromMillis(Files.getLastModifiedTime(path).toMillis() + 2000));
    }
}
