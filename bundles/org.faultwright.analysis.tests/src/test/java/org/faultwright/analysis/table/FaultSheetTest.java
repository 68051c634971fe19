/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.table.FaultSheet.State;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;

class FaultSheetTest {
    static final String BENCH = """
            procedure Dim "Lamp is dim"
            equipment "Quenby L1" boards "A"
            revision 1 draft
            complaints "dim"

            // counted in May
            fault Dust "Dust on the lens" {
                cases 30 // slips
                shows SeeIt dim, Lens dusty, // as a rule
                    TryLens yes
                remedy WipeLens
            }
            fault Cell "Cell spent" {
                cases 12
                shows SeeIt dim, Volts below, TryCell yes
                remedy NewCell
            }
            fault Switch "Switch worn" { cases 3 shows SeeIt dim 70 % or dark 30 %, TrySwitch yes remedy NewSwitch }

            begin at SeeIt

            check SeeIt "Is it dim?" {
                confirms complaint
                takes 1 min
                dim  -> Lens
                dark -> Volts
                bright -> NotSeen
            }
            check Lens "Is the lens dusty?" {
                takes 30 s
                dusty -> WipeLens
                clean normal -> Volts
            }
            measure Volts "Cell" {
                dc voltage
                takes 2 min
                expects 3 V +/- 5 %
                below -> NewCell
                within -> NewSwitch
                above -> NewSwitch
            }
            check Rattle "Does it rattle?" {
                yes -> NewSwitch
                no -> NewCell
            }
            do WipeLens "Wipe it" { takes 1 min then -> TryLens }
            do NewCell "Fit a cell" { takes 1 min then -> TryCell }
            do NewSwitch "Fit a switch" { takes 9 min then -> TrySwitch }
            check TryLens "Bright?" { verifies repair takes 1 min yes -> Wiped no -> Volts }
            check TryCell "Bright?" { verifies repair takes 1 min yes -> Celled no -> HandOn }
            check TrySwitch "Bright?" { verifies repair takes 1 min yes -> Switched no -> HandOn }
            conclude Wiped "Lens wiped" { finds Dust report "Wiped." }
            conclude Celled "Cell" { finds Cell report "Cell." }
            conclude Switched "Switch" { finds Switch report "Switch." }
            conclude NotSeen "Not seen" { finds nothing report "Tried." }
            conclude HandOn "Not solved" { refers to "the senior technician" report "Tried." }
            """;

    static FaultSheet sheet(String text) {
        return sheet(Texts.document(text));
    }

    static FaultSheet sheet(Document document) {
        List<Finding> found = new Checker().check(document);
        return FaultSheet.of(new Subject(document, Optional.empty()), found).orElseThrow();
    }

    @Test
    void should_say_of_each_cell_whether_it_is_written_follows_or_need_not_be() {
        FaultSheet sheet = sheet(BENCH);

        assertEquals(List.of("Dust", "Cell", "Switch"), sheet.rows().stream().map(FaultSheet.Row::name).toList());
        assertEquals(List.of("SeeIt", "Lens", "Volts", "Rattle", "TryLens", "TryCell", "TrySwitch"), sheet.columns().stream().map(FaultSheet.Column::name).toList());
        assertEquals("WRITTEN dusty", told(sheet, "Dust", "Lens"));
        assertEquals("NORMAL clean", told(sheet, "Cell", "Lens"));
        assertEquals("NORMAL within", told(sheet, "Switch", "Volts"), "a reading with a limit is normal within it");
        assertEquals("WRITTEN dim 70 % or dark 30 %", told(sheet, "Switch", "SeeIt"));
        assertEquals("EMPTY ", told(sheet, "Dust", "TryCell"), "it judges a repair");
        assertEquals("EMPTY ", told(sheet, "Cell", "Rattle"), "no step leads there");
        assertEquals("clean", sheet.column("Lens").orElseThrow().normal());
        assertEquals("30 s", sheet.column("Lens").orElseThrow().takes());
        assertTrue(sheet.column("Lens").orElseThrow().asked());
        assertFalse(sheet.column("Rattle").orElseThrow().asked());
        assertEquals("30", sheet.row("Dust").orElseThrow().cases());
        assertTrue(sheet.row("Dust").orElseThrow().seconds().isPresent());
    }

