/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.eclipse.core.commands.ExecutionException;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Text;
import org.eclipse.text.undo.DocumentUndoManagerRegistry;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.card.CardView;
import org.faultwright.workbench.editor.Bench;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.editor.ProcedureEditor;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.publishing.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

/** Walking in the real window, by its buttons and boxes. */
@ExtendWith(KeepPicture.class)
class WalkViewTest {
    private static final String TEXT = """
            procedure Lamp "The lamp stays dark"
            equipment "Invented lamp"
            complaints "dark"
            fault Empty "Cells empty" { cases 8 shows Look dark, Volts below }
            fault Broken "Wire broken" { cases 2 shows Look dark, Volts within }
            condition Lid "Lid" { closed, open } starts closed ends closed
            instrument Meter "Bench meter" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm }
            point Cells "Cell contacts" carries up to 5 V dc
            note Sharp caution { covers heat hazard "The lamp is hot." consequence "It burns." avoid "Let it cool." }
            routine OpenIt "Open it" {
                exits open normal
                do TurnLid "Turn the lid" { sets Lid open takes 1 min then -> open }
            }
            check Look "Does it light?" {
                takes 1 min
                dark       -> Opening
                lit normal -> NotSeen
            }
            perform Opening "Open the lamp" by OpenIt {
                hint "Left-hand thread."
                open -> Volts
            }
            measure Volts "Voltage of the cells" {
                dc voltage at Cells using Meter
                expects 3 V +/- 10 %
                needs Lid open
                notes Sharp
                takes 2 min
                below  -> Cell
                within -> Wire
                above  -> NotSeen
            }
            conclude Cell "Cells empty" { finds Empty report "New cells." }
            conclude Wire "Wire broken" { finds Broken report "Referred." refers to "Workshop" }
            conclude NotSeen "Complaint not seen" { finds nothing report "It lights." }
            """;

    private Bench bench;
    private ProcedureEditor editor;
    private IDocument document;
    private WalkView view;

