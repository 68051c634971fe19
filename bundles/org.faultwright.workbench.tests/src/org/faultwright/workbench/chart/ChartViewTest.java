/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.texteditor.ITextEditor;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.SourceRange;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.findings.ChosenFinding;
import org.faultwright.workbench.live.ActiveText;
import org.faultwright.workbench.shelf.Folders;
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
        List<String> steps = List.of("SeeIt", "LampCode", "SettingsRestored");

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

        Waiting.until("a step that performs it is in hand", () -> view.inHand().filter(key -> key.equals("TrySettings")).isPresent());
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
        Rectangle area = canvas.area(view.chart().orElseThrow().box("SettingsRestored").orElseThrow());
        Event click = new Event();
        click.button = 1;
        click.x = area.x + area.width / 2;
        click.y = area.y + area.height / 2;
        canvas.notifyListeners(SWT.MouseDown, click);

        assertEquals(Optional.of("SettingsRestored"), view.inHand());
        assertEquals("SettingsRestored", selected());
    }

    /** What is selected would be written over by the next key, so it must be the step and nothing else. */
    @Test
    void should_select_a_step_where_it_stands_by_now_or_not_at_all() throws BadLocationException {
        String before = document.get();
        canvas.fit();
        Rectangle area = canvas.area(view.chart().orElseThrow().box("SettingsRestored").orElseThrow());
        Event click = new Event();
        click.button = 1;
        click.x = area.x + area.width / 2;
        click.y = area.y + area.height / 2;
        try {
            document.replace(before.indexOf("begin at"), 0, "\" half typed words ");
            Waiting.until("the chart waits", () -> view.said().contains("waits"));
            canvas.notifyListeners(SWT.MouseDown, click);
            assertEquals("SettingsRestored", selected());
        } finally {
            document.set(before);
        }
    }

    @Test
    void should_open_and_fold_a_routine() {
        editor.selectAndReveal(document.get().indexOf("perform TrySettings"), 0);
        Waiting.until("it is in hand", () -> view.inHand().equals(Optional.of("TrySettings")));

        press(' ');
        Waiting.until("its steps are drawn", () -> view.chart().orElseThrow().box("TrySettings/Judge").isPresent());
        press(' ');
        Waiting.until("it is one box again", () -> view.chart().orElseThrow().box("TrySettings/Judge").isEmpty());
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
        int at = document.get().indexOf("5 blinks      -> FormatsSaved") + "5 blinks      -> ".length();
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

    private void press(int key) {
        Event event = new Event();
        event.keyCode = key;
        event.character = key < 128 ? (char) key : 0;
        canvas.notifyListeners(SWT.KeyDown, event);
    }

    private String selected() {
        return ((ITextSelection) editor.getSelectionProvider().getSelection()).getText();
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
