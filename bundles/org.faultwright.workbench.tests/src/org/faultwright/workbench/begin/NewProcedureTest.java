/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.IDocument;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.handlers.IHandlerService;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.publish.card.CardPages;
import org.faultwright.workbench.Controls;
import org.faultwright.workbench.Dialogs;
import org.faultwright.workbench.KeepPicture;
import org.faultwright.workbench.Keyboard;
import org.faultwright.workbench.Waiting;
import org.faultwright.workbench.editor.Editors;
import org.faultwright.workbench.live.Folders;
import org.faultwright.workbench.live.LiveText;
import org.faultwright.workbench.live.LiveTexts;
import org.faultwright.workbench.publishing.Words;
import org.faultwright.workbench.welcome.Welcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** New procedures and libraries, answered at the keyboard alone. */
@ExtendWith(KeepPicture.class)
class NewProcedureTest {
    /** Keys that somebody presses in a minute who types with a few fingers, and seconds to think about each question: an assumption. */
    private static final int KEYS_A_MINUTE = 120;
    private static final int SECONDS_A_QUESTION = 10;

    @TempDir
    private Path folder;
    private final Keyboard keyboard = new Keyboard();
    private final List<String> onTheWay = new ArrayList<>();
    private Throwable failed;

    @AfterEach
    void leave_it_as_it_was() throws CoreException {
        page().closeAllEditors(false);
        for (IProject project : Folders.all()) {
            if (Folders.place(project).getLocation().toPath().startsWith(folder)) {
                project.delete(IResource.NEVER_DELETE_PROJECT_CONTENT, new NullProgressMonitor());
            }
        }
    }

    /** An invented glue pot with five faults, four readings and one table of codes, by somebody who has only the welcome. */
    @Test
    void should_come_from_the_welcome_to_a_printed_card() throws CoreException, IOException {
        Path codes = Files.writeString(folder.resolve("codes.csv"), "Blinks;Meaning;Note\n2 blinks;Heat sensor open or shorted;\n3 blinks;Pot too hot;\n"
                + "5 blinks;Supply too low;\n;left over;\n");
        Path bench = folder.resolve("glue");
        long began = System.nanoTime();
        Welcome.open(page());
        keyboard.rest(500);
        keyboard.picture("start-1-welcome");
        during("New procedure", shell -> {
            unit();
            complaint();
            faults();
            signs(codes);
            shown();
            dangers();
            place(bench);
        });
        keyboard.press("New procedure\u2026");
        check();

        Path file = bench.resolve("VelmoraStaysCold.procedure");
        Waiting.until("the text is written", () -> Files.exists(file));
        IDocument document = Waiting.untilPresent("it is open", Editors::active).getDocumentProvider().getDocument(Editors.active().orElseThrow().getEditorInput());
        LiveText live = Waiting.untilPresent("it is checked", () -> LiveTexts.get().of(document));
        List<Finding> found = LiveTexts.get().services().forPublishing((org.faultwright.procedure.Procedure) live.text().document()).findings();
        keyboard.picture("start-9-editor");
        String text = Files.readString(file);
        assertEquals(5, text.lines().filter(line -> line.startsWith("fault ")).count());
        assertEquals(4, text.lines().filter(line -> line.startsWith("measure ")).count());
        assertEquals(List.of(), found.stream().filter(one -> one.severity() == Severity.ERROR).toList());

        Path cards = folder.resolve("cards");
        publish(cards);
        Path card = cards.resolve("VelmoraStaysCold.pdf");
        Waiting.until("the card is there", () -> Files.exists(card) && Files.exists(cards.resolve("VelmoraStaysCold.quality.pdf")));
        try (CardPages pages = CardPages.open(Files.readAllBytes(card))) {
            File way = new File(System.getProperty("basedir", "."), "target/way");
            for (int i = 0; i < pages.count(); i++) {
                javax.imageio.ImageIO.write(pages.picture(i, 90), "png", new File(way, "start-card-" + (i + 1) + ".png"));
            }
            assertTrue(pages.count() >= 1);
            double minutes = (double) keyboard.keys() / KEYS_A_MINUTE + (double) keyboard.answers() * SECONDS_A_QUESTION / 60;
            System.out.printf("== from the welcome to the card: %d answers, %d keys; about %.0f minutes (%d keys a minute, %d s for each question); the machine was waited for "
                    + "and driven %.0f s; %d errors, %d warnings, %d pieces of advice; %d pages%n", keyboard.answers(), keyboard.keys(), minutes, KEYS_A_MINUTE,
                    SECONDS_A_QUESTION, (System.nanoTime() - began) / 1e9, count(found, Severity.ERROR), count(found, Severity.WARNING), count(found, Severity.ADVICE),
                    pages.count());
            onTheWay.forEach(one -> System.out.println("   on the way: " + one));
            found.forEach(one -> System.out.println("   " + one.severity() + " " + one.rule() + ": " + one.message()));
        }
    }

