/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.SourceRange;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
import org.faultwright.workbench.Keys;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.live.Folders;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** The chart in the real window, by the keys and the mouse. */
@ExtendWith(KeepPicture.class)
class ChartViewTest {
    private ITextEditor editor;
    private IDocument document;
    private ChartView view;
    private ChartCanvas canvas;

    @BeforeEach
    void open_the_demo_and_the_chart() throws CoreException {
        editor = Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow();
        document = Editors.document(editor).orElseThrow();
        view = (ChartView) page().showView(ChartView.ID);
        page().activate(editor);
        Waiting.until("the chart is laid out", () -> ActiveText.get().place().filter(place -> place.live().document() == document).isPresent()
                && view.chart().isPresent() && view.said().isEmpty());
        canvas = view.canvas();
    }

    @AfterEach
    void leave_it_as_it_was() {
        ChosenFinding.get().forget();
        page().closeAllEditors(false);
    }

    @Test
    void should_draw_every_step_of_the_text_in_front() {
        Chart chart = view.chart().orElseThrow();
        List<String> steps = List.of("SeeIt", "LampCode", "SettingsLost");

        assertTrue(chart.boxes().stream().map(ChartBox::key).toList().containsAll(steps));
    }

    @Test
    void should_take_the_step_at_the_cursor_in_hand_and_leave_the_focus_in_the_text() {
        Control text = (Control) editor.getAdapter(Control.class);
        editor.selectAndReveal(document.get().indexOf("observe LampCode"), 0);

        Waiting.until("the step at the cursor is in hand", () -> view.inHand().equals(Optional.of("LampCode")));
        Rectangle area = canvas.area(view.chart().orElseThrow().box("LampCode").orElseThrow());
        assertTrue(canvas.getClientArea().intersects(area), area.toString());
        assertTrue(text.isFocusControl() && page().getActivePart() == editor);
    }

    @Test
    void should_take_what_performs_a_folded_routine_where_the_cursor_is_in_it() {
        editor.selectAndReveal(document.get().indexOf("check Judge"), 0);

        Waiting.until("a step that performs it is in hand", () -> view.inHand().filter(key -> key.equals("TryIt")).isPresent());
    }

    @Test
    void should_walk_along_the_results_by_keys_and_go_to_the_text() {
        editor.selectAndReveal(document.get().indexOf("observe LampCode"), 0);
        Waiting.until("it is in hand", () -> view.inHand().equals(Optional.of("LampCode")));
        canvas.setFocus();

        press(SWT.ARROW_RIGHT);
        press(SWT.ARROW_DOWN);
        assertEquals(Optional.of("FormatsSaved"), view.inHand(), "5 blinks, the second result");
        Waiting.until("it is selected in the text", () -> selected().equals("FormatsSaved"));
        assertTrue(canvas.isFocusControl(), "the keys stay in the chart");

        press(SWT.ARROW_UP);
        assertEquals(Optional.of("LampCode"), view.inHand());
        press(SWT.ARROW_DOWN);
        press(SWT.ARROW_LEFT);
        press(SWT.CR);
        Waiting.until("the text has the focus", () -> page().getActivePart() == editor);
        assertFalse(canvas.isFocusControl());
    }

    @Test
    void should_select_a_clicked_step_in_the_text() {
        canvas.fit();
        Rectangle area = canvas.area(view.chart().orElseThrow().box("SettingsLost").orElseThrow());
        Event click = new Event();
        click.button = 1;
        click.x = area.x + area.width / 2;
        click.y = area.y + area.height / 2;
        canvas.notifyListeners(SWT.MouseDown, click);

        assertEquals(Optional.of("SettingsLost"), view.inHand());
        assertEquals("SettingsLost", selected());
    }

    @Test
    void should_offer_what_concerns_the_whole_chart_where_the_right_button_points_at_no_step() {
        canvas.fit();
        Rectangle area = canvas.area(view.chart().orElseThrow().box("SettingsLost").orElseThrow());

        List<String> beside = offered(new Point(1, canvas.getClientArea().height - 1), SWT.MENU_MOUSE);
        List<String> on = offered(new Point(area.x + area.width / 2, area.y + area.height / 2), SWT.MENU_MOUSE);
        List<String> byKey = offered(new Point(1, canvas.getClientArea().height - 1), SWT.MENU_KEYBOARD);

        assertEquals(List.of("Larger", "Smaller", "All of it", "Find\u2026", "Times", "Likelihood"), beside);
        assertTrue(on.contains("Take out the step (Delete)"), on.toString());
        assertEquals(on, byKey, "a key speaks of the step in hand");
    }

