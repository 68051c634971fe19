/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.findings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.core.commands.common.CommandException;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.analysis.Finding;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keys;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.live.FolderDocuments;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Filtering, sorting and fixing all of a kind in the real window, by the keys. */
@ExtendWith(KeepPicture.class)
class FindingsViewTest {
    private static final String TEXT = """
            procedure NAME "Name"
            equipment "Brenholt M1"
            revision 1 draft
            complaints "dark"

            // this comment stays
            point Spare "Never named"
            point Second "Never named either" // with it

            check Look "Does it light?" {
                confirms complaint
                takes 1 min // and this one
                yes -> End
                no  -> End
            }
            conclude End "Done" {
                finds nothing
            }
            """;

    @Test
    void should_call_nothing_right_where_nothing_was_checked() {
        assertEquals("No procedure is open yet, so nothing was checked.", FindingsView.summary(0, List.of()));
        assertEquals("Nothing found in 1 file.", FindingsView.summary(1, List.of()));
    }

    private static final int MOST_TURNS = 600;

    private Bench bench;
    private IFile open;
    private IFile closed;
    private ProcedureEditor editor;
    private FindingsView view;
    private Text words;
    private Combo order;
    private Button onlyHere;

    @BeforeEach
    void open_the_view() throws CoreException {
        bench = new Bench();
        open = bench.file("Open.procedure", TEXT.replace("NAME", "Open"));
        closed = bench.file("Closed.procedure", TEXT.replace("NAME", "Closed"));
        editor = bench.open(open);
        view = (FindingsView) page().showView(FindingsView.ID);
        Composite around = (Composite) Controls.all(page().getWorkbenchWindow().getShell(), Button.class).stream()
                .filter(button -> button.getText().equals("Only &this procedure")).findFirst().orElseThrow().getParent();
        words = Controls.all(around, Text.class).get(0);
        order = Controls.all(around, Combo.class).get(0);
        onlyHere = Controls.all(around, Button.class).get(0);
        Waiting.until("both are checked", () -> FolderDocuments.get().isComplete() && unused() == 4);
    }

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        words.setText("");
        choose(order, 0);
        onlyHere.setSelection(false);
        onlyHere.notifyListeners(SWT.Selection, new Event());
        ChosenFinding.get().forget();
        bench.close();
    }

    @Test
    void should_show_only_what_is_asked_for() {
        words.setText("never NAMED closed");
        words.setText("spare CLOSED");
        Waiting.until("one is left", () -> view.rows().size() == 1);
        assertTrue(view.rows().get(0).message().contains("Spare"));

        words.setText("");
        onlyHere.setSelection(true);
        onlyHere.notifyListeners(SWT.Selection, new Event());
        Waiting.until("only those of the text in front", () -> !view.rows().isEmpty()
                && view.rows().stream().allMatch(finding -> finding.at().source().fileName().equals("Open.procedure")));
        assertTrue(view.isOfThisProcedureOnly());

        Keys.press(words, SWT.ARROW_DOWN);
        Waiting.until("the first is chosen", () -> ChosenFinding.get().finding().isPresent());
        assertTrue(Controls.all(page().getWorkbenchWindow().getShell(), Table.class).stream().anyMatch(Table::isFocusControl));
    }

    @Test
    void should_sort_as_it_is_asked_to() {
        choose(order, FindingsFilter.Order.WEIGHT.ordinal());
        Waiting.until("the gravest come first", () -> ordered(finding -> String.valueOf(finding.severity().ordinal())));
        choose(order, FindingsFilter.Order.KIND.ordinal());
        Waiting.until("each kind stands together", () -> ordered(Finding::rule));
        choose(order, FindingsFilter.Order.PROCEDURE.ordinal());
        Waiting.until("each procedure stands together", () -> ordered(finding -> finding.at().source().fileName()));
    }

    @Test
    void should_fix_all_of_a_kind_after_showing_the_lines_as_one_step_to_take_back() throws CommandException, IOException {
        choose("Spare");
        List<String> shown = answer(true);

        run("fixAll");

        assertTrue(shown.contains("Closed.procedure   2 fixes") && shown.contains("Open.procedure   2 fixes"), shown.toString());
        assertTrue(shown.stream().anyMatch(line -> line.startsWith("line 7 was:  point Spare")), shown.toString());
        Waiting.until("both are changed", () -> !editor.document().get().contains("point") && !read(closed).contains("point"));
        assertTrue(editor.isDirty(), "an open text is saved by its writer");
        for (String comment : List.of("// this comment stays", "// and this one")) {
            assertTrue(editor.document().get().contains(comment) && read(closed).contains(comment), comment);
        }
        assertEquals(Files.readString(Bench.path(open)), TEXT.replace("NAME", "Open"));

        page().activate(editor);
        editor.getAction(org.eclipse.ui.texteditor.ITextEditorActionConstants.UNDO).run();
        assertEquals(TEXT.replace("NAME", "Open"), editor.document().get());
    }

    @Test
    void should_change_nothing_when_it_is_cancelled_nor_a_file_whose_mark_is_taken_off() throws CommandException {
        choose("Spare");
        answer(false);
        run("fixAll");
        assertEquals(TEXT.replace("NAME", "Open"), editor.document().get());

        choose("Spare");
        unmark = "Closed.procedure";
        answer(true);
        run("fixAll");
        Waiting.until("the open one is changed", () -> !editor.document().get().contains("point"));
        assertEquals(TEXT.replace("NAME", "Closed"), read(closed));
    }

    @Test
    void should_fix_only_this_procedure_where_only_this_one_is_shown() throws CommandException {
        onlyHere.setSelection(true);
        onlyHere.notifyListeners(SWT.Selection, new Event());
        choose("Spare");
        List<String> shown = answer(true);

        run("fixAll");

        assertFalse(shown.toString().contains("Closed"), shown.toString());
        Waiting.until("it is changed", () -> !editor.document().get().contains("point"));
        assertEquals(TEXT.replace("NAME", "Closed"), read(closed));
    }

    @Test
    void should_leave_write_protected_files_alone_and_say_so() throws CommandException, CoreException {
        assertTrue(Bench.path(closed).toFile().setWritable(false));
        closed.refreshLocal(0, null);
        choose("Spare");
        List<String> shown = answer(true);
        try {
            run("fixAll");
            assertTrue(shown.contains("\"Closed.procedure\" is write-protected."), shown.toString());
            Waiting.until("the other is changed", () -> !editor.document().get().contains("point"));
            assertTrue(read(closed).contains("point Spare"));
        } finally {
            assertTrue(Bench.path(closed).toFile().setWritable(true));
        }
    }

    @Test
    void should_change_nothing_that_was_changed_meanwhile() throws CommandException {
        choose("Spare");
        meanwhile = () -> editor.document().set("// new\n" + editor.document().get());
        answer(true);
        run("fixAll");
        List<String> said = Dialogs.answer(FixAllDialog.TITLE, "OK");

        Waiting.until("it is said", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("changed meanwhile; nothing was changed."), said.toString());
        assertTrue(editor.document().get().startsWith("// new\n") && editor.document().get().contains("point Spare"));
        assertTrue(read(closed).contains("point Spare"), "neither is the other");
    }

    private String unmark = "";
    private Runnable meanwhile = () -> { };

    /** Waits until every fix was tried, then answers. @return the lines that it showed */
    private List<String> answer(boolean change) {
        List<String> shown = new ArrayList<>();
        Display display = Display.getCurrent();
        Runnable looking = new Runnable() {
            private int turns;

            @Override
            public void run() {
                for (Shell shell : display.getShells()) {
                    if (shell.isVisible() && shell.getText().equals(FixAllDialog.TITLE) && !Controls.all(shell, Tree.class).isEmpty()) {
                        Button ok = button(shell, "Change them");
                        if (ok.isEnabled()) {
                            Tree tree = Controls.all(shell, Tree.class).get(0);
                            for (TreeItem top : tree.getItems()) {
                                tell(top, shown);
                                if (!unmark.isEmpty() && top.getText().startsWith(unmark)) {
                                    top.setChecked(false);
                                    Event event = new Event();
                                    event.item = top;
                                    event.detail = SWT.CHECK;
                                    tree.notifyListeners(SWT.Selection, event);
                                }
                            }
                            meanwhile.run();
                            button(shell, change ? "Change them" : "Cancel").notifyListeners(SWT.Selection, new Event());
                            return;
                        }
                        if (turns > MOST_TURNS) {
                            shell.close(); // so that the test fails and does not wait for ever
                        }
                    }
                }
                if (turns++ <= MOST_TURNS) {
                    display.timerExec(50, this);
                }
            }
        };
        display.timerExec(50, looking);
        return shown;
    }

    private static void tell(TreeItem item, List<String> shown) {
        shown.add(item.getText());
        for (TreeItem line : item.getItems()) {
            tell(line, shown);
        }
    }

    private static Button button(Shell shell, String words) {
        return Controls.all(shell, Button.class).stream().filter(button -> button.getText().replace("&", "").equals(words)).findFirst().orElseThrow();
    }

    private void choose(String name) {
        Finding chosen = Waiting.untilPresent("it is found", () -> view.rows().stream().filter(finding -> finding.rule().equals("unused-declaration")
                && finding.message().contains(name) && finding.at().source().fileName().equals("Open.procedure")).findFirst());
        ChosenFinding.get().choose(chosen);
    }

    private long unused() {
        return view.rows().stream().filter(finding -> finding.rule().equals("unused-declaration")
                && finding.at().source().name().contains("a bench for tests")).count();
    }

    private boolean ordered(java.util.function.Function<Finding, String> key) {
        List<String> keys = view.rows().stream().map(key).toList();
        return keys.size() > 3 && keys.equals(keys.stream().sorted().toList());
    }

    private static void choose(Combo combo, int item) {
        combo.select(item);
        combo.notifyListeners(SWT.Selection, new Event());
    }

    private static String read(IFile file) {
        try {
            return Files.readString(Bench.path(file));
        } catch (IOException gone) {
            throw new AssertionError(gone);
        }
    }

    private static void run(String command) throws CommandException {
        PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand("org.faultwright.workbench." + command, null);
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