    @Test
    void should_show_a_hole_where_anything_may_show() {
        FaultSheet sheet = sheet(BENCH.replace("clean normal ->", "clean ->"));

        assertEquals("OPEN ", told(sheet, "Cell", "Lens"));
        assertTrue(sheet.cell("Cell", "Lens").told().contains("anything may show"), sheet.cell("Cell", "Lens").told());
    }

    @Test
    void should_show_what_goes_against_the_text_at_its_cell() {
        FaultSheet unknown = sheet(BENCH.replace("Lens dusty", "Lens greasy"));
        assertEquals("AGAINST greasy", told(unknown, "Dust", "Lens"));
        assertTrue(unknown.cell("Dust", "Lens").told().contains("greasy"), unknown.cell("Dust", "Lens").told());

        FaultSheet parting = sheet(BENCH.replace("dusty -> WipeLens", "dusty -> HandOn").replace("clean normal -> Volts", "clean normal -> WipeLens"));
        assertEquals("AGAINST dusty", told(parting, "Dust", "Lens"));
        assertTrue(parting.cell("Dust", "Lens").told().contains("leads to \"HandOn\""), parting.cell("Dust", "Lens").told());
        assertTrue(parting.row("Dust").orElseThrow().found().stream().anyMatch(finding -> finding.rule().equals("fault-misses-conclusion")));
    }

    @Test
    void should_put_faults_that_nothing_tells_apart_side_by_side_with_what_would() {
        String text = BENCH.replace("shows SeeIt dim, Volts below, TryCell yes", "shows SeeIt dim, Volts within, Rattle no")
                .replace("shows SeeIt dim 70 % or dark 30 %, TrySwitch yes", "shows SeeIt dim, Rattle yes");
        NotApart group = sheet(text).groups().stream().filter(one -> one.named().equals("\"Cell\" and \"Switch\"")).findFirst().orElseThrow();

        assertEquals(new NotApart.Separating("Rattle", false, Map.of("Cell", "no", "Switch", "yes")), group.would().get(0));
        assertTrue(group.told().contains("\"Rattle\" would tell them apart: no for \"Cell\"; yes for \"Switch\". No step leads there yet."), group.told().toString());
    }

    @Test
    void should_make_a_table_of_faults_whose_steps_nobody_has_written() {
        FaultSheet sheet = sheet("""
                procedure Dim "Lamp is dim"
                fault A "A" { shows Look dusty }
                fault B "B" { shows Look clean, Volts 2.1 V }
                fault C "C" { shows Look clean }
                """);

        assertFalse(sheet.isLaidOut());
        assertEquals(List.of("Look", "Volts"), sheet.columns().stream().map(FaultSheet.Column::name).toList());
        assertEquals("OPEN ", told(sheet, "A", "Volts"));
        assertEquals(List.of("\"B\" and \"C\""), sheet.groups().stream().map(NotApart::named).toList());
        assertTrue(sheet.groups().get(0).told().get(1).startsWith("\"Volts\" may tell them apart: say what shows there for \"C\"."), sheet.groups().get(0).told().toString());
        assertTrue(FaultSheet.of(new Subject(Texts.library("library L \"L\""), Optional.empty()), List.of()).isEmpty());
        assertEquals(List.of(), sheet("procedure P \"P\"").rows());
    }

    @Test
    void should_hold_every_demo_without_a_contradiction() throws IOException {
        int cells = 0;
        try (Stream<Path> files = Files.list(Path.of("..", "..", "procedures-demo"))) {
            for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).toList()) {
                FaultSheet sheet = sheet(ProcedureReader.overFiles().read(file));
                assertTrue(sheet.isLaidOut() && sheet.rows().size() > 2 && sheet.columns().size() > 3, file.toString());
                for (FaultSheet.Row row : sheet.rows()) {
                    for (FaultSheet.Column column : sheet.columns()) {
                        cells++;
                        assertFalse(sheet.cell(row.name(), column.name()).state() == State.AGAINST, sheet.cell(row.name(), column.name()).told());
                    }
                }
            }
        }
        assertTrue(cells > 400, Integer.toString(cells));
    }

    private static String told(FaultSheet sheet, String fault, String step) {
        FaultSheet.Cell cell = sheet.cell(fault, step);
        assertTrue(cell.told().startsWith("\"" + fault + "\" at \"" + step + "\": "), cell.told());
        return cell.state() + " " + cell.words();
    }
}