    private List<String> offered(Point at, int by) {
        Event asked = new Event();
        asked.x = canvas.toDisplay(at).x;
        asked.y = canvas.toDisplay(at).y;
        asked.detail = by;
        canvas.notifyListeners(SWT.MenuDetect, asked);
        canvas.getMenu().notifyListeners(SWT.Show, new Event());
        return Arrays.stream(canvas.getMenu().getItems()).map(MenuItem::getText).filter(words -> !words.isEmpty()).toList();
    }

    /** What is selected would be written over by the next key, so it must be the step and nothing else. */
    @Test
    void should_select_a_step_where_it_stands_by_now_or_not_at_all() throws BadLocationException {
        String before = document.get();
        canvas.fit();
        Rectangle area = canvas.area(view.chart().orElseThrow().box("SettingsLost").orElseThrow());
        Event click = new Event();
        click.button = 1;
        click.x = area.x + area.width / 2;
        click.y = area.y + area.height / 2;
        try {
            document.replace(before.indexOf("\n\n", before.indexOf("fault FlexLoose")) + 2, 0, "\" half typed words ");
            Waiting.until("the chart waits", () -> view.said().contains("waits"));
            canvas.notifyListeners(SWT.MouseDown, click);
            assertEquals("SettingsLost", selected());
        } finally {
            document.set(before);
        }
    }

    @Test
    void should_open_and_fold_a_routine() {
        editor.selectAndReveal(document.get().indexOf("perform TryIt"), 0);
        Waiting.until("it is in hand", () -> view.inHand().equals(Optional.of("TryIt")));

        press(' ');
        Waiting.until("its steps are drawn", () -> view.chart().orElseThrow().box("TryIt/Judge").isPresent());
        press(' ');
        Waiting.until("it is one box again", () -> view.chart().orElseThrow().box("TryIt/Judge").isEmpty());
    }

    @Test
    void should_keep_the_last_picture_of_half_typed_text_and_say_so() throws BadLocationException {
        Chart before = view.chart().orElseThrow();
        int at = document.get().indexOf("observe LampCode");
        document.replace(at, 0, "check Nex \"half ");

        Waiting.until("it is said", () -> view.said().equals(ChartView.WAITS));
        assertEquals(Optional.of(before), view.chart());

        document.replace(at, "check Nex \"half ".length(), "");
        Waiting.until("it is drawn again", () -> view.said().isEmpty());
    }

    @Test
    void should_follow_a_change_of_the_text() throws BadLocationException {
        int at = document.get().indexOf("5 blinks    -> FormatsSaved") + "5 blinks    -> ".length();
        document.replace(at, "FormatsSaved".length(), "Scratch");

        Waiting.until("the arrow leads elsewhere", () -> view.chart().orElseThrow().from("LampCode").get(1).to().equals("Scratch"));
    }

    @Test
    void should_light_the_path_of_the_chosen_finding() {
        SourceRange here = ActiveText.get().place().orElseThrow().live().text().document().name().at();
        ChosenFinding.get().choose(new Finding("unknown-name", Severity.ADVICE, here, "made", "made",
                List.of(new PathStep("SeeIt", "faint", here), new PathStep("LampCode", "5 blinks", here), new PathStep("FormatsSaved", "", here)),
                List.of()));

        assertEquals(List.of("SeeIt", "LampCode", "FormatsSaved"), view.lit());
        ChosenFinding.get().forget();
        assertEquals(List.of(), view.lit());
    }

