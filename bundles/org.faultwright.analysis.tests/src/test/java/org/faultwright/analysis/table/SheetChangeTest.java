/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.Texts;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.beginning.PastedCells;
import org.faultwright.language.beginning.UnusableTable;
import org.junit.jupiter.api.Test;

/** Cells changed in the table, as the text changes: what was not touched stays, remarks above all. */
class SheetChangeTest {
    private static final String BENCH = FaultSheetTest.BENCH;

    /** The text after a change, which must read well and keep every remark. */
    private static String changed(String text, Consumer<SheetChange> change) {
        SheetChange made = new SheetChange(FaultSheetTest.sheet(text));
        change.accept(made);
        assertEquals(List.of(), made.refused());
        String after = made.fix("Change").orElseThrow().applied();
        assertEquals(List.of(), Texts.document(after).problems(), after);
        assertEquals(Remarks.in(text), Remarks.in(after));
        return after;
    }

    private static String refused(Consumer<SheetChange> change) {
        SheetChange made = new SheetChange(FaultSheetTest.sheet(BENCH));
        change.accept(made);
        assertTrue(made.fix("Change").isEmpty());
        return String.join("\n", made.refused());
    }

    private static void assertLine(String line, String after) {
        assertTrue(after.contains(line), after);
    }

    @Test
    void should_replace_add_and_take_out_an_entry_where_it_stands() {
        assertLine("shows SeeIt dim, Lens clean, // as a rule\n        TryLens yes", changed(BENCH, one -> one.shows("Dust", "Lens", "clean")));
        assertLine("shows SeeIt dim, Lens clean, Volts below, TryCell yes", changed(BENCH, one -> one.shows("Cell", "Lens", "clean")));
        assertLine("shows SeeIt dim, TryCell yes\n", changed(BENCH, one -> one.shows("Cell", "Volts", "")));
        assertLine("shows SeeIt dim, // as a rule\n        TryLens yes", changed(BENCH, one -> one.shows("Dust", "Lens", " ")));
        assertLine("shows SeeIt dim, Lens dusty // as a rule\n    remedy", changed(BENCH, one -> one.shows("Dust", "TryLens", "")));
        assertLine("{ cases 3 shows SeeIt dim 70 % or dark 30 %,\n        Volts within, TrySwitch yes remedy NewSwitch }",
                changed(BENCH, one -> one.shows("Switch", "Volts", "within")));
    }

    @Test
    void should_take_out_and_bring_back_the_whole_clause() {
        Consumer<SheetChange> all = one -> List.of("SeeIt", "Volts", "TryCell").forEach(step -> one.shows("Cell", step, ""));
        String without = changed(BENCH, all);
        assertTrue(Texts.procedure(without).faults().get(1).shows().isEmpty(), without);
        assertLine("cases 12\n    shows Volts below\n", changed(without, one -> one.shows("Cell", "Volts", "below")));
        assertLine("shows Rattle no\n", changed(BENCH, all.andThen(one -> one.shows("Cell", "Rattle", "no"))));
        assertLine("fault A \"A\" { shows Look bad cases 1 }", changed("procedure P \"P\"\nfault A \"A\" { cases 1 }\nfault B \"B\" { shows Look bad }",
                one -> one.shows("A", "Look", "bad")).replace("cases 1 shows Look bad", "shows Look bad cases 1"));
    }

    @Test
    void should_write_several_outcomes_shares_readings_and_beginnings_of_words() {
        assertLine("Volts 2.1 V, TryCell", changed(BENCH, one -> one.shows("Cell", "Volts", "2.1 V")));
        assertLine("Volts below 80 % or within, TryCell", changed(BENCH, one -> one.shows("Cell", "Volts", "be 80 %  OR Within")));
        assertLine("Lens clean, Volts", changed(BENCH, one -> one.shows("Cell", "Lens", "CL")));
        assertLine("Look \"very dark\" or \"E 02\"", changed("procedure P \"P\"\nfault B \"B\" { shows Look bad }\n", one -> one.shows("B", "Look", "very dark or \"E 02\"")));
    }

