/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the lines of tables say, and which of them cannot be read. */
class TablesTest {
    private static HeadedTable table(String text) throws UnusableTable {
        return HeadedTable.of(TableFile.read(text.getBytes(StandardCharsets.UTF_8)).get(0), 1);
    }

    private static List<String> errors(String text) {
        return new Checker().check(new ProcedureReader((library, from) -> Optional.empty()).read(new SourceText(text.contains("library QuayBench") ? "QuayBench.procedure" : "New.procedure", text))).stream()
                .filter(finding -> finding.severity() == Severity.ERROR).map(finding -> finding.message()).toList();
    }

    @Test
    void should_find_columns_by_other_usual_headings_and_let_them_be_chosen() throws UnusableTable {
        HeadedTable table = table("No.;Blinks;Note;Description\n1;3 blinks;x;Head too cold\n");

        assertEquals(Map.of("code", 1, "meaning", 3), TableKind.CODES.columns(table));
        assertEquals(Map.of("code", 1, "meaning", 2), TableKind.CODES.columns(table, Map.of("meaning", "note")));
        assertTrue(assertThrows(UnusableTable.class, () -> TableKind.CODES.columns(table, Map.of("colour", "Note"))).getMessage().contains("\"code\""));
        assertTrue(assertThrows(UnusableTable.class, () -> TableKind.CODES.columns(table, Map.of("code", "Nothing"))).getMessage().contains("\"Blinks\""));
    }

    @Test
    void should_list_each_line_that_cannot_be_read_and_read_the_others() throws UnusableTable {
        HeadedTable table = table("code,meaning\n1 pip,Cold\n,Hot\n2 pips,\n1 pip,Again\nnone,Nothing\n3 pips,Jam\n");

        ImportedLines<ImportedLines.Code> codes = Tables.codes(table, TableKind.CODES.columns(table));

        assertEquals(List.of("Cold", "Jam"), codes.read().stream().map(ImportedLines.Code::meaning).toList());
        assertEquals(List.of(3, 4, 5, 6), codes.unread().stream().map(line -> Integer.parseInt(line.replaceAll("^Line (\\d+) .*", "$1"))).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"Blinks", "number of flashes", "blinks "})
    void should_take_numbers_under_a_heading_that_counts_them_for_blinks(String heading) throws UnusableTable {
        HeadedTable table = table(heading + ";Meaning\n1;Cold\n12;Hot\nsteady;Sound\n3 pips;Jam\n");

        assertEquals(List.of("1 blink", "12 blinks", "steady", "3 pips"), Tables.codes(table, Map.of("code", 0, "meaning", 1)).read().stream()
                .map(ImportedLines.Code::shown).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"dc voltage|16 ohm +/- 15 %|resistance", "dc voltage|at most 2kohm|resistance", "resistance|24 V +/- 5 %|dc voltage",
        "dc voltage|at least 10 uF|capacitance", "dc voltage|5 mA .. 20 mA|dc current", "resistance|50 Hz +/- 1 %|frequency"})
    void should_know_the_quantity_that_the_unit_of_a_limit_speaks_of(String chosen, String limit, String quantity) {
        assertEquals(Optional.of(quantity), LimitWords.fitting(chosen, limit));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"ac voltage|230 V +/- 10 %", "dc voltage|24", "dc voltage|16 o", "dc voltage|at most 3 Volt-ish", "ac current|2 A", "dc voltage|''"})
    void should_leave_what_was_chosen_where_it_fits_or_nothing_is_said_yet(String chosen, String limit) {
        assertEquals(Optional.empty(), LimitWords.fitting(chosen, limit));
    }

    @Test
    void should_read_the_ranges_of_an_instrument_as_data_sheets_write_them() throws UnusableTable {
        HeadedTable table = table("Function;Range;Resolution;Accuracy;Input resistance\nDCV;60 V;10 mV;\u00b1(0,5 % + 2);10 M\u03a9\nOhm;600 \u03a9;0,1 \u03a9;0.9 % rdg + 3 digits;\n"
                + "AC voltage;600V;100mV;1.0% + 3 counts;\nfrequency;60 kHz;10 Hz;\u00b10.1 %;\nColour;3 l;1 ml;1 %;\nDCV;60 V;;;\n");

        ImportedLines<ImportedLines.Range> ranges = Tables.ranges(table, TableKind.RANGES.columns(table));

        assertEquals(List.of("dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm",
                "resistance up to 600 ohm resolution 0.1 ohm accuracy 0.9 % of reading + 3 digits",
                "ac voltage up to 600 V resolution 100 mV accuracy 1.0 % of reading + 3 digits",
                "frequency up to 60 kHz resolution 10 Hz accuracy 0.1 % of reading"), ranges.read().stream().map(ImportedLines.Range::line).toList());
        assertEquals(2, ranges.unread().size(), ranges.unread().toString());
        assertTrue(ranges.unread().get(0).startsWith("Line 6 is no range of an instrument: "), ranges.unread().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"2|2", "30 s|0.5", "1,5 min|1.5", "1 h|60", "2 minutes|2"})
    void should_read_times(String cell, String minutes) {
        assertEquals(Optional.of(minutes), Tables.minutes(cell));
    }

    @Test
    void should_write_a_list_of_steps_in_its_order_without_an_error() throws UnusableTable {
        for (String list : List.of("step,kind,time,expects,at\nLook at the fuse,check,1,,\nSupply,,2 min,24V \u00b15%,C12\nCoil,,,12 ohm..15 ohm,J3\nReplace the fuse,do,30 s,,\n",
                "step\nLook\nListen\n", "step,kind\nFit a fuse,do\nFit a lamp,do\n", "step\nProof\nSeeIt\nmeasure\n")) {
            HeadedTable table = table(list);
            String text = Beginning.from(TableKind.STEPS, "FanStill", table, TableKind.STEPS.columns(table)).text();

            assertEquals(List.of(), errors(text), text);
        }
    }

    @Test
    void should_refuse_what_is_no_limit_and_no_time_line_by_line() throws UnusableTable {
        HeadedTable table = table("step,time,expects\nA,soon,\nB,,about 3\n,1,\nC,1,at least 1 Mohm\n");

        ImportedLines<ImportedLines.StepLine> steps = Tables.steps(table, TableKind.STEPS.columns(table), Interview.Meter.USUAL);

        assertEquals(1, steps.read().size());
        assertEquals(ImportedLines.StepKind.MEASURE, steps.read().get(0).kind());
        assertEquals(3, steps.unread().size(), steps.unread().toString());
    }

    @Test
    void should_write_a_library_from_ranges_without_an_error() throws UnusableTable {
        HeadedTable table = table("quantity,up to,resolution,accuracy\ndc voltage,60 V,10 mV,0.5 % + 2\n");
        String text = Beginning.from(TableKind.RANGES, "QuayBench", table, TableKind.RANGES.columns(table)).text();

        assertEquals(List.of(), errors(text), text);
        assertTrue(text.contains("library QuayBench") && text.contains("0.5 % of reading + 2 digits"), text);
    }
}