    private static long count(List<Finding> found, Severity severity) {
        return found.stream().filter(one -> one.severity() == severity).count();
    }

    private void unit() {
        keyboard.answer("Maker and model", "Velmora K2 glue pot");
        keyboard.answer("It is fed by", "an adapter or a low voltage");
        keyboard.picture("start-2-unit");
        found("The unit");
        keyboard.enter("Next >");
    }

    private void complaint() {
        keyboard.answer("What is seen", "Stays cold");
        keyboard.answer("Complaint 1, In the customer's words", "the glue does not melt");
        keyboard.answer("Complaint 2, In the customer's words", "heater burnt out, says the shop");
        keyboard.picture("start-3-complaint");
        found("The complaint");
        keyboard.enter("Next >");
    }

    /** Keeps what is told beside the answers once they are checked. */
    private void found(String page) {
        keyboard.rest(1_500);
        Shell shell = Display.getCurrent().getActiveShell();
        String told = Controls.all(shell, Label.class).stream().map(Label::getText).filter(words -> words.startsWith("Not whole yet") || words.startsWith("Checked in full"))
                .reduce((one, other) -> other).orElse("nothing yet");
        onTheWay.add(page + " (" + keyboard.answers() + " answers, " + keyboard.keys() + " keys so far): " + told);
    }

    private void fault(int number, String... cells) {
        keyboard.answer("Fault " + number + ", What is broken", cells[0]);
        keyboard.answer("Fault " + number + ", Cases", cells[1]);
        keyboard.answer("Fault " + number + ", What puts it right", cells[2]);
        keyboard.answer("Fault " + number + ", Minutes", cells[3]);
    }

    private void faults() {
        fault(1, "Heat sensor open", "9", "Fit a new heat sensor", "10");
        fault(2, "Adapter dead", "7", "Take a new adapter", "1");
        fault(3, "Heater open", "4", "Fit a new heater", "15");
        fault(4, "Switching transistor dead", "3", "Fit a new transistor Q3", "20");
        fault(5, "Fuse F1 open", "3", "Fit a new fuse F1", "5");
        keyboard.picture("start-4-faults");
        found("Faults");
        keyboard.enter("Next >");
    }

    private void reading(int number, String where, String what, String limit, String most, String state) {
        keyboard.answer("Reading " + number + ", Where", where);
        keyboard.answer("Reading " + number + ", What", what);
        keyboard.answer("Reading " + number + ", A sound unit has", limit);
        if (!most.isEmpty()) {
            keyboard.answer("Reading " + number + ", Never over", most);
        }
        keyboard.answer("Reading " + number + ", The unit is", state);
    }