    @Test
    void should_draw_larger_smaller_and_whole() {
        ChartBox box = view.chart().orElseThrow().box("SeeIt").orElseThrow();
        int width = canvas.area(box).width;
        canvas.larger();
        assertTrue(canvas.area(box).width > width);
        canvas.smaller();
        canvas.smaller();
        assertTrue(canvas.area(box).width < width);
        canvas.fit();
        Rectangle room = canvas.getClientArea();
        for (ChartBox one : view.chart().orElseThrow().boxes()) {
            Rectangle area = canvas.area(one);
            assertTrue(area.x >= 0 && area.x + area.width <= room.width && area.y >= 0 && area.y + area.height <= room.height, one.key());
        }
    }

    @Test
    void should_draw_the_routines_of_a_library_under_one_another() throws CoreException {
        ITextEditor library = Editors.open(Folders.demo().getFile("library/HarbourBench.procedure")).orElseThrow();
        Waiting.until("its routines are drawn", () -> view.chart().filter(chart -> !chart.headings().isEmpty()).isPresent());

        Chart chart = view.chart().orElseThrow();
        assertTrue(chart.headings().size() > 3 && chart.headings().get(0).words().startsWith("Routine "), chart.headings().toString());
        page().closeEditor(library, false);
    }

    /** By the mouse, from the result "5 blinks" to the step "Scratch". */
    @Test
    void should_lead_a_result_elsewhere_when_it_is_drawn_to_a_step_and_take_it_back_in_one_step() throws BadLocationException {
        String before = document.get();
        draw("LampCode", 1, "Scratch");

        Waiting.until("the arrow leads there", () -> leads("LampCode", 1).equals("Scratch"));
        assertEquals(before.replace("5 blinks    -> FormatsSaved", "5 blinks    -> Scratch"), document.get());
        assertTrue(canvas.notice().startsWith("Done: Let \"5 blinks\" of \"LampCode\" lead to \"Scratch\""), canvas.notice());
        assertEquals(Optional.of("LampCode"), view.inHand());

        canvas.setFocus();
        view.getViewSite().getActionBars().getGlobalActionHandler(org.eclipse.ui.actions.ActionFactory.UNDO.getId()).run();
        assertEquals(before, document.get());
        Waiting.until("the arrow leads back", () -> leads("LampCode", 1).equals("FormatsSaved"));
    }

    @Test
    void should_ask_by_the_keyboard_where_a_result_is_to_lead() {
        take("LampCode");
        press(SWT.ARROW_RIGHT);
        List<String> said = Dialogs.answer("Lead the result", dialog -> Controls.all(dialog, Text.class).get(0).setText("fingernail"), "Choose");
        press('l');

        assertTrue(said.get(0).contains("To which step shall \"5 blinks\" of \"LampCode\" lead?"), said.toString());
        Waiting.until("the arrow leads there", () -> leads("LampCode", 1).equals("Scratch"));
    }

    @Test
    void should_insert_and_add_a_step_by_the_keyboard_and_take_it_out_again() throws BadLocationException {
        String before = document.get();
        take("LampCode");
        press(SWT.ARROW_RIGHT);
        List<String> heard = new ArrayList<>();
        Dialogs.answer("Insert a step", dialog -> {
            heard.add(Keyboard.name(Controls.all(dialog, Combo.class).get(0)));
            Controls.all(dialog, Text.class).stream().filter(Control::isVisible).forEach(field -> heard.add(Keyboard.name(field)));
            Controls.all(dialog, Text.class).get(1).setText("Count them once more");
        }, "Write it");
        press(SWT.INSERT);
        Waiting.until("it is drawn and in hand", () -> view.inHand().equals(Optional.of("NewStep")));
        assertEquals(List.of("Kind", "Name", "Words"), heard, "who cannot see a field hears what it is");
        assertEquals("NewStep", leads("LampCode", 1));
        assertEquals("FormatsSaved", leads("NewStep", 0));
        assertTrue(document.get().contains("check NewStep \"Count them once more\" {\n    yes -> FormatsSaved\n    no  -> FormatsSaved\n}\n"), document.get());

        press(SWT.DEL);
        Waiting.until("it is taken out", () -> view.chart().orElseThrow().box("NewStep").isEmpty());
        assertEquals(before, document.get());

        take("SaveFormats");
        Dialogs.answer("Add a step", dialog -> Controls.all(dialog, Text.class).get(1).setText("Tell the customer"), "Write it");
        Keys.press(canvas, SWT.INSERT, SWT.MOD2);
        Waiting.until("it is drawn and in hand", () -> view.inHand().equals(Optional.of("NewStep")));
        assertTrue(view.chart().orElseThrow().to("NewStep").isEmpty(), "nothing leads to it yet");
        assertTrue(canvas.notice().contains("New in the findings: "), canvas.notice());
    }

