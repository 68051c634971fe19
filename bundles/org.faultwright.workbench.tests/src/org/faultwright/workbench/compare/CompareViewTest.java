/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.analysis.compare.Difference.Kind;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.usedby.UsedByView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** The comparison in the real window, worked by the keyboard. */
@ExtendWith(KeepPicture.class)
class CompareViewTest {
    private static final String TEXT = """
            procedure Timer "Kitchen timer" equipment "Ednor K2" revision 3 released by "R. Castellane" dated 2026-01-10
            complaints "silent"
            condition Supply { off, on } live when on starts off ends off
            point Rail "C7, plus side" carries up to 6 V
            note Hot danger { covers heat hazard "It gets hot." consequence "Burns." avoid "Wait a minute." }
            fault Relay "Relay stuck" { cases 3 shows Look dark, Volts below }

            begin at Look

            check Look "Is the lamp dark?" {
                confirms complaint
                needs Supply off
                takes 1 min
                dark -> Volts
                lit  -> Nothing
            }
            measure Volts "Rail" {
                dc voltage at Rail
                expects 5 V +/- 5 %
                source "Sheet 1"
                notes Hot
                below  -> RelayBad
                within -> Nothing
                above  -> Nothing
            }
            conclude RelayBad "Relay" { finds Relay }
            conclude Nothing "Nothing found" { finds nothing }
            """;

    @TempDir
    private Path folder;
    private Bench bench;
    private ProcedureEditor editor;
    private CompareView view;