    @BeforeEach
    void open() throws CoreException {
        bench = new Bench();
        view = (WalkView) page().showView(WalkView.ID);
    }

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        bench.close();
        page().showView(CardView.ID);
    }

    private void open(String text) throws CoreException {
        editor = bench.open(bench.file("Lamp.procedure", text));
        document = editor.document();
        page().activate(view);
        Waiting.until("the walk can be begun", () -> button("Begin").isPresent() || says("no step"));
    }

    private void begin(String text) throws CoreException {
        open(text);
        press("Begin");
        at("Look");
    }

    // ---- walking

    @Test
    void should_walk_to_a_conclusion_with_a_note_before_its_step() throws CoreException {
        begin(TEXT);
        assertTrue(says("Does it light?") && says("Check · Look · about 1 min") && says("What it still can be: 2 of 2"), words());
        press("Dark");
        at("Opening");
        assertTrue(says("Left-hand thread."), words());
        press("Begin the routine");
        at("Opening/TurnLid");
        assertTrue(says("In the routine of"), words());
        press("Done");
        at("Volts");
        assertTrue(says("The lamp is hot.") && says("Read the note first") && !says("3 V +/- 10 %"), words());
        assertTrue(boxes().isEmpty(), "nothing can be entered before the note is read");
        press("I have read this");
        assertTrue(says("3 V +/- 10 %") && says("So far 2 min"), words());
        boxes().get(0).setText("2,1");
        assertTrue(says("2.1 V: below."), words());
        press("Below: go on");
        at("Cell");
        assertTrue(says("Cells empty") && says("New cells.") && says("Before the unit leaves the bench"), words());
        assertTrue(says("Lid closed: this walk leaves it “open”"), words());
        assertTrue(says("What it still can be: 1 of 2") && says("(2.1 V)"), words());
    }

    @Test
    void should_come_to_a_conclusion_of_the_demo() throws CoreException {
        editor = (ProcedureEditor) Editors.open(Folders.demo().getFile("OllenbyFaintLabels.procedure")).orElseThrow();
        document = editor.document();
        Waiting.until("it is read", () -> button("Begin").isPresent());
        press("Begin");
        Waiting.until("it has begun", () -> view.stand().isPresent());
        for (int steps = 0; steps < 80 && !stand().walk().isEnd(); steps++) {
            while (button("I have read this").isPresent()) {
                press("I have read this");
            }
            String result = switch (stand().walk().label()) {
                case "SeeIt" -> "Faint";
                case "LampCode" -> "5 blinks";
                default -> firstResult();
            };
            WalkState before = stand();
            press(result);
            Waiting.until("the walk has gone on from " + before.walk().label(), () -> view.stand().filter(now -> now != before).isPresent());
        }
        assertEquals("SettingsLost", stand().walk().label());
        assertTrue(says("Stored settings lost, darkness at zero"), words());
    }

    @Test
    void should_mark_the_step_in_the_text_and_leave_the_keyboard_in_the_view() throws CoreException, BadLocationException {
        begin(TEXT);
        press("Dark");
        at("Opening");

        IAnnotationModel model = editor.getDocumentProvider().getAnnotationModel(editor.getEditorInput());
        Position marked = StepMark.in(model).orElseThrow();
        assertTrue(document.get(marked.getOffset(), marked.getLength()).startsWith("perform Opening"), "marked: " + marked);
        assertTrue(isInside(Display.getCurrent().getFocusControl()), "the keyboard stays in the view");
        CardView card = (CardView) page().showView(CardView.ID);
        Waiting.until("the card follows", () -> card.marked().equals(Optional.of("Opening")));
    }

    @Test
    void should_be_reached_by_its_command() throws Exception {
        begin(TEXT);
        page().activate(editor);
        assertFalse(isInside(Display.getCurrent().getFocusControl()), "the keyboard is in the text");

        PlatformUI.getWorkbench().getService(IHandlerService.class).executeCommand("org.faultwright.workbench.walk", null);

        assertTrue(isInside(Display.getCurrent().getFocusControl()), "the keyboard is in the view");
    }

    @Test
    void should_go_back_and_out_of_a_routine_and_begin_anew_and_go_on() throws CoreException {
        begin(TEXT);
        press("Dark");
        at("Opening");
        press("Begin the routine");
        at("Opening/TurnLid");
        press("← Back");
        at("Opening");
        press("Begin the routine");
        at("Opening/TurnLid");
        follow("In the routine of", "0");
        at("Opening");
        press("← Back");
        at("Look");
        press("Dark");
        at("Opening");
        press("Begin anew");
        assertTrue(says("Nothing is switched or measured"), words());
        press("Go on with the walk before");
        at("Opening");
        follow("Does it light?", "Correct");
        at("Look");
        assertEquals(0, stand().passed().size());
        press("← Back");
        assertTrue(button("Begin").isPresent(), words());
    }

    /** Whoever leans on the return key has read no note and seen no result. */
    @Test
    void should_take_no_key_that_is_held_and_no_second_half_of_a_double_click() throws CoreException {
        open(TEXT.replaceFirst("takes 1 min\\s+dark", "notes Sharp takes 1 min dark"));
        press("Begin");
        at("Look");
        Button read = button("I have read this").orElseThrow();
        key(read, SWT.KeyDown);
        press("I have read this");
        assertTrue(button("Dark").isPresent(), words());
        key(button("Dark").orElseThrow(), SWT.KeyDown);
        press("Dark");
        assertEquals("Look", stand().walk().label(), "the key is still held from the note");
        key(button("Dark").orElseThrow(), SWT.KeyUp);
        key(button("Dark").orElseThrow(), SWT.KeyDown);
        press("Dark");
        at("Opening");
        press("Begin the routine");
        assertEquals("Opening", stand().walk().label(), "the key is still held from the step before");

        click(1);
        press("Begin the routine");
        at("Opening/TurnLid");
        click(2);
        press("Done");
        assertEquals("Opening/TurnLid", stand().walk().label(), "that was the second half of a double click");
        click(1);
        press("Done");
        at("Volts");
    }

    private static void key(Button on, int type) {
        Event event = new Event();
        event.keyCode = SWT.CR;
        on.notifyListeners(type, event);
    }

    private void click(int count) {
        Event event = new Event();
        event.button = 1;
        event.count = count;
        view.control().notifyListeners(SWT.MouseDown, event);
    }

    @Test
    void should_call_no_note_of_a_conclusion_read_that_nobody_has_read() throws CoreException {
        begin(TEXT.replace("{ finds nothing report", "{ notes Sharp finds nothing report"));
        press("Lit");
        at("NotSeen");
        assertTrue(says("The lamp is hot.") && !says("\u2713 Read"), words());
    }

    @Test
    void should_name_the_voltage_that_a_tool_is_rated_for_and_the_source() throws CoreException {
        begin(TEXT.replace("hint \"Left-hand thread.\"", "tools \"insulated driver\" rated 1000 V source \"Lamp sheet 2\" dated 2026-01-05"));
        press("Dark");
        at("Opening");
        assertTrue(says("insulated driver (rated 1000 V)") && says("Lamp sheet 2, dated 2026-01-05"), words());
    }

    @Test
    void should_keep_a_walk_that_was_given_up_until_another_is_answered() throws CoreException {
        begin(TEXT);
        press("Dark");
        at("Opening");
        press("Begin anew");
        press("Begin");
        at("Look");
        press("Begin anew");
        press("Go on with the walk before");
        at("Opening");
    }

    @Test
    void should_say_doubtful_where_the_instrument_cannot_decide() throws CoreException {
        toTheReading(TEXT.replace("equipment", "decision rule guarded\nequipment"));
        assertTrue(says("the instrument cannot decide there"), words());
        boxes().get(0).setText("2.7");
        assertTrue(says("2.7 V: within. Doubtful: too near the limit for this instrument to decide."), words());
        boxes().get(0).setText("3.0");
        assertTrue(says("3 V: within.") && !says("3 V: within. Doubtful"), words());
    }

    @Test
    void should_refuse_what_is_no_reading_and_go_nowhere() throws CoreException {
        toTheReading(TEXT);
        for (String hostile : List.of("abc", "1e999", "--3", "1,2,3", "0x10", "NaN", "3 V", "&<a>")) {
            boxes().get(0).setText(hostile);
            assertTrue(words().contains("is no number: type digits with a comma or a point."), hostile + ": " + words());
            assertFalse(button("Type the reading").orElseThrow().isEnabled(), hostile);
            enter();
        }
        for (String nothing : List.of("", "   ")) {
            boxes().get(0).setText(nothing);
            assertFalse(says("is no number"), words());
            assertFalse(button("Type the reading").orElseThrow().isEnabled());
            enter();
        }
        boxes().get(0).setText("9".repeat(30));
        assertTrue(says(": above."), words());
        boxes().get(0).setText("OL");
        assertTrue(says("OL: above."), words());
        assertEquals("Volts", stand().walk().label());
        boxes().get(0).setText("3,0");
        enter();
        at("Wire");
    }

    @Test
    void should_choose_a_result_without_a_number() throws CoreException {
        toTheReading(TEXT);
        follow("Without a number", "Without a number");
        press("Within");
        at("Wire");
        assertTrue(says("Workshop"), words());
    }

    @Test
    void should_say_what_must_be_set_first() throws CoreException {
        begin(TEXT.replace("dark       -> Opening", "dark       -> Volts"));
        press("Dark");
        at("Volts");
        press("I have read this");
        assertTrue(says("To be set first") && says("Lid open"), words());
    }

    // ---- while the text changes

    @Test
    void should_replay_what_was_answered_when_the_text_changes_and_say_where_it_no_longer_fits() throws CoreException {
        toTheReading(TEXT);
        boxes().get(0).setText("2.1");
        press("Below: go on");
        at("Cell");

        document.set(TEXT.replace("conclude Cell \"Cells empty\"", "conclude Cell \"New cells are needed\""));
        Waiting.until("the new words are shown", () -> says("New cells are needed"));
        assertEquals(Optional.empty(), stand().stopped());

        document.set(TEXT.replace("expects 3 V +/- 10 %", "expects 2 V +/- 10 %"));
        Waiting.until("the walk has stopped", () -> view.stand().filter(now -> now.stopped().isPresent()).isPresent());
        assertEquals("Volts", stand().walk().label());
        assertEquals("The text has changed: 2.1 V at “Volts” now leads to “within”, no longer to “below”. Look at it again.", stand().stopped().orElseThrow());

        document.set(TEXT);
        at("Cell");

        document.set(TEXT.replace("dark       -> Opening", "dark       -> NotSeen"));
        at("NotSeen");
        assertEquals("The text has changed: the walk no longer comes to the routine at “Opening”. Go on from here.", stand().stopped().orElseThrow());
    }

    @Test
    void should_wait_while_the_text_cannot_be_read_and_keep_everything() throws CoreException, BadLocationException {
        toTheReading(TEXT);
        boxes().get(0).setText("2.9");
        int at = document.get().indexOf("conclude Wire");
        document.replace(at, 0, "measure Half \"half { ");
        Waiting.until("the walk waits", () -> says("The walk waits until the text can be read."));
        assertFalse(button("Within: go on").map(Button::isEnabled).orElse(false));

        document.set(TEXT);
        Waiting.until("the walk goes on", () -> !says("The walk waits") && button("Within: go on").filter(Button::isEnabled).isPresent());
        assertEquals("2.9", boxes().get(0).getText());
        assertEquals("Volts", stand().walk().label());
    }

    @Test
    void should_keep_a_walk_for_each_open_text() throws CoreException {
        begin(TEXT);
        press("Dark");
        at("Opening");
        ProcedureEditor other = bench.open(bench.file("Other.procedure", TEXT.replace("procedure Lamp", "procedure Other")));
        Waiting.until("the other text has no walk yet", () -> button("Begin").isPresent());
        page().activate(editor);
        at("Opening");
        page().closeEditor(other, false);
        at("Opening");
    }

    // ---- texts that are not sound

    @Test
    void should_walk_a_procedure_with_an_error_as_far_as_it_leads() throws CoreException {
        begin(TEXT.replace("dark       -> Opening", "dark       -> Nowhere"));
        Waiting.until("the error is told", () -> says("The walk follows what it says now."));
        press("Dark");
        Waiting.until("it is lost", () -> view.stand().filter(now -> now.walk().isLost()).isPresent());
        assertTrue(says("The way leads nowhere here") && button("Keep as an example").isEmpty(), words());
        press("← Back");
        at("Look");
    }

    @Test
    void should_say_what_cannot_be_walked() throws CoreException {
        open("procedure Empty \"Nothing in it\"\n");
        assertTrue(says("no step to begin at"), words());
        bench.open(bench.file("Some.procedure", "library Some \"Some\"\n"));
        Waiting.until("a library is told", () -> says("A library is not walked by itself."));
        page().closeAllEditors(false);
        Waiting.until("there is no text", () -> says("Open a procedure to walk it."));
    }

    // ---- as an example

    @Test
    void should_keep_the_walk_as_an_example_and_take_it_out_in_one_step() throws CoreException, ExecutionException {
        toTheReading(TEXT);
        boxes().get(0).setText("2,1");
        press("Below: go on");
        at("Cell");
        boxes().get(0).setText("Dark in the \"cellar\"");
        press("Keep as an example");
        Waiting.until("it is kept", () -> says("Kept as the example “Dark in the \"cellar\"” at the end of the text."));

        assertEquals(TEXT + "\nexample \"Dark in the \\\"cellar\\\"\" of Empty {\n    Look dark, Volts 2.1 V\n    ends at Cell\n}\n", document.get());
        Waiting.until("it is checked", () -> LiveTexts.get().of(document).filter(live -> live.isCurrent()).isPresent());
        assertEquals(List.of(), LiveTexts.get().of(document).orElseThrow().text().findings().stream()
                .filter(finding -> finding.rule().startsWith("example")).toList());
        at("Cell");
        assertTrue(button("Keep as an example").isEmpty(), "one walk is kept once");
        DocumentUndoManagerRegistry.getDocumentUndoManager(document).undo();
        assertEquals(TEXT, document.get());
        Waiting.until("it can be kept again", () -> button("Keep as an example").isPresent());
    }

    @Test
    void should_write_nothing_while_somebody_presses_enter_from_step_to_step() throws CoreException {
        begin(TEXT);
        press("Lit");
        at("NotSeen");
        Waiting.until("the keyboard is on a button", () -> Display.getCurrent().getFocusControl() instanceof Button);
        assertEquals("← Back", ((Button) Display.getCurrent().getFocusControl()).getText());
        assertEquals(TEXT, document.get());
    }

    @Test
    void should_refuse_an_example_that_would_bring_an_error_and_names_that_cannot_be() throws CoreException {
        begin(TEXT + "\nexample \"Complaint not seen\" { Look lit ends at NotSeen }\n");
        String before = document.get();
        press("Lit");
        at("NotSeen");
        assertEquals("Complaint not seen, 2", boxes().get(0).getText());
        boxes().get(0).setText("Complaint not seen");
        press("Keep as an example");
        Waiting.until("a name is refused", () -> says("There is an example “Complaint not seen” already"));
        boxes().get(0).setText("   ");
        press("Keep as an example");
        Waiting.until("a name is asked for", () -> says("An example needs a name"));
        assertEquals(before, document.get());
    }

    // ---- the view, as a person meets it

    private void toTheReading(String text) throws CoreException {
        begin(text);
        press("Dark");
        at("Opening");
        press("Begin the routine");
        at("Opening/TurnLid");
        press("Done");
        at("Volts");
        press("I have read this");
        assertEquals(1, boxes().size(), words());
    }

    private void at(String label) {
        Waiting.until("the walk stands at " + label, () -> view.stand().filter(now -> now.walk().label().equals(label)).isPresent());
    }

    private WalkState stand() {
        return view.stand().orElseThrow();
    }

    private String firstResult() {
        return Controls.all(view.control(), Button.class).stream().map(Button::getText).filter(text -> !text.equals("← Back") && !text.equals("Begin anew"))
                .findFirst().orElseThrow();
    }

    private Optional<Button> button(String text) {
        return Controls.all(view.control(), Button.class).stream().filter(one -> one.getText().equals(text) && one.isVisible()).findFirst();
    }

    private void press(String text) {
        Waiting.until("there is a button " + text, () -> button(text).filter(Button::isEnabled).isPresent());
        Button button = button(text).orElseThrow();
        button.setFocus();
        button.notifyListeners(SWT.Selection, new Event());
    }

    private void follow(String words, String target) {
        Link link = Controls.all(view.control(), Link.class).stream().filter(one -> one.getText().contains(words)).findFirst().orElseThrow();
        Event event = new Event();
        event.text = target;
        link.notifyListeners(SWT.Selection, event);
    }

    private void enter() {
        boxes().get(0).notifyListeners(SWT.DefaultSelection, new Event());
    }

    private List<Text> boxes() {
        return Controls.all(view.control(), Text.class);
    }

    private boolean says(String words) {
        return words().contains(words);
    }

    private String words() {
        return Words.of(view.control()).replace("&&", "&");
    }

    private boolean isInside(Control control) {
        for (Control one = control; one != null; one = one.getParent()) {
            if (one == view.control()) {
                return true;
            }
        }
        return false;
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