    @Test
    void should_insert_a_reading_with_what_is_asked_for_it() throws BadLocationException {
        String before = document.get();
        take("LampCode");
        press(SWT.ARROW_RIGHT);
        List<String> heard = new ArrayList<>();
        Dialogs.answer("Insert a step", dialog -> {
            Combo kind = Controls.all(dialog, Combo.class).get(0);
            kind.select(kind.indexOf("A reading"));
            kind.notifyListeners(SWT.Selection, new org.eclipse.swt.widgets.Event());
            List<Text> fields = Controls.all(dialog, Text.class);
            fields.get(1).setText("Head cold");
            Button write = Controls.all(dialog, Button.class).stream().filter(one -> one.getText().replace("&", "").equals("Write it")).findFirst().orElseThrow();
            heard.add(String.valueOf(write.isEnabled()));
            fields.get(2).setText("1.2 kohm +/- 5 %");
            Controls.all(dialog, Combo.class).stream().filter(Control::isVisible).forEach(field -> heard.add(Keyboard.name(field)));
            heard.add(Controls.all(dialog, Combo.class).get(1).getText());
            Controls.all(dialog, Combo.class).get(2).select(Controls.all(dialog, Combo.class).get(2).indexOf("HeadRail"));
            heard.add(dialog.getClientArea().height >= dialog.computeSize(dialog.getSize().x, SWT.DEFAULT).y - 60 ? "all of it" : "cut off");
        }, "Write it");
        List<String> danger = Dialogs.answer(ChartChanges.QUESTION, "Change it");
        press(SWT.INSERT);

        Waiting.until("it is drawn and in hand", () -> view.inHand().equals(Optional.of("NewStep")));
        assertEquals(List.of("false", "Kind", "What is read", "Where", "Against", "With", "resistance", "all of it"), heard);
        assertTrue(danger.get(0).contains("NewStep"), "a resistance is read while the supply is on: " + danger);
        assertTrue(document.get().contains("measure NewStep \"Head cold\" {\n    resistance at HeadRail using "), document.get());
        assertTrue(document.get().contains("    expects 1.2 kohm +/- 5 %\n    below  -> FormatsSaved\n    within -> FormatsSaved\n    above  -> FormatsSaved\n}\n"), document.get());
        press(SWT.DEL);
        Waiting.until("it is taken out", () -> view.chart().orElseThrow().box("NewStep").isEmpty());
        assertEquals(before, document.get());
    }

    @Test
    void should_say_why_a_step_is_not_taken_out_or_an_arrow_not_turned() throws Exception {
        String before = document.get();
        take("SeeIt");
        press(SWT.DEL);
        assertEquals("\"SeeIt\" leads to 2 (LampCode, TenMore): let its results lead to one step, then take it out.", canvas.notice());
        take("TryIt");
        press(' ');
        Waiting.until("its steps are drawn", () -> view.chart().orElseThrow().box("TryIt/Judge").isPresent());
        draw("LampCode", 1, "TryIt/Judge");
        assertTrue(canvas.notice().contains("stands in another part of the chart"), canvas.notice());
        take("SwitchOn");
        press(' ');
        Waiting.until("its steps are drawn", () -> view.chart().orElseThrow().boxes().stream().anyMatch(box -> box.key().startsWith("SwitchOn/")));
        canvas.find(view.chart().orElseThrow().boxes().stream().filter(box -> box.key().startsWith("SwitchOn/")).findFirst().orElseThrow().key());
        press(SWT.DEL);
        assertTrue(canvas.notice().contains("stands in another text"), canvas.notice());
        assertEquals(before, document.get());
    }

