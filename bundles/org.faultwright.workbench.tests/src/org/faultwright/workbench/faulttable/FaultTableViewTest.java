/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchCommandConstants;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.table.FaultSheet.State;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.language.beginning.PastedCells;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
import org.faultwright.workbench.Keys;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.findings.FindingsView;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveTexts;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The fault table in the real window, worked by the keys. */
@ExtendWith(KeepPicture.class)
class FaultTableViewTest {
    private ITextEditor editor;
    private IDocument document;
    private FaultTableView view;
    private GridCanvas grid;
    private String before;

    @BeforeEach
    void open_the_demo_and_the_table() throws CoreException {
        open("OllenbyFaintLabels.procedure");
    }

    private void open(String file) throws CoreException {
        editor = Editors.open(Folders.demo().getFile(file)).orElseThrow();
        document = Editors.document(editor).orElseThrow();
        before = document.get();
        view = (FaultTableView) page().showView(FaultTableView.ID);
        Waiting.until("the table is shown", () -> view.isShown() && grid().sheet().orElseThrow().of().procedure().source().content().equals(document.get()));
        grid = grid();
        page().activate(view);
        grid.setFocus();
    }

    private GridCanvas grid() {
        return view.grid();
    }

    @AfterEach
    void leave_it_as_it_was() {
        page().closeAllEditors(false);
    }

    @Test
    void should_show_every_fault_against_every_step_with_cases_and_times() {
        ShownSheet sheet = sheet();

        assertEquals(List.of("takes", "is normal", "Stored settings lost, darkness at zero"), List.of(text(0, 0), text(1, 0), text(2, 0)));
        assertEquals("34", text("SettingsLost", new SheetColumn.Cases()));
        assertTrue(text("SettingsLost", new SheetColumn.Time()).endsWith(" min"));
        assertEquals("5 blinks", text("SettingsLost", "LampCode"));
        assertEquals("RestoreSettings", text("SettingsLost", new SheetColumn.Remedy()));
        assertEquals(State.NORMAL, sheet.state(new SheetRow.OfFault("WrongLabels"), new SheetColumn.OfStep("LampCode")));
        assertEquals("none", text("WrongLabels", "LampCode"));
    }

    @Test
    void should_say_every_cell_to_a_screen_reader() {
        ShownSheet sheet = sheet();
        int columns = sheet.columns().size();
        for (int child = 0; child < sheet.rows().size() * columns; child++) {
            assertFalse(SpokenCells.name(grid, child).isBlank(), "cell " + child);
        }
        take("SettingsLost", "LampCode");
        String told = "\"SettingsLost\" at \"LampCode\": 5 blinks.";
        assertTrue(grid.told().endsWith(told), grid.told());
        assertEquals(grid.told(), SpokenCells.name(grid, grid.row() * columns + grid.column()));
        assertTrue(view.beside().said().contains(told), view.beside().said());
        assertEquals("", SpokenCells.name(grid, 1_000_000));
        assertEquals("Show, Sort", Keyboard.name(view.beside().shown()) + ", " + Keyboard.name(view.beside().order()));
    }

    @Test
    void should_go_about_by_keys_and_show_the_place_in_the_text() {
        grid.take(ShownSheet.HEAD_ROWS, 0, false);
        press(SWT.ARROW_RIGHT);
        press(SWT.ARROW_RIGHT);
        press(SWT.ARROW_RIGHT);
        assertEquals("SeeIt", ((SheetColumn.OfStep) grid.inHandColumn().orElseThrow()).name());
        assertEquals("SeeIt faint", selected());
        press(SWT.END, SWT.MOD1);
        assertEquals(sheet().rows().size() - 1, grid.row());
        Rectangle cell = grid.area(grid.row(), grid.column());
        assertTrue(grid.getClientArea().contains(cell.x + cell.width - 1, cell.y + cell.height - 1), "what is in hand is seen");
        press(SWT.HOME, SWT.MOD1);
        assertEquals(0, grid.row() + grid.column());
        take("SettingsLost", "LampCode");
        press(SWT.CR, SWT.MOD1);
        Waiting.until("the text is in front", () -> page().getActivePart() == editor);
        assertEquals("LampCode 5 blinks", selected());
    }