    private void signs(Path codes) {
        keyboard.answer("Look 1, Question", "Is the lamp on the adapter lit?");
        keyboard.answer("Look 1, As it should be", "lit");
        keyboard.answer("Look 1, Else (commas between)", "dark");
        keyboard.answer("Which one, and where", "Red lamp beside the knob");
        keyboard.answer("Document with the table", "Velmora K2 service sheet, page 3");
        keyboard.when("A table of codes", () -> guarded(() -> {
            Shell table = keyboard.window("A table of codes");
            keyboard.answer("File (CSV or XLSX)", codes.toString());
            Waiting.until("it is read", () -> Controls.all(table, Table.class).get(0).getItemCount() == 4);
            keyboard.picture("start-5-table");
            assertTrue(Words.of(table).contains("3 lines are read; 1 cannot be read as it is:"), Words.of(table));
            assertTrue(Controls.all(table, Text.class).stream().anyMatch(one -> one.getText().startsWith("Line 5 has no code")), Words.of(table));
            keyboard.enter("Take these lines");
        }));
        keyboard.press("Codes from a table\u2026");
        reading(1, "Adapter plug, out of the pot", "dc voltage", "24 V +/- 5 %", "30 V", "off, closed");
        reading(2, "Heater plug J3, pulled", "resistance", "16 ohm +/- 15 %", "", "off, open");
        reading(3, "Fuse F1, both ends", "resistance", "at most 2 ohm", "", "off, open");
        reading(4, "Drain of Q3 against ground", "dc voltage", "at most 2 V", "30 V", "on, open");
        keyboard.picture("start-6-signs");
        found("Signs");
        keyboard.enter("Next >");
    }

    private void shown() {
        keyboard.answer("Heat sensor open: Red lamp beside the knob", "2 blinks");
        keyboard.answer("Adapter dead: Is the lamp on the adapter lit?", "dark");
        keyboard.answer("Adapter dead: Red lamp beside the knob", "none");
        keyboard.answer("Adapter dead: Adapter plug, out of the pot", "below");
        keyboard.answer("Heater open: Red lamp beside the knob", "none");
        keyboard.answer("Heater open: Heater plug J3, pulled", "above");
        keyboard.answer("Switching transistor dead: Red lamp beside the knob", "none");
        keyboard.answer("Switching transistor dead: Drain of Q3 against ground", "above");
        keyboard.answer("Fuse F1 open: Red lamp beside the knob", "none");
        keyboard.answer("Fuse F1 open: Fuse F1, both ends", "above");
        keyboard.picture("start-7-shown");
        found("What is seen");
        keyboard.enter("Next >");
    }

    private void dangers() {
        keyboard.answer("Something hot", "");
        keyboard.picture("start-8-dangers");
        found("Dangers");
        keyboard.enter("Next >");
    }

    private void place(Path bench) {
        keyboard.answer("Folder", bench.toString());
        keyboard.picture("start-8b-place");
        found("Name and folder");
        keyboard.enter("Write it");
    }

    private void publish(Path cards) {
        keyboard.when("Publish", () -> guarded(() -> {
            keyboard.answer("Into folder", cards.toString());
            keyboard.picture("start-10-publish");
            keyboard.enter("Publish");
        }));
        command("publish");
        check();
        // the outcome comes when the dialog is gone
        List<String> said = Dialogs.answer("Publish", "OK");
        Waiting.until("the outcome is told", () -> !said.isEmpty());
        assertTrue(said.get(0).contains("VelmoraStaysCold.quality.pdf written into " + cards), said.toString());
    }

