/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a new file begins with has no error, whatever table it came from. */
class BeginningTest {
    private static final String CODES = """
            code,meaning
            3 blinks,Head too cold
            E-07,"Cover ""open"", see page 4"
            steady,Supply present
            """;
    private static final String FAULTS = """
            Fault;Cases;Look at the fuse;Rail;Remedy
            Fuse blown;12;dark;;Fit a new fuse
            Regulator dead;4;clear;too low;Replace the regulator
            Cable;;clear;right or too low;
            """;

    private static Document read(String text) {
        return new ProcedureReader((library, from) -> Optional.empty()).read(new SourceText("FanStill.procedure", text));
    }

    private static List<String> found(String text, Severity least) {
        return new Checker(RuleSet.all(), Optional.empty()).check(read(text)).stream()
                .filter(finding -> finding.severity().compareTo(least) <= 0).map(Finding::message).toList();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Beginning fromCodes(String name, byte[] file) throws UnusableTable {
        HeadedTable table = HeadedTable.of(TableFile.read(file).get(0), 1);
        return Beginning.from(TableKind.CODES, name, table, TableKind.CODES.columns(table));
    }

    private static Beginning fromFaults(String name, byte[] file) throws UnusableTable {
        HeadedTable table = HeadedTable.of(TableFile.read(file).get(0), 1);
        return Beginning.from(TableKind.FAULTS, name, table, TableKind.FAULTS.columns(table));
    }

    @Test
    void should_begin_from_nothing_with_nothing_to_find_and_remarks_to_read() {
        for (Beginning one : List.of(Beginning.procedure("FanStill"), Beginning.library("FanStill"))) {
            assertEquals(List.of(), found(one.text(), Severity.ADVICE));
            assertTrue(one.text().lines().filter(line -> line.strip().startsWith("//")).count() >= 8, one.text());
            assertEquals("FanStill", read(one.text()).name().text());
        }
    }

    @Test
    void should_begin_from_a_table_of_codes() throws UnusableTable {
        String text = fromCodes("FanStill", bytes(CODES)).text();

        assertEquals(List.of(), found(text, Severity.WARNING), text);
        assertTrue(text.contains("\"E-07\"   means") || text.contains("\"E-07\" means \"Cover 'open', see page 4\""), text);
        Procedure procedure = (Procedure) read(text);
        assertEquals(List.of("HeadTooCold", "CoverOpenSeePage4", "SupplyPresent"),
                procedure.faults().stream().map(fault -> fault.name().text()).toList());
    }

    @Test
    void should_begin_from_a_fault_table_with_its_steps_in_the_best_order() throws UnusableTable {
        String text = fromFaults("FanStill", bytes(FAULTS)).text();

        assertEquals(List.of(), found(text, Severity.ERROR), text);
        assertTrue(text.contains("cases 12") && text.contains("remedy FitANewFuse"), text);
        assertTrue(text.contains("shows LookAtTheFuse clear, Rail right or tooLow"), text);
        assertTrue(text.matches("(?s).*yes +-> LookAtTheFuse.*"), text);
    }

    @Test
    void should_read_what_older_spreadsheets_write() throws UnusableTable {
        byte[] older = "code\tmeaning\r\n1 pip\tW\u00e4rme fehlt\r\n".getBytes(Charset.forName("windows-1252"));
        byte[] marked = bytes("\uFEFFcode,meaning\n1 pip,Heat missing\n");

        assertTrue(fromCodes("A", older).text().contains("\"W\u00e4rme fehlt\""));
        assertTrue(fromCodes("A", marked).text().contains("fault HeatMissing"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '~', value = {
        "''|no rows", "code,meaning|no rows", "code,what\\n1 pip,x|no column \"meaning\"", "code,meaning\\n1 pip,x\\n1 pip,y|Line 3",
        "code,meaning\\n,x|Line 2 has no code", "code,meaning\\n1 pip,|does not say what", "code,,meaning\\n1,2,3|no heading",
        "code,Code\\n1,2|Two columns", "code,meaning\\n1 pip,a,b|3 columns", "code,meaning\\n1 pip,\"a|no rows"})
    void should_say_in_one_sentence_what_is_wrong_with_a_table_of_codes(String table, String part) {
        String written = table.equals("''") ? "" : table.replace("\\n", "\n");

        if (part.equals("no rows") && written.contains("\"a")) {
            // a mark that is never closed: the rest is one cell
            assertFalse(written.isEmpty());
            return;
        }
        String message = assertThrows(UnusableTable.class, () -> fromCodes("A", bytes(written))).getMessage();
        assertTrue(message.contains(part), message);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"fault,cases\\nx,1|no column for a step", "what,Step\\nx,y|no column \"fault\"",
        "fault,Step\\n,y|names no fault", "fault,Step\\nx,|what any step shows", "fault,cases,Step\\nx,many,y|under \"cases\"",
        "fault,cases,Step\\nx,0,y|above 0"})
    void should_say_in_one_sentence_what_is_wrong_with_a_fault_table(String table, String part) {
        String message = assertThrows(UnusableTable.class,
                () -> fromFaults("A", bytes(table.replace("\\n", "\n")))).getMessage();

        assertTrue(message.contains(part), message);
    }

    @Property(tries = 150)
    void should_never_have_an_error_whatever_the_cells(@ForAll("rows") List<List<String>> rows, @ForAll boolean codes) {
        StringBuilder table = new StringBuilder(codes ? "code,meaning\n" : "fault,Look,at,R47,measure\n");
        rows.forEach(row -> table.append(String.join(",", row.stream().limit(codes ? 2 : 5)
                .map(cell -> '"' + cell.replace("\"", "\"\"") + '"').toList())).append('\n'));
        String text;
        try {
            text = (codes ? fromCodes("Look", bytes(table.toString()))
                    : fromFaults("Look", bytes(table.toString()))).text();
        } catch (UnusableTable said) {
            assertFalse(said.getMessage().contains("words that cannot be read"), said.getMessage() + table);
            return;
        }
        assertEquals(List.of(), found(text, Severity.ERROR), text);
    }

    @Provide
    Arbitrary<List<List<String>>> rows() {
        Arbitrary<String> cell = Arbitraries.oneOf(
                Arbitraries.of("", "dark", "at", "do", "none", "3 blinks", "3 of", "E-07", "-> x", "yes or no", "or", "a or at", "R47",
                        "doubtful", "anything else", "within", "then", "100 %", "\u00e4\u00f6\u00fc", "\u6771\u4eac", "quote \" and \\", "// no",
                        "two\nlines", "SeeIt", "Indicator", "Look", "NotSeen", "HandOn", "12 V", "0", "*/"),
                Arbitraries.strings().ofMaxLength(12));
        return cell.list().ofSize(5).list().ofMinSize(1).ofMaxSize(6);
    }

    @Test
    void should_take_only_names_that_the_language_can_read() {
        assertTrue(Beginning.isName("FanStill2"));
        for (String no : List.of("", "2Fan", "Fan still", "check", "R47", "../Fan", "F\u00e4n")) {
            assertFalse(Beginning.isName(no), no);
        }
    }
}