    @Test
    void should_write_what_is_typed_into_the_text_and_take_it_back_in_one_step() {
        take("DirtyHead", "LampCode");
        type("7");
        Text line = grid.inPlace().line().orElseThrow();
        assertEquals("7", line.getText());
        line.setText("7 bl");
        end(line, SWT.TRAVERSE_RETURN);

        Waiting.until("it is written", () -> document.get().contains("shows SeeIt faint, LampCode 7 blinks\n"));
        assertEquals(before, document.get().replace("SeeIt faint, LampCode 7 blinks", "SeeIt faint"), "nothing else has changed");
        assertEquals(sheet().rows().indexOf(new SheetRow.OfFault("DirtyHead")) + 1, grid.row(), "Enter goes on to the next fault");
        Waiting.until("the table shows it", () -> view.isShown() && text("DirtyHead", "LampCode").equals("7 blinks"));

        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(before, document.get());
        command(IWorkbenchCommandConstants.EDIT_REDO);
        assertTrue(document.get().contains("SeeIt faint, LampCode 7 blinks"));
    }

    @Test
    void should_write_what_is_typed_one_after_the_other_without_waiting() {
        take("SettingsLost", new SheetColumn.Cases());
        for (String cases : List.of("11", "12", "13")) {
            type(cases.substring(0, 1));
            Text line = grid.inPlace().line().orElseThrow();
            line.setText(cases);
            end(line, SWT.TRAVERSE_RETURN);
        }

        Waiting.until("all are written", () -> document.get().contains("cases 11") && document.get().contains("cases 12") && document.get().contains("cases 13"));
        assertEquals(before, document.get().replace("cases 11", "cases 34").replace("cases 12", "cases 29").replace("cases 13", "cases 17"));
    }

    @Test
    void should_refuse_what_the_step_cannot_show_and_keep_what_was_typed() {
        take("DirtyHead", "LampCode");
        press(SWT.F2);
        Text line = grid.inPlace().line().orElseThrow();
        line.setText("9 blinks }");
        end(line, SWT.TRAVERSE_TAB_NEXT);

        Waiting.until("it is refused", () -> view.beside().said().startsWith("Not written."));
        assertEquals(before, document.get());
        assertTrue(view.beside().said().contains("no outcome \"9 blinks }\"; it has 3 blinks, 5 blinks, 7 blinks"), view.beside().said());
        assertEquals("9 blinks }", grid.inPlace().line().orElseThrow().getText());
        end(grid.inPlace().line().orElseThrow(), SWT.TRAVERSE_ESCAPE);
        assertTrue(grid.inPlace().line().isEmpty() && grid.isFocusControl());
        assertEquals(before, document.get());
    }

    /** The text may be changed from elsewhere while a cell is open. */
    @Test
    void should_write_nothing_for_a_fault_that_has_gone_meanwhile() {
        take("DirtyHead", "LampCode");
        press(SWT.F2);
        Text line = grid.inPlace().line().orElseThrow();
        line.setText("7 blinks");
        int from = document.get().indexOf("fault DirtyHead");
        document.set(before.substring(0, from) + before.substring(before.indexOf("\n}\n", from) + 3));
        String without = document.get();
        Waiting.until("the fault is gone", () -> view.isShown() && sheet().fault(new SheetRow.OfFault("DirtyHead")).isEmpty());
        end(line, SWT.TRAVERSE_RETURN);

        Waiting.until("it is refused", () -> view.beside().said().equals("Not written. " + FaultTableView.GONE));
        assertEquals(without, document.get());
    }

    @Test
    void should_keep_the_faults_that_are_shown_alone_behind_another_tab_and_have_no_work_there() throws Exception {
        document.set(before.replace("LampCode 7 blinks\n    remedy SeatFlex", "LampCode 7 blinks, HeadSupply below\n    remedy SeatFlex"));
        Waiting.until("a group is told", () -> view.isShown() && view.beside().shown().getItemCount() > 1);
        view.beside().shown().select(1);
        view.beside().shown().notifyListeners(SWT.Selection, new Event());
        int alone = sheet().rows().size();
        page().showView(FindingsView.ID);
        ShownSheet last = sheet();
        document.set(document.get().replace("cases 34", "cases 35"));
        Waiting.until("the text is read again", () -> LiveTexts.get().of(document).orElseThrow().isCurrent());
        boolean[] over = {false};
        Display.getCurrent().timerExec(600, () -> over[0] = true);
        Waiting.until("there was time to make a table", () -> over[0]);
        assertSame(last, sheet());

        page().showView(FaultTableView.ID);
        Waiting.until("it catches up", () -> view.isShown() && sheet() != last);
        assertEquals(alone, sheet().rows().size());
    }