    @Test
    void should_ask_before_protection_goes() {
        String before = document.get();
        take("OpenLid");
        List<String> said = Dialogs.answer(ChartChanges.QUESTION, "Leave it as it is");
        press(SWT.DEL);
        Waiting.until("it is asked", () -> !said.isEmpty() && canvas.notice().equals("Nothing was changed."));
        assertTrue(said.get(0).contains("OpenLid"), said.toString());
        assertEquals(before, document.get());

        Dialogs.answer(ChartChanges.QUESTION, "Change it");
        press(SWT.DEL);
        Waiting.until("it is taken out", () -> view.chart().orElseThrow().box("OpenLid").isEmpty());
        assertEquals("CleanHead", leads("Scratch", 0));
    }

    @Test
    void should_not_change_a_text_that_was_typed_in_since_it_was_drawn() throws BadLocationException {
        take("SaveFormats");
        document.replace(0, 0, "// typed a moment ago\n");
        String typed = document.get();
        press(SWT.DEL);

        assertEquals(ChartChanges.CHANGED, canvas.notice());
        assertEquals(typed, document.get());
    }

    @Test
    void should_change_no_text_that_is_not_in_front_any_more() throws CoreException {
        String before = document.get();
        Job.getJobManager().suspend();
        try {
            draw("LampCode", 1, "Scratch");
            Editors.open(Folders.demo().getFile("LundavikTillDrawer.procedure"));
        } finally {
            Job.getJobManager().resume();
        }

        Waiting.until("it is told", () -> canvas.notice().equals(ChartChanges.OTHER));
        assertEquals(before, document.get());
    }

    /** Where the whole chart does not fit in letters that can be read, as on a small screen. */
    @Test
    void should_go_on_below_a_result_that_is_held_at_an_edge() {
        for (int larger = 0; larger < 4; larger++) {
            canvas.larger();
        }
        canvas.find("SeeIt");
        Rectangle before = canvas.area(view.chart().orElseThrow().box("SeeIt").orElseThrow());
        canvas.notifyListeners(SWT.MouseDown, mouse(middle("SeeIt", 0)));
        canvas.notifyListeners(SWT.MouseMove, mouse(new Point(canvas.getClientArea().width / 2, canvas.getClientArea().height - 2)));

        Waiting.until("it has gone on without another move", () -> canvas.area(view.chart().orElseThrow().box("SeeIt").orElseThrow()).y < before.y - before.height);
        press(SWT.ESC);
        int stopped = canvas.area(view.chart().orElseThrow().box("SeeIt").orElseThrow()).y;
        boolean[] over = {false};
        canvas.getDisplay().timerExec(300, () -> over[0] = true);
        Waiting.until("a while is over", () -> over[0]);
        assertEquals(stopped, canvas.area(view.chart().orElseThrow().box("SeeIt").orElseThrow()).y, "given up");
    }

    @Test
    void should_give_a_drag_up_with_escape() {
        String before = document.get();
        Point end = hold("LampCode", 1, "Scratch");
        press(SWT.ESC);
        canvas.notifyListeners(SWT.MouseUp, mouse(end));

        assertEquals("", canvas.notice());
        assertEquals(before, document.get());
    }

    @Test
    void should_find_a_step_by_its_words() {
        Dialogs.answer("Find a step", dialog -> Controls.all(dialog, Text.class).get(0).setText("brown line"), "Choose");
        view.getViewSite().getActionBars().getGlobalActionHandler(org.eclipse.ui.actions.ActionFactory.FIND.getId()).run();

        assertEquals(Optional.of("CleanHead"), view.inHand());
        assertEquals("CleanHead", selected());
    }

    /** Of 98 units 34 had lost their settings: they alone blink five times, as all of them come by there. */
    @Test
    void should_say_how_many_come_along_an_arrow_and_when() throws CoreException {
        view.tellLikelihood(true);
        Waiting.until("the arrows are reckoned", () -> canvas.figures().isPresent());

        Chart chart = view.chart().orElseThrow();
        List<String> words = canvas.figures().orElseThrow().of(chart.box("LampCode").orElseThrow(), chart.from("LampCode").get(1));
        assertEquals("35 %", words.get(0));
        assertTrue(words.get(1).matches("\\d+ (s|min)"), words.toString());
        ITextEditor library = Editors.open(Folders.demo().getFile("library/HarbourBench.procedure")).orElseThrow();
        Waiting.until("the routines of a library are drawn", () -> view.chart().filter(one -> !one.headings().isEmpty()).isPresent());
        assertTrue(canvas.figures().isEmpty(), "no unit of a hundred goes by them");
        page().closeEditor(library, false);
        view.tellLikelihood(false);
        assertTrue(canvas.figures().isEmpty());
    }