    @Test
    void should_keep_answers_when_going_back_and_lose_nothing_without_a_question() {
        during("New procedure", shell -> {
            keyboard.answer("Maker and model", "Velmora K2");
            keyboard.enter("Next >");
            keyboard.answer("What is seen", "Stays cold");
            keyboard.press("< Back");
            assertEquals("Velmora K2", ((Text) keyboard.go("Maker and model")).getText());
            keyboard.enter("Next >");
            assertEquals("Stays cold", ((Text) keyboard.go("What is seen")).getText());
            List<String> said = Dialogs.answer(QuestionDialog.THROW_AWAY, "Go on answering");
            keyboard.escape();
            Waiting.until("it is asked", () -> !said.isEmpty());
            keyboard.rest(300);
            assertTrue(said.get(0).contains("kept nowhere else"), said.toString());
            assertTrue(shell.isVisible());
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    /** While another program is worked in, the window system tells of no window that is worked in. */
    @Test
    void should_belong_to_the_window_whichever_program_is_worked_in() {
        during("New procedure", shell -> {
            assertEquals(page().getWorkbenchWindow().getShell(), shell.getParent(), "else it lies behind the window, and Esc does nothing");
            keyboard.escape();
        });
        new NewProcedureHandler().execute(new ExecutionEvent(null, Map.of(), null, null));
        check();
    }

    @Test
    void should_never_write_over_a_file_and_begin_with_a_text_to_write_over_when_nothing_is_answered() throws IOException {
        Files.writeString(folder.resolve("Taken.procedure"), "procedure Taken \"Taken\"\n");
        during("New procedure", shell -> {
            for (int i = 0; i < 6; i++) {
                keyboard.enter("Next >");
            }
            keyboard.answer("Name", "Taken");
            keyboard.answer("Folder", folder.toString());
            Waiting.until("it says why not", () -> Words.of(shell).contains("There is a Taken.procedure already"));
            assertFalse(button(shell, "Write it").isEnabled());
            keyboard.answer("Name", "Free");
            keyboard.enter("Write it");
        });
        command("newProcedure");
        check();

        assertEquals("procedure Taken \"Taken\"\n", Files.readString(folder.resolve("Taken.procedure")));
        assertTrue(Files.readString(folder.resolve("Free.procedure")).contains("// A procedure to write over."));
        assertEquals("rw-r--r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("Free.procedure"))), "the bench reads it, too");
    }

    @Test
    void should_say_what_is_missing_before_it_is_written() {
        during("New procedure", shell -> {
            keyboard.answer("Maker and model", "Velmora K2");
            for (int i = 0; i < 3; i++) {
                keyboard.enter("Next >");
            }
            keyboard.answer("Reading 1, Where", "C12");
            keyboard.answer("Reading 1, A sound unit has", "lots");
            for (int i = 0; i < 3; i++) {
                keyboard.enter("Next >");
            }
            Waiting.until("it says what", () -> Words.of(shell).contains("What can it be?"));
            assertFalse(button(shell, "Write it").isEnabled());
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    @Test
    void should_lose_neither_of_two_meanings_of_one_code() {
        during("New procedure", shell -> {
            for (int i = 0; i < 3; i++) {
                keyboard.enter("Next >");
            }
            keyboard.answer("Code 1, Code", "3 blinks");
            keyboard.answer("Code 1, What it means", "Head too cold");
            keyboard.answer("Code 2, Code", "3 blinks");
            keyboard.answer("Code 2, What it means", "Head too hot");
            Waiting.until("it says so", () -> Words.of(shell).contains("\"3 blinks\" stands in two rows"));
            assertFalse(button(shell, "Next >").isEnabled());
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    @Test
    void should_begin_a_library_with_the_ranges_of_a_table_beside_the_others() throws IOException {
        Path libraries = Files.createDirectories(folder.resolve("library"));
        Path ranges = Files.writeString(folder.resolve("ranges.csv"), "Function;Range;Resolution;Accuracy\nDCV;60 V;10 mV;0.5 % + 2\nOhm;600 ohm;0.1 ohm;0.9 % + 3\nColour;3;;\n",
                StandardCharsets.UTF_8);
        during("New library", shell -> {
            keyboard.answer("The bench", "North bench");
            keyboard.answer("An instrument", "Velmora 6000 meter");
            keyboard.when("An instrument's ranges", () -> guarded(() -> {
                keyboard.answer("File (CSV or XLSX)", ranges.toString());
                keyboard.enter("Take these lines");
            }));
            keyboard.press("Its ranges from a table\u2026");
            keyboard.picture("start-library");
            keyboard.enter("Next >");
            keyboard.answer("Something that moves", "");
            keyboard.enter("Next >");
            keyboard.answer("Folder", libraries.toString());
            keyboard.enter("Write it");
        });
        command("newLibrary");
        check();

        String text = Files.readString(libraries.resolve("NorthBench.procedure"));
        assertTrue(text.contains("library NorthBench \"North bench\"") && text.replaceAll(" +", " ").contains("resistance up to 600 ohm resolution 0.1 ohm"), text);
    }

    @Test
    void should_take_a_fault_table_with_what_each_fault_shows() throws IOException {
        Path table = Files.writeString(folder.resolve("faults.csv"), "fault,cases,remedy,Look at the fuse,Lamp\nFuse blown,12,Fit a new fuse,dark,off\n"
                + "Regulator dead,4,Replace the regulator,clear,dim or off\n");
        during("New procedure", shell -> {
            keyboard.enter("Next >");
            keyboard.enter("Next >");
            keyboard.when("A fault table", () -> guarded(() -> {
                keyboard.answer("File (CSV or XLSX)", table.toString());
                keyboard.enter("Take these lines");
            }));
            keyboard.press("From a table\u2026");
            StyledText text = Controls.all(shell, StyledText.class).get(0);
            Waiting.until("the text has grown", () -> text.getText().contains("shows SeeIt asReported, LookAtTheFuse clear, Lamp dim or off"));
            assertTrue(text.getText().contains("remedy FitANewFuse"), text.getText());
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    /** Of the least parts that a workbook has (ECMA-376 part 1, 12.2): read in the window, with the libraries that the product has. */
    private Path workbook(List<List<String>> rows) throws IOException {
        StringBuilder sheet = new StringBuilder("<worksheet xmlns='http://schemas.openxmlformats.org/spreadsheetml/2006/main'><sheetData>");
        for (int i = 0; i < rows.size(); i++) {
            sheet.append("<row r='").append(i + 1).append("'>");
            for (int j = 0; j < rows.get(i).size(); j++) {
                sheet.append("<c r='").append((char) ('A' + j)).append(i + 1).append("' t='inlineStr'><is><t>").append(rows.get(i).get(j)).append("</t></is></c>");
            }
            sheet.append("</row>");
        }
        String office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
        String relations = "<Relationships xmlns='http://schemas.openxmlformats.org/package/2006/relationships'><Relationship Id='rId1' Type='" + office
                + "/%s' Target='%s'/></Relationships>";
        Map<String, String> parts = new LinkedHashMap<>();
        parts.put("[Content_Types].xml", "<Types xmlns='http://schemas.openxmlformats.org/package/2006/content-types'>"
                + "<Default Extension='rels' ContentType='application/vnd.openxmlformats-package.relationships+xml'/>"
                + "<Override PartName='/xl/workbook.xml' ContentType='application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml'/>"
                + "<Override PartName='/xl/worksheets/sheet1.xml' ContentType='application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml'/></Types>");
        parts.put("_rels/.rels", relations.formatted("officeDocument", "xl/workbook.xml"));
        parts.put("xl/workbook.xml", "<workbook xmlns='http://schemas.openxmlformats.org/spreadsheetml/2006/main' xmlns:r='" + office
                + "'><sheets><sheet name='Faults' sheetId='1' r:id='rId1'/></sheets></workbook>");
        parts.put("xl/_rels/workbook.xml.rels", relations.formatted("worksheet", "worksheets/sheet1.xml"));
        parts.put("xl/worksheets/sheet1.xml", sheet + "</sheetData></worksheet>");
        Path file = folder.resolve("faults.xlsx");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(file))) {
            for (Map.Entry<String, String> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(("<?xml version='1.0' encoding='UTF-8'?>" + part.getValue()).getBytes(StandardCharsets.UTF_8));
            }
        }
        return file;
    }

    @Test
    void should_take_the_faults_of_a_workbook() throws IOException {
        Path table = workbook(List.of(List.of("Fault", "Cases", "Repair"), List.of("Fuse F1 blown", "12", "Fit a new fuse F1"), List.of("Pump jammed", "14", "Descale it")));
        during("New procedure", shell -> {
            keyboard.enter("Next >");
            keyboard.enter("Next >");
            keyboard.when("A fault table", () -> guarded(() -> {
                keyboard.answer("File (CSV or XLSX)", table.toString());
                Shell dialog = keyboard.window("A fault table");
                Waiting.until("it is read", () -> Words.of(dialog).contains("2 lines are read"));
                keyboard.enter("Take these lines");
            }));
            keyboard.press("From a table\u2026");
            assertEquals("Pump jammed", ((Text) keyboard.go("Fault 2, What is broken")).getText());
            assertEquals("12", ((Text) keyboard.go("Fault 1, Cases")).getText());
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    @Test
    void should_say_which_minutes_are_none_and_let_the_limit_say_what_is_read() {
        during("New procedure", shell -> {
            keyboard.enter("Next >");
            keyboard.enter("Next >");
            keyboard.answer("Fault 1, What is broken", "Fuse F1 blown");
            keyboard.answer("Fault 1, Minutes", "soon");
            Waiting.until("it says so", () -> Words.of(shell).contains("\"soon\" is no time; write minutes"));
            keyboard.answer("Fault 1, Minutes", "30 s");
            keyboard.enter("Next >");
            keyboard.answer("Reading 1, A sound unit has", "16 ohm +/- 15 %");
            assertEquals("resistance", ((Combo) keyboard.go("Reading 1, What")).getText());
            keyboard.answer("Reading 1, What", "dc voltage");
            keyboard.answer("Reading 1, Min", "Heater");
            Waiting.until("it says so", () -> Words.of(shell).contains("\"Heater\" is no time"));
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    /** However much is told and however narrow the text is, it is read to its end. */
    @Test
    void should_tell_what_is_found_to_its_end() {
        during("New procedure", shell -> {
            keyboard.enter("Next >");
            keyboard.enter("Next >");
            for (int i = 1; i <= 3; i++) {
                keyboard.answer("Fault " + i + ", What is broken", "Something broken number " + i);
            }
            keyboard.enter("Next >");
            for (int i = 1; i <= 4; i++) {
                keyboard.answer("Look " + i + ", Question", "Is there something to be seen at the back number " + i + "?");
            }
            Waiting.until("it is told", () -> told(shell).getText().startsWith("Checked in full"));
            Label told = told(shell);
            assertTrue(told.getText().endsWith("before anybody works by it."), told.getText());
            ScrolledComposite around = (ScrolledComposite) told.getParent();
            Point needed = told.computeSize(around.getClientArea().width, SWT.DEFAULT);
            assertTrue(told.getSize().y >= needed.y && (needed.y <= around.getClientArea().height || around.getVerticalBar().isVisible()),
                    told.getSize() + " of " + needed);
            Dialogs.answer(QuestionDialog.THROW_AWAY, "Throw away");
            keyboard.escape();
        });
        command("newProcedure");
        check();
    }

    private static Label told(Shell shell) {
        return Controls.all(shell, Label.class).stream().filter(label -> label.getParent() instanceof ScrolledComposite).findFirst().orElseThrow();
    }

    // ---- driving

    /** Does something in the dialog that what follows opens. */
    private void during(String title, Consumer<Shell> act) {
        keyboard.when(title, () -> guarded(() -> {
            Shell shell = keyboard.window(title);
            keyboard.rest(300);
            act.accept(shell);
            Waiting.until(title + " is closed", shell::isDisposed);
        }));
    }

    /** What fails in a dialog is told by the test, and the dialog closed. */
    private void guarded(Runnable act) {
        try {
            act.run();
        } catch (RuntimeException | Error error) {
            if (failed == null) {
                failed = error;
                keyboard.picture("failed");
            }
            Arrays.stream(Display.getCurrent().getShells()).filter(shell -> (shell.getStyle() & SWT.APPLICATION_MODAL) != 0).forEach(Shell::dispose);
        }
    }

    private void check() {
        if (failed != null) {
            throw new AssertionError(failed.getMessage(), failed);
        }
    }

    private static Button button(Shell shell, String words) {
        return Controls.all(shell, Button.class).stream().filter(one -> one.getText().replace("&", "").equals(words)).findFirst().orElseThrow();
    }

    private void command(String id) {
        try {
            page().getWorkbenchWindow().getService(IHandlerService.class).executeCommand("org.faultwright.workbench." + id, null);
        } catch (org.eclipse.core.commands.common.CommandException refused) {
            check();
            throw new AssertionError(refused);
        }
    }

    private static IWorkbenchPage page() {
        return PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
    }
}