    @Test
    void should_offer_what_the_step_can_show_by_the_arrows_and_the_menu() {
        take("DirtyHead", "LampCode");
        press(SWT.CR);
        Text line = grid.inPlace().line().orElseThrow();
        Keys.press(line, SWT.ARROW_DOWN);
        assertEquals("3 blinks", line.getText());
        end(line, SWT.TRAVERSE_ESCAPE);

        grid.getMenu().notifyListeners(SWT.Show, new Event());
        MenuItem choice = Arrays.stream(grid.getMenu().getItems()).filter(item -> item.getText().equals("5 blinks")).findFirst().orElseThrow();
        choice.setSelection(true);
        choice.notifyListeners(SWT.Selection, new Event());
        Waiting.until("it is written", () -> document.get().contains("LampCode 5 blinks\n    remedy CleanHead"));
    }

    private void choose(String entry) {
        grid.getMenu().notifyListeners(SWT.Show, new Event());
        MenuItem item = Arrays.stream(grid.getMenu().getItems()).filter(one -> one.getText().equals(entry)).findFirst().orElseThrow();
        assertTrue(item.isEnabled(), entry + " is grey");
        item.notifyListeners(SWT.Selection, new Event());
    }

    @Test
    void should_take_out_a_fault_and_all_that_is_said_of_it_after_a_look() {
        take("FlexLoose", new SheetColumn.Cases());
        List<String> refused = Dialogs.answer("Take out", "Close");
        choose("Take out the fault\u2026");
        Waiting.until("it says what leads to it", () -> !refused.isEmpty());
        assertTrue(refused.get(0).contains("leads to \"FlexLoose\". Lead it elsewhere in the text first"), refused.get(0));
        document.set(before.replace("good -> FlexLoose", "good -> FaultOutsideThisProcedure"));
        String changed = document.get();
        Waiting.until("the table is that of the text", () -> view.isShown() && sheet().of().procedure().source().content().equals(changed));

        take("FlexLoose", new SheetColumn.Cases());
        List<String> left = Dialogs.answer("Take out", "Cancel");
        choose("Take out the fault\u2026");
        Waiting.until("it was shown", () -> !left.isEmpty());
        assertEquals(changed, document.get());

        List<String> said = Dialogs.answer("Take out", "Change the text");
        choose("Take out the fault\u2026");
        Waiting.until("it is out", () -> !document.get().contains("FlexLoose"));

        assertTrue(said.get(0).contains("\"Dropped from the counter\" goes with it") && said.get(0).contains("- fault FlexLoose"), said.get(0));
        Waiting.until("the table shows it", () -> view.isShown() && sheet().rows().stream().noneMatch(new SheetRow.OfFault("FlexLoose")::equals));
        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(changed, document.get());
    }

    @Test
    void should_say_why_a_step_is_not_taken_out() {
        take("DirtyHead", "SeeIt");
        List<String> said = Dialogs.answer("Take out", "Close");

        choose("Take out the step\u2026");

        Waiting.until("it says why", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("let its results lead to one step, then take it out."), said.get(0));
        assertEquals(before, document.get());
    }

    @Test
    void should_rename_a_fault_and_a_step_wherever_they_are_named() {
        take("ConverterDead", "LampCode");
        for (String[] one : new String[][] {{"Rename the fault\u2026", "ConverterDead", "SupplyDead"}, {"Rename the step\u2026", "LampCode", "CountBlinks"}}) {
            Dialogs.answer("Rename", dialog -> Controls.all(dialog, Text.class).get(0).setText(one[2]), "OK");
            Dialogs.answer("Rename \"", "Rename");
            choose(one[0]);
            Waiting.until("it is named so everywhere", () -> !document.get().contains(one[1]) && document.get().contains(one[2]));
            Waiting.until("the table shows it", () -> view.isShown() && sheet().of().procedure().source().content().equals(document.get()));
            take("SupplyDead", document.get().contains("CountBlinks") ? "CountBlinks" : "LampCode");
        }
    }