    @Test
    void should_refuse_what_the_step_cannot_show_and_say_what_it_can() {
        assertEquals("\"Dust\", Lens: \"Lens\" has no outcome \"greasy\"; it has dusty, clean.", refused(one -> one.shows("Dust", "Lens", "greasy")));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "dusty or")).contains("no outcome"));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "dusty or dusty")).contains("twice"));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "dusty 70 % or clean 50 %")).contains("120 %"));
        assertTrue(refused(one -> one.shows("Dust", "Volts", "5 A")).contains("no outcome"));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "dusty } fault X {")).contains("no outcome"));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "a\nb")).contains("one line"));
        assertTrue(refused(one -> one.shows("Dust", "Lens", "x".repeat(5000))).contains("200 characters"));
        assertTrue(refused(one -> one.cases("Dust", "a few")).contains("write one such as 12"));
        assertTrue(refused(one -> one.cases("Dust", "-3")).contains("no number"));
        assertTrue(refused(one -> one.takes("Lens", "2")).contains("write one such as 90 s"));
        assertTrue(refused(one -> one.takes("Lens", "2 V")).contains("no time"));
        assertTrue(refused(one -> one.takes("Lens", "-2 min")).contains("no time"));
        assertTrue(refused(one -> one.normal("Lens", "greasy")).contains("dusty, clean"));
        assertTrue(refused(one -> one.normal("Volts", "below")).contains("by its limit"));
        assertTrue(refused(one -> one.remedies("Dust", "Wipe it well!")).contains("no name of a step"));
        assertTrue(refused(one -> one.title("Dust", "  ")).contains("a few words"));
    }

    @Test
    void should_change_cases_words_remedies_times_and_what_is_normal() {
        assertLine("cases 31 // slips", changed(BENCH, one -> one.cases("Dust", "31")));
        String unsaid = changed(BENCH, one -> one.cases("Cell", ""));
        assertLine("fault Cell \"Cell spent\" {\n    shows", unsaid);
        assertLine("fault Cell \"Cell spent\" {\n    cases 2.5\n    shows", changed(unsaid, one -> one.cases("Cell", "2.5")));
        assertLine("fault Dust \"Dust, \\\"grey\\\"\" {", changed(BENCH, one -> one.title("Dust", "Dust, \"grey\"")));
        assertLine("remedy NewCell, WipeLens", changed(BENCH, one -> one.remedies("Cell", "NewCell, Wipe it")));
        assertLine("TryCell yes\n}", changed(BENCH, one -> one.remedies("Cell", "")));
        assertLine("takes 45 s\n    dusty", changed(BENCH, one -> one.takes("Lens", "45 s")));
        assertLine("check Lens \"Is the lens dusty?\" {\n    dusty", changed(BENCH, one -> one.takes("Lens", "")));
        assertLine("check Rattle \"Does it rattle?\" {\n    takes 1 min\n    yes", changed(BENCH, one -> one.takes("Rattle", "1 min")));
        assertLine("dusty normal -> WipeLens\n    clean -> Volts", changed(BENCH, one -> one.normal("Lens", "dusty")));
        assertLine("clean -> Volts", changed(BENCH, one -> one.normal("Lens", "")));
        assertLine("no normal -> NewCell", changed(BENCH, one -> one.normal("Rattle", "no")));
    }

    /** Its routine says how long a step takes, and {@code otherwise} where it leads; neither stands in the step. */
    @Test
    void should_write_a_line_of_its_own_beside_what_is_understood() {
        String text = """
                procedure P "p"
                otherwise Refer
                indicator Lamp "L" { 2 blinks means "x" }
                routine Try "Try it" { exits good normal, bad takes 3 min check B "b" { yes -> good no -> bad } }
                fault F "f" { shows Blinks 2 blinks, Tried bad }
                observe Blinks "B" at Lamp { 2 blinks -> Tried }
                perform Tried by Try { good -> Found }
                conclude Found { finds F }
                conclude Refer { refers to "x" }
                """;

        assertLine("perform Tried by Try { takes 5 min good -> Found }", changed(text, one -> one.takes("Tried", "5 min")));
        SheetChange nothing = new SheetChange(FaultSheetTest.sheet(text));
        nothing.takes("Tried", "");
        assertTrue(nothing.refused().isEmpty() && nothing.fix("Change").isEmpty());
        SheetChange normal = new SheetChange(FaultSheetTest.sheet(text));
        normal.normal("Blinks", "anything else");
        assertEquals(List.of("\"Blinks\", normal: \"anything else\" stands nowhere in the step: it leads where \"otherwise\" says."
                + " Write its line in the text first."), normal.refused());
    }

    @Test
    void should_change_nothing_where_the_same_is_typed() {
        SheetChange same = new SheetChange(FaultSheetTest.sheet(BENCH));
        same.shows("Switch", "SeeIt", "dim 70 % or dark 30 %");
        same.shows("Cell", "Lens", "");
        same.cases("Dust", "30");
        same.takes("Lens", "30 s");
        same.normal("Lens", "clean");
        same.remedies("Cell", "NewCell");
        same.title("Cell", "Cell spent");

        assertEquals(List.of(), same.refused());
        assertTrue(same.fix("Change").isEmpty());
    }

    @Test
    void should_add_rows_and_columns() {
        String after = changed(BENCH, one -> {
            String fault = one.addFault("Spring tired, \"flat\"");
            String step = one.addStep("Does the spring sag?");
            one.shows(fault, step, "yes");
            one.shows(fault, "SeeIt", "dim");
            one.shows("Dust", step, "no");
            one.cases(fault, "4");
        });
        assertLine("remedy NewSwitch }\nfault SpringTiredFlat \"Spring tired, \\\"flat\\\"\" {\n    cases 4\n    shows SeeIt dim, DoesTheSpringSag yes\n}\n\nbegin", after);
        assertLine("check DoesTheSpringSag \"Does the spring sag?\" {\n    takes 1 min\n    yes -> HandOn\n    no -> HandOn\n}\n", after);
        assertLine("TryLens yes, DoesTheSpringSag no\n", after);
        assertLine("procedure P \"P\"\n\nfault A \"A\" {\n    cases 1\n}\n", changed("procedure P \"P\"\n", one -> one.addFault("A")));
        assertLine("}\n\n// first\nbegin at Look", changed("procedure P \"P\"\n// first\nbegin at Look\ncheck Look \"?\" { a -> Look b -> Look }\n", one -> one.addFault("A")));
        assertLine("fault Dust2 \"dust\"", changed(BENCH, one -> one.addFault("dust")));
        assertLine("fault Fault47 \"47\"", changed(BENCH, one -> one.addFault("47")));
    }

    @Test
    void should_lead_the_outcomes_of_a_new_step_to_whoever_the_unit_is_referred_to() {
        assertLine("    warm -> HandOn\n    \"very hot\" -> HandOn\n}", changed(BENCH, one -> one.addStep("Is it warm?", List.of(" warm", "very hot "))));
        assertLine("    takes 1 min\n    dusty -> HandOn\n    other -> HandOn\n}", changed(BENCH, one -> one.shows("Dust", one.addStep("Dusty?"), "dusty")));
        assertLine("    takes 1 min\n    a -> HandOn\n    b -> HandOn\n}", changed(BENCH, one -> one.shows("Dust", one.addStep("Which?"), "a 70 % or b")));
        assertLine("check Volts2 \"Volts\" {\n    takes 1 min\n}", changed(BENCH, one -> one.shows("Dust", one.addStep("Volts"), "2 V")));
        assertTrue(refused(one -> one.addStep("Warm?", List.of("yes"))).contains("two or more"));
        assertTrue(refused(one -> one.addStep("Warm?", List.of("yes", "yes"))).contains("two or more"));
        assertTrue(refused(one -> one.addStep("Warm?", List.of("yes", "no } fault"))).contains("two or more"));
        SheetChange early = new SheetChange(FaultSheetTest.sheet("procedure P \"P\"\nfault A \"A\" { shows Look bad }\n"));
        early.addStep("Warm?", List.of("yes", "no"));
        assertTrue(early.refused().get(0).contains("Leave them out"), early.refused().toString());
    }

    @Test
    void should_keep_windows_line_ends() {
        String after = changed(BENCH.replace("\n", "\r\n"), one -> {
            one.addFault("New");
            one.takes("Rattle", "1 min");
        });

        assertTrue(!after.replace("\r\n", "").contains("\n"), after);
    }

    @Test
    void should_paste_a_block_over_the_cells_from_one_on() throws UnusableTable {
        FaultSheet sheet = FaultSheetTest.sheet(BENCH);
        SheetChange change = SheetText.pasted(sheet, PastedCells.read("5\tdim\n6\tdark\n"),
                List.of(new SheetRow.OfFault("Dust"), new SheetRow.OfFault("Cell")), List.of(new SheetColumn.Cases(), new SheetColumn.OfStep("SeeIt")));

        String after = change.fix("Paste").orElseThrow().applied();
        assertLine("cases 5 // slips\n    shows SeeIt dim", after);
        assertLine("cases 6\n    shows SeeIt dark", after);
    }

    @Test
    void should_paste_nothing_and_tell_of_every_cell_that_cannot_be_read() throws UnusableTable {
        SheetChange change = SheetText.pasted(FaultSheetTest.sheet(BENCH), PastedCells.read("fault\tcases\tLens\tLens\t\nDust\tmany\tgreasy\n\t3\nDust\t1\nNew one\t2\tdusty\tx\ty"),
                List.of(), List.of());

        assertTrue(change.fix("Paste").isEmpty());
        assertEquals(7, change.refused().size(), change.refused().toString());
        SheetChange beyond = SheetText.pasted(FaultSheetTest.sheet(BENCH), PastedCells.read("1\t2\n3"), List.of(new SheetRow.OfFault("Dust")), List.of(new SheetColumn.Cases()));
        assertEquals(2, beyond.refused().size(), beyond.refused().toString());
        assertTrue(beyond.fix("Paste").isEmpty());
    }

    @Test
    void should_change_nothing_when_a_copy_is_pasted_back() throws IOException, UnusableTable {
        int sheets = 0;
        try (Stream<Path> files = Files.list(Path.of("..", "..", "procedures-demo"))) {
            for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).toList()) {
                FaultSheet sheet = FaultSheetTest.sheet(ProcedureReader.overFiles().read(file));
                List<List<String>> copied = SheetText.copied(sheet, sheet.rows().stream().map(FaultSheet.Row::name).toList());
                SheetChange back = SheetText.pasted(sheet, PastedCells.read(PastedCells.write(copied)), List.of(), List.of());
                assertEquals(List.of(), back.refused());
                assertTrue(back.fix("Paste").isEmpty(), () -> file + " " + back.fix("Paste").orElseThrow().edits());
                sheets++;
            }
        }
        assertTrue(sheets > 5);
    }

    @Test
    void should_fill_an_empty_procedure() {
        String after = changed("procedure P \"P\"\n", SheetChangeTest::fill);
        FaultSheet sheet = FaultSheetTest.sheet(after);

        assertEquals(List.of("Dust", "CellSpent"), sheet.rows().stream().map(FaultSheet.Row::name).toList());
        assertEquals("very dusty", sheet.cell("Dust", "IsItDusty").words());
        assertEquals("2.1 V", sheet.cell("CellSpent", "Volts").words());
        assertEquals("7", sheet.row("CellSpent").orElseThrow().cases());
    }

    private static void fill(SheetChange change) {
        String dust = change.addFault("Dust");
        String cell = change.addFault("Cell spent");
        String look = change.addStep("Is it dusty?");
        String volts = change.addStep("Volts");
        change.shows(dust, look, "very dusty");
        change.shows(cell, volts, "2.1 V");
        change.cases(cell, "7");
    }

    /** Whatever is typed anywhere is refused in a sentence, or leaves a text that reads and in which that cell alone has changed. */
    @Test
    void should_stand_whatever_is_typed() {
        Random random = new Random(11);
        String[] typed = {"", "dim", "dark or dim", "\"", "}", "// no", "/* no", "or", "or or", "5 V", "OL", "dim 5 %", "%", "\\", "shows", "fault", "\u0000", "dim,dark", "anything else", "2.1 V or 2.2 V"};
        String[] fitting = {"", "dim", "dusty", "yes", "no", "below", "clean or dusty", "2.1 V"};
        int written = 0;
        for (int i = 0; i < 500; i++) {
            FaultSheet sheet = FaultSheetTest.sheet(BENCH);
            SheetChange change = new SheetChange(sheet);
            List<String> touched = new ArrayList<>();
            for (int j = 0; j < 1 + random.nextInt(3); j++) {
                FaultSheet.Row row = sheet.rows().get(random.nextInt(3));
                FaultSheet.Column column = sheet.columns().get(random.nextInt(sheet.columns().size()));
                touched.add(row.name() + column.name());
                change.shows(row.name(), column.name(), random.nextInt(4) == 0 ? typed[random.nextInt(typed.length)] : fitting[random.nextInt(fitting.length)]);
            }
            if (change.fix("Change").isPresent()) {
                String text = change.fix("Change").get().applied();
                FaultSheet after = FaultSheetTest.sheet(text);
                assertEquals(List.of(), after.procedure().problems(), text);
                assertEquals(Remarks.in(BENCH), Remarks.in(text));
                for (FaultSheet.Row row : sheet.rows()) {
                    for (FaultSheet.Column column : sheet.columns()) {
                        if (!touched.contains(row.name() + column.name())) {
                            assertEquals(SheetText.written(sheet.cell(row.name(), column.name())), SheetText.written(after.cell(row.name(), column.name())), text);
                        }
                    }
                }
                written++;
            }
        }
        assertTrue(written > 40, Integer.toString(written));
    }
}