    @Test
    void should_have_no_work_behind_another_tab_and_catch_up_when_seen() throws Exception {
        CardView card = (CardView) page().showView(CardView.ID);
        Waiting.until("the card is there", () -> card.pages().isPresent());
        page().activate(editor);
        Chart before = view.chart().orElseThrow();
        document.replace(document.get().indexOf("5 blinks    -> FormatsSaved") + 15, "FormatsSaved".length(), "Scratch");
        Object pages = card.pages().orElseThrow();
        Waiting.until("the card is made anew", () -> card.pages().filter(now -> now != pages).isPresent());
        assertEquals(before, view.chart().orElseThrow(), "the chart behind it was not");

        page().showView(ChartView.ID);
        Waiting.until("it is drawn anew", () -> leads("LampCode", 1).equals("Scratch"));
        Object last = card.pages().orElseThrow();
        document.replace(document.get().indexOf("5 blinks    -> Scratch") + 15, "Scratch".length(), "FormatsSaved");
        Waiting.until("the chart follows", () -> leads("LampCode", 1).equals("FormatsSaved"));
        boolean[] over = {false};
        canvas.getDisplay().timerExec(800, () -> over[0] = true);
        Waiting.until("there was time for the card", () -> over[0]);
        assertEquals(last, card.pages().orElseThrow(), "the card behind it was left alone");
    }

    /** As somebody who works in the chart does: its keys are those of the part that is in front. */
    private void take(String key) {
        page().activate(view);
        canvas.find(key);
        assertEquals(Optional.of(key), view.inHand());
    }

    private String leads(String from, int result) {
        return view.chart().orElseThrow().from(from).stream().filter(arrow -> arrow.cell() == result).findFirst().map(arrow -> arrow.to()).orElse("");
    }

    private void draw(String from, int result, String to) {
        Point end = hold(from, result, to);
        canvas.notifyListeners(SWT.MouseUp, mouse(end));
    }

    /** Presses on a result and holds it over a step; where that is not seen, an edge is held until the chart has come that far. */
    private Point hold(String from, int result, String to) {
        canvas.find(from);
        canvas.notifyListeners(SWT.MouseDown, mouse(middle(from, result)));
        Rectangle room = canvas.getClientArea();
        Waiting.until(to + " is seen", () -> {
            Point wanted = middle(to, -1);
            canvas.notifyListeners(SWT.MouseMove, mouse(new Point(Math.max(1, Math.min(wanted.x, room.width - 2)), Math.max(1, Math.min(wanted.y, room.height - 2)))));
            return isWithin(wanted.x, room.width) && isWithin(wanted.y, room.height);
        });
        Point end = middle(to, -1);
        canvas.notifyListeners(SWT.MouseMove, mouse(end));
        return end;
    }

    private static boolean isWithin(int place, int room) {
        return place >= ChartCanvas.MARGIN && place <= room - ChartCanvas.MARGIN;
    }

    /** Of a result, or of the head of a step. */
    private Point middle(String key, int result) {
        ChartBox box = view.chart().orElseThrow().box(key).orElseThrow();
        Rectangle area = canvas.area(box);
        double size = area.width / (double) box.width();
        if (result < 0) {
            return new Point(area.x + (int) (12 * size), area.y + (int) (ChartBox.HEAD * size / 2));
        }
        ChartBox.Cell cell = box.cells().get(result);
        return new Point(area.x + (int) ((cell.x() + cell.width() / 2.0) * size), area.y + area.height - (int) (box.cellHeight() * size / 2));
    }

    private static Event mouse(Point at) {
        Event event = new Event();
        event.button = 1;
        event.x = at.x;
        event.y = at.y;
        return event;
    }

    private void press(int key) {
        Keys.press(canvas, key);
    }

    private String selected() {
        return ((ITextSelection) editor.getSelectionProvider().getSelection()).getText();
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