    @Test
    void should_take_out_the_chosen_cells_in_one_step() {
        take("LatchUnseated", "SeeIt");
        press(SWT.ARROW_DOWN, SWT.MOD2);
        press(SWT.ARROW_RIGHT, SWT.MOD2);
        press(SWT.DEL);

        Waiting.until("they are out", () -> document.get().contains("shows TryClean bad, WhereFaint oneSide") && document.get().contains("shows TryClean bad, WhereFaint thinLines"));
        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(before, document.get());
    }

    @Test
    void should_change_what_a_step_takes_and_what_is_normal_there() {
        grid.take(new SheetRow.Takes(), new SheetColumn.OfStep("SeeIt"));
        write("7 min");
        Waiting.until("the time is written", () -> document.get().contains("takes 7 min"));
        Waiting.until("the table shows it", view::isShown);
        grid.take(new SheetRow.Normal(), new SheetColumn.OfStep("Scratch"));
        write("");
        Waiting.until("nothing is normal there", () -> view.isShown() && text(1, grid.column()).isEmpty() && !document.get().equals(before));
    }

    @Test
    void should_copy_the_table_and_change_nothing_when_it_is_pasted_back() throws Exception {
        command(IWorkbenchCommandConstants.EDIT_SELECT_ALL);
        command(IWorkbenchCommandConstants.EDIT_COPY);
        String copied = clipboard();
        List<List<String>> cells = PastedCells.read(copied);

        assertEquals(List.of("fault", "cases", "remedy", "SeeIt"), cells.get(0).subList(0, 4));
        assertEquals("Stored settings lost, darkness at zero", cells.get(1).get(0));
        command(IWorkbenchCommandConstants.EDIT_PASTE);
        Waiting.until("it is pasted", () -> view.beside().said().startsWith("Pasted"));
        assertEquals(before, document.get());

        put(copied.replace("\t34\t", "\t36\t") + "Fan \"stuck\"\t2\tFreeFan\tfaint");
        command(IWorkbenchCommandConstants.EDIT_PASTE);
        Waiting.until("it is pasted", () -> document.get().contains("cases 36"));
        assertTrue(document.get().contains("fault FanStuck \"Fan stuck\" {\n    cases 2\n    shows SeeIt faint\n    remedy FreeFan\n}\n")
                || document.get().contains("shows SeeIt faint\n    remedy FreeFan"), document.get());
        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(before, document.get());
    }

    @Test
    void should_paste_nothing_where_a_cell_cannot_be_read_and_list_all_of_them() {
        take("SettingsLost", new SheetColumn.Cases());
        List<String> said = Dialogs.answer(FaultTableView.PASTE, "OK");

        view.paste("5\t\tgreen\nmany\t\tfaint\n6\t\tfaint");

        Waiting.until("the list is shown", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("Nothing was pasted") && said.get(0).contains("no outcome \"green\"") && said.get(0).contains("\"many\" is no number"), said.get(0));
        assertEquals(before, document.get());
    }

    @Test
    void should_sort_by_cases_words_and_time_and_leave_the_text_alone() {
        view.beside().order().select(ShownSheet.Sorting.WORDS.ordinal());
        view.beside().order().notifyListeners(SWT.Selection, new Event());
        List<String> words = sheet().rows().stream().skip(2).map(row -> sheet().text(row, new SheetColumn.Words())).toList();
        assertEquals(words.stream().sorted(String.CASE_INSENSITIVE_ORDER).toList(), words);

        grid.take(2, 0, false);
        grid.take(2, 1, false);
        Event click = new Event();
        click.button = 1;
        click.x = grid.area(0, 1).x + 3;
        click.y = 3;
        grid.notifyListeners(SWT.MouseDown, click);
        assertEquals("SettingsLost", sheet().fault(sheet().rows().get(2)).orElseThrow().name(), "34 cases come first");
        assertEquals(ShownSheet.Sorting.CASES.ordinal(), view.beside().order().getSelectionIndex());
        assertEquals(before, document.get());
    }