    @BeforeEach
    void open_a_text_and_the_comparison() throws Exception {
        CompareView.PLACES.keep(List.of());
        bench = new Bench();
        editor = bench.open(bench.file("Timer.procedure", TEXT));
        page().activate(editor);
        page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.compare", null);
        view = (CompareView) page().findView(CompareView.ID);
        choose(ComparedWith.Saved.WORDS);
        Waiting.until("the text is compared with the saved one", () -> view.said().contains("Unchanged, letter by letter"));
    }

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        CompareView.PLACES.keep(List.of());
        bench.close();
        page().showView(org.faultwright.workbench.findings.FindingsView.ID);
    }

    /** The view is opened with nothing in it, and its first control has the focus by then. */
    @Test
    void should_say_what_the_text_is_compared_with_before_anything_is_chosen() throws Exception {
        page().hideView(view);
        page().activate(editor);

        page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.compare", null);

        view = (CompareView) page().findView(CompareView.ID);
        Waiting.until("it is compared", () -> view.said().contains("Unchanged, letter by letter"));
        assertEquals(ComparedWith.Saved.WORDS, Controls.all(view.control(), Combo.class).get(0).getText());
    }

    @Test
    void should_follow_the_text_while_it_is_typed_and_show_the_numbers_beside_each_other() throws BadLocationException {
        replace("+/- 5 %", "+/- 8 %");

        Waiting.until("it is told", () -> !view.differences().isEmpty());
        TreeItem line = tree().getItem(0).getItem(0);
        assertEquals(List.of("Volts: limit", "5 V +/- 5 %", "5 V +/- 8 %", "wider: 4.6 V to 5.4 V, was 4.75 V to 5.25 V"),
                Stream.of(0, 1, 2, 3).map(line::getText).toList());

        replace("+/- 8 %", "+/- 5 %");
        Waiting.until("they say the same again", () -> view.said().contains("Unchanged, letter by letter"));
        assertEquals(0, tree().getItemCount());
    }

    @Test
    void should_show_lost_protection_first_and_go_to_a_line_by_keys() throws BadLocationException {
        replace("    notes Hot\n", "");
        replace("+/- 5 %", "+/- 8 %");
        replace("lit  -> Nothing", "lit  -> Volts");
        List<Kind> kinds = List.of(Kind.PROTECTION, Kind.LIMITS, Kind.OUTCOMES);
        Waiting.until("it is told", () -> view.differences().stream().map(Difference::kind).distinct().toList().equals(kinds));

        assertTrue(tree().getItem(0).getText().startsWith("Protection removed"), tree().getItem(0).getText());
        tree().setFocus();
        select(tree().getItem(1).getItem(0));
        assertEquals("5 V +/- 8 %", selected(), "the words in the text are selected");
        assertTrue(tree().isFocusControl(), "the keys stay in the comparison");
        select(tree().getItem(2).getItem(0));
        assertEquals("Volts", selected());

        tree().notifyListeners(SWT.DefaultSelection, new Event());
        Waiting.until("the text has the keyboard", () -> page().getActivePart() == editor);
    }

    @Test
    void should_go_to_where_the_words_stand_by_now() throws BadLocationException {
        replace("+/- 5 %", "+/- 8 %");
        Waiting.until("it is told", () -> !view.differences().isEmpty());

        editor.document().replace(0, 0, "// a remark that the comparison has not seen yet\n");
        select(tree().getItem(0).getItem(0));

        assertEquals("5 V +/- 8 %", selected());
    }

    @Test
    void should_keep_the_last_answer_of_half_typed_text_and_say_so() throws BadLocationException {
        replace("+/- 5 %", "+/- 8 %");
        Waiting.until("it is told", () -> !view.differences().isEmpty());
        replace("begin at Look", "begin at Look\ncheck Nex \"half ");

        Waiting.until("it is said", () -> view.said().equals(CompareView.WAITS));
        assertEquals(1, view.differences().size());
    }

    @Test
    void should_compare_with_a_file_and_with_a_folder_whose_path_is_typed() throws IOException {
        Path other = Files.writeString(folder.resolve("Older.procedure"), TEXT.replace("up to 6 V", "up to 9 V").replace("revision 3", "revision 2"));
        typed(other.toString());
        Waiting.until("the file is compared", () -> view.differences().size() == 1);
        assertEquals(Kind.PROTECTION, view.differences().get(0).kind());
        assertTrue(view.said().startsWith("1 difference from Revision 2, released"), view.said());

        Path release = Files.createDirectory(folder.resolve("release"));
        Files.writeString(release.resolve("Timer.procedure.txt"), TEXT.replace("\"Sheet 1\"", "\"Sheet 0\""));
        Files.writeString(release.resolve("Broken.procedure.txt"), "Dear customer, your timer is ready.");
        typed(release.toString());
        Waiting.until("the release is compared", () -> view.differences().stream().anyMatch(one -> one.was().equals("Sheet 0")));
        assertTrue(view.said().contains("Both state the same revision"), view.said());
        assertTrue(view.choices().containsAll(List.of(other.toString(), release.toString())), "both can be chosen again");
    }

    @Test
    void should_compare_with_what_was_saved_over_by_its_time() throws Exception {
        replace("+/- 5 %", "+/- 8 %");
        page().saveEditor(editor, false);
        Waiting.until("what was saved over is offered", () -> view.choices().stream().anyMatch(one -> one.startsWith("Kept from 20")));
        Waiting.until("the saved text is what there is", () -> view.said().contains("Unchanged, letter by letter"));

        choose(view.choices().stream().filter(one -> one.startsWith("Kept from")).findFirst().orElseThrow());

        Waiting.until("the kept text is compared", () -> view.differences().size() == 1);
        assertEquals("5 V +/- 5 %", view.differences().get(0).was());
        assertTrue(ResourcesPlugin.getWorkspace().getDescription().getFileStateLongevity() >= 90L * 24 * 3_600 * 1_000, "kept for 90 days");
    }

    @Test
    void should_say_in_a_sentence_what_cannot_be_compared() throws IOException {
        Path letter = Files.writeString(folder.resolve("Letter.procedure"), "Dear customer, your timer is ready.");
        Path bytes = Files.write(folder.resolve("Photo.procedure"), new byte[] {(byte) 0xFF, (byte) 0xD8, 0, 1, 2, 3, (byte) 0x80});
        Path tree = Files.writeString(folder.resolve("Timer.tree.json"), "{ not JSON");
        Path alone = Files.writeString(folder.resolve("Alone.tree.json"), "{ \"digest\": \"sha256:" + "0".repeat(64) + "\" }");
        Path empty = Files.createDirectory(folder.resolve("empty"));
        Path others = Files.createDirectory(folder.resolve("others"));
        Files.writeString(others.resolve("Other.procedure"), TEXT.replace("Timer", "Other"));
        for (Path bad : List.of(letter, bytes, tree, alone, empty, others, folder.resolve("nowhere"))) {
            typed(bad.toString());
            Waiting.until(bad + " is refused", () -> view.said().contains(bad.getFileName().toString().replace("tree.json", "")));
            assertTrue(view.said().endsWith(".") && !view.said().contains("Exception") && view.said().lines().count() == 1, view.said());
            assertEquals(0, tree().getItemCount());
        }
        assertTrue(view.said().startsWith("There is no"), view.said());
    }

    @Test
    void should_have_no_work_behind_another_tab_and_catch_up_when_seen() throws Exception {
        page().showView(UsedByView.ID);
        String before = view.said();
        replace("+/- 5 %", "+/- 8 %");
        Waiting.until("the text is read again", () -> org.faultwright.workbench.live.LiveTexts.get().of(editor.document()).orElseThrow().isCurrent());
        boolean[] over = {false};
        page().getWorkbenchWindow().getShell().getDisplay().timerExec(600, () -> over[0] = true);
        Waiting.until("there was time to compare", () -> over[0]);
        assertEquals(before, view.said());
        assertTrue(view.differences().isEmpty());

        page().showView(CompareView.ID);
        Waiting.until("it is compared", () -> view.differences().size() == 1);
    }

    @Test
    void should_say_that_a_library_is_compared_by_its_users() throws CoreException {
        IFile library = bench.file("Common.procedure", "library Common \"Common\"\n");
        bench.open(library);

        Waiting.until("it is said", () -> view.said().startsWith("A library is compared"));
        assertFalse(view.said().contains("Timer"));
    }

    private void replace(String from, String to) throws BadLocationException {
        int at = editor.document().get().indexOf(from);
        assertTrue(at >= 0, from);
        editor.document().replace(at, from.length(), to);
    }

    private String selected() {
        return ((ITextSelection) editor.getSelectionProvider().getSelection()).getText();
    }

    private Tree tree() {
        return Controls.all(view.control(), Tree.class).get(0);
    }

    private Combo choice() {
        return Controls.all(view.control(), Combo.class).get(0);
    }

    private void choose(String words) {
        choice().select(Arrays.asList(choice().getItems()).indexOf(words));
        choice().notifyListeners(SWT.Selection, new Event());
    }

    private void typed(String words) {
        choice().setFocus();
        choice().setText(words);
        choice().notifyListeners(SWT.DefaultSelection, new Event());
    }

    private void select(TreeItem item) {
        tree().setSelection(item);
        Event chosen = new Event();
        chosen.item = item;
        tree().notifyListeners(SWT.Selection, chosen);
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
