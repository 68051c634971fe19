/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.find;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.ITextEditorActionConstants;
import org.faultwright.language.server.SearchScope;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keys;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.ShelfText;
import org.faultwright.workbench.publishing.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Finding over all procedures in the real window, by the keys. */
@ExtendWith(KeepPicture.class)
class FindViewTest {
    private static final String LIBRARY = "library Mills \"Mills\"\n\nnote Hot warning {\n    hazard \"Hot disc\"\n}\n"
            + "part Disc \"Grinding disc\" number \"KV-771\"\n";
    private static final String MILL = "// Caf\u00e9 mill\nprocedure Mill \"Mill grinds slowly\"\nuses Mills\nequipment \"Brenholt M1\"\n"
            + "complaints \"zwirbel noise\"\n\ncheck Look \"Look at the zwirbel.\" {\n    notes Hot\n    takes 1 min\n    yes -> End\n}\n"
            + "conclude End \"e\" {\n    finds nothing\n}\n";

    private Bench bench;
    private FindView view;
    private Text words;
    private Combo among;
    private Tree tree;

    @BeforeEach
    void open_the_view() throws CoreException, CommandException {
        Folders.demo();
        bench = new Bench();
        bench.file("Mills.procedure", LIBRARY);
        bench.file("Mill.procedure", MILL);
        run("find");
        view = (FindView) page().findView(FindView.ID);
        Composite around = (Composite) Controls.all(shell(), Text.class).stream().filter(text -> text.getMessage().startsWith("Words, part"))
                .findFirst().orElseThrow().getParent();
        words = Controls.all(around, Text.class).get(0);
        among = Controls.all(around, Combo.class).get(0);
        tree = Controls.all(around, Tree.class).get(0);
        among(SearchScope.EVERYTHING);
        find("");
    }

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        words.setText("");
        among(SearchScope.EVERYTHING);
        bench.close();
        page().showView(FindingsView.ID);
    }

    @Test
    void should_find_by_the_keys_and_open_the_place() {
        find("zwirbel");
        assertEquals(List.of("Mill grinds slowly", "  complaint 5", "  step  Look 7"), listed());
        assertEquals("2 places in 1 file.", view.said());

        Keys.press(words, SWT.ARROW_DOWN);
        assertTrue(tree.isFocusControl());
        assertEquals(5, view.chosen().orElseThrow().at().line());
        tree.setSelection(tree.getItem(0).getItem(1));
        tree.notifyListeners(SWT.DefaultSelection, new Event());
        ITextEditor editor = (ITextEditor) page().getActiveEditor();
        assertEquals("zwirbel", ((ITextSelection) editor.getSelectionProvider().getSelection()).getText());
        assertEquals(editor, page().getActivePart());

        page().activate(view);
        Keys.press(tree, SWT.ESC);
        assertTrue(words.isFocusControl());
    }

    @Test
    void should_find_whatever_the_accents_and_only_what_is_chosen() {
        find("CAFE mill");
        assertEquals(List.of("Mill grinds slowly", "  comment 1"), listed());

        among(SearchScope.PARTS);
        find("kv-771");
        assertEquals(List.of("Mills", "  part number  Disc 6"), listed());

        among(SearchScope.NOTES);
        find("hot");
        assertTrue(listed().contains("  note  Hot 3"), listed().toString());
    }

    @Test
    void should_find_in_unsaved_words_and_follow_a_change() throws CoreException, BadLocationException {
        ProcedureEditor editor = bench.open(page("Mill.procedure"));
        editor.document().replace(editor.document().get().indexOf("Look at"), 0, "Quorble once. ");
        find("quorble");
        assertEquals(List.of("Mill grinds slowly", "  step  Look 7"), listed());

        editor.document().replace(0, 0, "// quorble too\n");
        Waiting.until("the change is found", () -> listed().size() == 3);
        assertEquals("2 places in 1 file.", view.said());
        tree.setSelection(tree.getItem(0).getItem(1));
        tree.notifyListeners(SWT.DefaultSelection, new Event());
        assertEquals("Quorble", ((ITextSelection) editor.getSelectionProvider().getSelection()).getText());
    }

    @Test
    void should_go_to_a_place_that_has_moved_since() throws CoreException {
        find("zwirbel");
        ProcedureEditor editor = bench.open(page("Mill.procedure"));
        TreeItem step = tree.getItem(0).getItem(1);
        editor.document().set("// one line more\n" + editor.document().get());
        tree.setSelection(step);
        tree.notifyListeners(SWT.DefaultSelection, new Event());

        ITextSelection selected = (ITextSelection) editor.getSelectionProvider().getSelection();
        assertEquals("zwirbel 7", selected.getText() + " " + selected.getStartLine());
    }

    @Test
    void should_find_where_something_of_a_library_is_used() throws CoreException, CommandException {
        ProcedureEditor editor = bench.open(page("Mill.procedure"));
        editor.selectAndReveal(editor.document().get().indexOf("Hot\n"), 0);
        page().activate(editor);

        run("uses");

        ended();
        assertEquals(List.of("Mill grinds slowly", "  step  Look 8", "Mills", "  note, declared here  Hot 3"), listed());

        // the library changes above the note: what uses it is listed still
        ProcedureEditor library = bench.open(page("Mills.procedure"));
        library.document().set("// one line more\n" + library.document().get());
        Waiting.until("it is found where it stands now", () -> listed().contains("  note, declared here  Hot 4"));
        assertTrue(listed().contains("  step  Look 8"), listed().toString());

        // and on from the part that is chosen there
        find("kv-771");
        Keys.press(words, SWT.ARROW_DOWN);
        page().activate(view);
        tree.setFocus();
        run("uses");
        Waiting.until("its uses are listed", () -> listed().toString().contains("part, declared here"));
    }

    @Test
    void should_say_what_was_not_looked_through_and_what_is_no_utf_8() throws CoreException, IOException {
        bench.file("Old.procedure", "procedure Old \"Alt: zwirbel \u00fc\"\n", java.nio.charset.Charset.forName("windows-1252"));
        IFile huge = bench.file("Huge.procedure", "");
        Files.writeString(Bench.path(huge), "// zwirbel\n".repeat(450_000));

        find("zwirbel");

        assertTrue(listed().stream().anyMatch(line -> line.startsWith("\"Huge.procedure\" has 4 MB")), listed().toString());
        assertTrue(listed().stream().anyMatch(line -> line.startsWith("\"Old.procedure\" is not in UTF-8; it was read as ")), listed().toString());
        assertTrue(listed().contains("Alt: zwirbel \u00fc"), listed().toString());

        for (int i = 0; i < 30; i++) {
            bench.file("Old" + i + ".procedure", "// \u00fc " + i + "\n", java.nio.charset.Charset.forName("windows-1252"));
        }
        find("zwirbe");
        assertEquals(20, listed().stream().filter(line -> line.startsWith("\"")).count());
        assertTrue(listed().contains("12 more files could not be looked through or are not in UTF-8."), listed().toString());
    }

    @Test
    void should_say_that_nothing_was_found_and_what_to_type() {
        find("xyzzyplugh");
        assertEquals("Nothing found for \"xyzzyplugh\". Try fewer words, or part of one.", view.said());
        find("");
        assertEquals(FindView.ASK, view.said());
        assertEquals(List.of(), listed());
    }

    /** Results come while it looks, the window never waits, and it can be stopped. */
    @Test
    void should_look_through_three_thousand_files_without_holding_up_the_window() throws CoreException, IOException {
        IFile first = page("Mill.procedure");
        Path folder = Bench.path(first).getParent().resolve("many");
        Files.createDirectories(folder);
        for (int i = 0; i < 3_000; i++) {
            Files.writeString(folder.resolve("Made" + i + ".procedure"), MILL.replace("Mill", "Made" + i) + "// filler\n".repeat(300), StandardCharsets.UTF_8);
        }
        first.getProject().refreshLocal(IResource.DEPTH_INFINITE, null);
        IFolder many = first.getProject().getFolder("many");
        List<String> said = new ArrayList<>();
        Display display = Display.getCurrent();
        long longest = 0;
        words.setText("zwirbel");
        long began = System.nanoTime();
        while (!view.said().matches("\\d+ places in \\d+ files.*")) {
            long from = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            if (!display.readAndDispatch()) {
                display.timerExec(10, () -> { });
                display.sleep();
            }
            longest = Math.max(longest, (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - from) / 1_000_000);
            if (said.isEmpty() || !said.get(said.size() - 1).equals(view.said())) {
                said.add(view.said());
            }
            assertTrue(System.nanoTime() - began < 60e9, said.toString());
        }
        System.out.printf("measured: finding in 3,000 files: %d ms, longest stall of the window's thread %d ms, news %d times%n",
                (System.nanoTime() - began) / 1_000_000, longest, said.size());

        assertTrue(longest < 400, longest + " ms");
        assertTrue(view.said().startsWith("6002 places in 3001 files; the first 2000 are shown."), view.said());
        assertTrue(said.stream().anyMatch(one -> one.startsWith("Looking")), said.toString());
        assertTrue(many.exists());

        words.setText("zwirbe");
        Waiting.until("it looks", () -> view.said().startsWith("Looking"));
        view.stopLooking();
        Waiting.until("it has stopped", () -> view.said().startsWith("Stopped, ") || view.said().startsWith("6002 places"));
    }

    /** On a busy machine the search may not have begun when somebody stops it. */
    @Test
    void should_stop_a_search_that_has_not_begun() {
        Job.getJobManager().suspend();
        try {
            words.setText("zwirbel");
            Waiting.until("it is about to look", () -> view.said().startsWith("Looking"));
            view.stopLooking();
            assertEquals(FindView.NOT_BEGUN, view.said());
        } finally {
            Job.getJobManager().resume();
        }
        find("zwirbe");
        assertEquals("2 places in 1 file.", view.said());
    }

    @Test
    void should_say_in_plain_words_that_a_text_does_not_hold_what_is_looked_for() throws CoreException {
        ProcedureEditor editor = bench.open(page("Mill.procedure"));
        page().activate(editor);
        editor.getAction(ITextEditorActionConstants.FIND).run();
        Shell dialog = java.util.Arrays.stream(Display.getCurrent().getShells()).filter(one -> one.getText().equals("Find and replace")).findFirst()
                .orElseThrow();
        try {
            Combo field = Controls.all(dialog, Combo.class).get(0);
            field.setText("xyz");
            Controls.all(dialog, Button.class).stream().filter(button -> button.getText().replace("&", "").equals("Find")).findFirst().orElseThrow()
                    .notifyListeners(SWT.Selection, new Event());
            assertTrue(Words.of(dialog).contains("That is not in this text."), Words.of(dialog));
            assertFalse(Controls.all(dialog, Label.class).stream().anyMatch(label -> label.getText().contains("String")), Words.of(dialog));
        } finally {
            dialog.close();
        }
    }

    @Test
    void should_say_of_a_file_whose_folder_was_taken_off_that_it_cannot_be_read() {
        ShelfText gone = ShelfText.of(ResourcesPlugin.getWorkspace().getRoot().getProject("taken off").getFile("Mill.procedure"));

        assertEquals(Optional.empty(), gone.source());
        assertEquals(Optional.of("\"Mill.procedure\" cannot be read: may you read it?"), gone.remark());
    }

    private void find(String typed) {
        words.setText(typed);
        ended();
    }

    private void ended() {
        boolean[] begun = {false};
        Display.getCurrent().timerExec(220, () -> begun[0] = true);
        Waiting.until("it has looked", () -> begun[0] && !view.said().startsWith("Looking"));
    }

    private void among(SearchScope sought) {
        among.select(sought.ordinal());
        among.notifyListeners(SWT.Selection, new Event());
    }

    /** Each line as it stands there, places with what they are and their line. */
    private List<String> listed() {
        List<String> lines = new ArrayList<>();
        for (TreeItem top : tree.getItems()) {
            lines.add(top.getText(0));
            for (TreeItem place : top.getItems()) {
                lines.add("  " + place.getText(1) + " " + place.getText(2));
            }
        }
        return lines;
    }

    private IFile page(String name) {
        return org.eclipse.core.resources.ResourcesPlugin.getWorkspace().getRoot().getProject("a bench for tests").getFile(name);
    }

    private static void run(String command) throws CommandException {
        PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand("org.faultwright.workbench." + command, null);
    }

    private static Shell shell() {
        return page().getWorkbenchWindow().getShell();
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