    @Test
    void should_show_faults_that_nothing_tells_apart_side_by_side() {
        document.set(before.replace("LampCode 7 blinks\n    remedy SeatFlex", "LampCode 7 blinks, HeadSupply below\n    remedy SeatFlex"));
        Waiting.until("a group is told", () -> view.isShown() && view.beside().shown().getItemCount() > 1);
        int at = Arrays.asList(view.beside().shown().getItems()).indexOf("not told apart: \"ConverterDead\" and \"FlexLoose\"");
        assertTrue(at > 0, Arrays.toString(view.beside().shown().getItems()));
        view.beside().shown().select(at);
        view.beside().shown().notifyListeners(SWT.Selection, new Event());

        assertEquals(4, sheet().rows().size());
        assertTrue(view.beside().said().startsWith("Nothing tells \"ConverterDead\" and \"FlexLoose\" apart."), view.beside().said());
        assertTrue(sheet().columns().size() < sheet().of().columns().size());
        press(SWT.ESC);
        assertEquals(sheet().of().rows().size() + 2, sheet().rows().size());
    }

    @Test
    void should_add_a_fault_and_a_step() {
        answerInput("Add a fault", "Roller worn flat");
        run("Add a fault\u2026");
        Waiting.until("the fault is in hand", () -> grid.inHandRow().filter(new SheetRow.OfFault("RollerWornFlat")::equals).isPresent());
        assertTrue(document.get().contains("fault RollerWornFlat \"Roller worn flat\" {\n    cases 1\n}"), document.get());

        answerInput("Add a step", "Is the roller flat? flat, round");
        run("Add a step\u2026");
        Waiting.until("the step is in hand", () -> grid.inHandColumn().filter(new SheetColumn.OfStep("IsTheRollerFlat")::equals).isPresent());
        take("RollerWornFlat", "IsTheRollerFlat");
        write("fl");
        Waiting.until("it is written", () -> document.get().contains("shows IsTheRollerFlat flat"));
        assertTrue(document.get().contains("check IsTheRollerFlat \"Is the roller flat?\" {\n    takes 1 min\n    flat -> FaultOutsideThisProcedure\n    round -> FaultOutsideThisProcedure\n}"), document.get());
    }

    @Test
    void should_draft_the_steps_from_the_table_after_they_were_looked_at() throws CoreException {
        String table = "procedure Dim \"Lamp is dim\"\nequipment \"Quenby L1\" boards \"A\"\nrevision 1 draft\ncomplaints \"dim\"\n\n"
                + "// counted in May\nfault Dust \"Dust\" { cases 30 shows SeeIt dim, Look dusty remedy WipeIt }\n"
                + "fault Worn \"Switch worn\" { cases 3 shows SeeIt dim, Look clean remedy NewSwitch }\n";
        document.set(table);
        Waiting.until("the table is shown", () -> view.isShown() && sheet().rows().size() == 4);

        List<String> said = Dialogs.answer(FaultTableView.DRAFT, "Cancel");
        run(FaultTableView.DRAFT);
        Waiting.until("it was looked at", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("without an error") && said.get(0).contains("+ check Look"), said.get(0));
        assertEquals(table, document.get());

        List<String> again = Dialogs.answer(FaultTableView.DRAFT, "Change the text");
        run(FaultTableView.DRAFT);
        Waiting.until("it is written", () -> !again.isEmpty() && document.get().contains("check Look"));
        assertTrue(document.get().contains("// counted in May"));
        Waiting.until("faults come to their conclusions", () -> view.isShown() && sheet().of().isLaidOut());
        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(table, document.get());
    }

    @Test
    void should_say_why_there_is_nothing_to_draft() {
        List<String> said = Dialogs.answer(FaultTableView.DRAFT, "Close");
        run(FaultTableView.DRAFT);

        Waiting.until("it is told", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("The steps are all there"), said.get(0));
    }

    @Test
    void should_bring_the_steps_into_a_better_order_after_it_was_looked_at() throws CoreException {
        open("LundavikTillDrawer.procedure");
        List<String> said = Dialogs.answer(FaultTableView.ORDER, "Change the text");
        run(FaultTableView.ORDER);

        Waiting.until("it is written", () -> !said.isEmpty() && !document.get().equals(before));
        assertTrue(said.get(0).contains("12.3 min saved") && said.get(0).contains("KeyLook first settles 45 % of the cases in 10 s.")
                && said.get(0).contains("\n- "), said.get(0));
        command(IWorkbenchCommandConstants.EDIT_UNDO);
        assertEquals(before, document.get());
    }

    @Test
    void should_keep_the_last_table_of_half_typed_text_and_write_nothing() throws BadLocationException {
        int at = document.get().indexOf("observe LampCode");
        document.replace(at, 0, "check Nex \"half ");

        Waiting.until("it is said", () -> grid.said().equals(FaultTableView.WAITS));
        String halfTyped = document.get();
        assertTrue(grid.sheet().isPresent());
        take("DirtyHead", "LampCode");
        type("5");
        assertTrue(grid.inPlace().line().isEmpty());
        press(SWT.DEL);
        Waiting.until("it is refused", () -> view.beside().said().startsWith("Not written."));
        assertEquals(halfTyped, document.get());
        document.replace(at, "check Nex \"half ".length(), "");
        Waiting.until("it is shown again", view::isShown);
    }

    @Test
    void should_say_that_a_library_has_no_faults() throws CoreException {
        ITextEditor library = Editors.open(Folders.demo().getFile("library/HarbourBench.procedure")).orElseThrow();
        Waiting.until("it is said", () -> grid.said().startsWith("A library has no faults"));
        page().closeEditor(library, false);
    }

    // ---- hands

    private ShownSheet sheet() {
        return grid().sheet().orElseThrow();
    }

    private String text(int row, int column) {
        return sheet().text(sheet().rows().get(row), sheet().columns().get(column));
    }

    private String text(String fault, SheetColumn column) {
        return sheet().text(new SheetRow.OfFault(fault), column);
    }

    private String text(String fault, String step) {
        return text(fault, new SheetColumn.OfStep(step));
    }

    private void take(String fault, SheetColumn column) {
        grid.take(new SheetRow.OfFault(fault), column);
    }

    private void take(String fault, String step) {
        take(fault, new SheetColumn.OfStep(step));
    }

    private void press(int key) {
        press(key, 0);
    }

    private void press(int key, int with) {
        Keys.press(grid, key, with);
    }

    private void type(String sign) {
        press(sign.charAt(0));
    }

    private void write(String value) {
        press(SWT.CR);
        Text line = grid.inPlace().line().orElseThrow();
        line.setText(value);
        end(line, SWT.TRAVERSE_RETURN);
    }

    private static void end(Text line, int by) {
        Event event = new Event();
        event.detail = by;
        event.doit = true;
        line.notifyListeners(SWT.Traverse, event);
    }

    private void run(String action) {
        Arrays.stream(view.getViewSite().getActionBars().getToolBarManager().getItems()).filter(org.eclipse.jface.action.ActionContributionItem.class::isInstance)
                .map(item -> ((org.eclipse.jface.action.ActionContributionItem) item).getAction()).filter(one -> one.getText().equals(action)).findFirst().orElseThrow()
                .run();
    }

    /** Types into the next dialog with that title, and presses OK. */
    private static void answerInput(String title, String typed) {
        Display display = Display.getCurrent();
        display.timerExec(50, new Runnable() {
            private int turns;

            @Override
            public void run() {
                for (Shell shell : display.getShells()) {
                    if (shell.isVisible() && shell.getText().equals(title)) {
                        Controls.all(shell, Text.class).get(0).setText(typed);
                        Dialogs.answer(title, "OK");
                        return;
                    }
                }
                if (turns++ < 200) {
                    display.timerExec(50, this);
                }
            }
        });
    }

    private static void command(String command) {
        try {
            PlatformUI.getWorkbench().getActiveWorkbenchWindow().getService(IHandlerService.class).executeCommand(command, null);
        } catch (org.eclipse.core.commands.common.CommandException refused) {
            throw new AssertionError(command, refused);
        }
    }

    private static String clipboard() {
        Clipboard clipboard = new Clipboard(Display.getCurrent());
        try {
            return (String) clipboard.getContents(TextTransfer.getInstance());
        } finally {
            clipboard.dispose();
        }
    }

    private static void put(String text) {
        Clipboard clipboard = new Clipboard(Display.getCurrent());
        try {
            clipboard.setContents(new Object[] {text}, new Transfer[] {TextTransfer.getInstance()});
        } finally {
            clipboard.dispose();
        }
    }

    private String selected() {
        return ((ITextSelection) editor.getSelectionProvider().getSelection()).getText();
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
