/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Cells on the clipboard: text/tab-separated-values as registered with IANA, with the quoting of RFC 4180 that spreadsheets add. */
class PastedCellsTest {
    @Test
    void should_read_rows_and_keep_empty_cells_and_rows_in_their_places() throws UnusableTable {
        assertEquals(List.of(List.of("a", "", "b"), List.of(""), List.of("c d", "e")), PastedCells.read("a\t\t b \r\n\r\nc d\te\r\n"));
        assertEquals(List.of(List.of("one")), PastedCells.read("one"));
    }

    @Test
    void should_read_cells_in_quotation_marks_as_one_line() throws UnusableTable {
        assertEquals(List.of(List.of("a b", "E 02", "5\" disk", "say \"no\"")), PastedCells.read("\"a\nb\"\t\"E 02\"\t5\" disk\t\"say \"\"no\"\"\"\n"));
    }

    @Test
    void should_write_what_it_reads() throws UnusableTable {
        List<List<String>> cells = List.of(List.of("fault", "cases"), List.of("Fan \"stuck\", loud", ""), List.of("'x", "-40 V"));

        assertEquals(cells, PastedCells.read(PastedCells.write(cells)));
    }

    /** After the advice of OWASP on CSV injection, from memory. */
    @Test
    void should_write_no_formula_and_read_the_same_words_back() throws UnusableTable {
        List<List<String>> cells = List.of(List.of("=HYPERLINK(\"http://x\")", "+1+1", "@SUM(A1)", "-A1", "'=1", "-40 V", "'x", "a=b"));
        String written = PastedCells.write(cells);

        assertEquals(List.of("\"'=HYPERLINK(\"\"http://x\"\")\"", "'+1+1", "'@SUM(A1)", "'-A1", "''=1", "-40 V", "'x", "a=b"), List.of(written.strip().split("\t")));
        assertEquals(cells, PastedCells.read(written));
    }

    @Test
    void should_say_why_something_cannot_be_read() {
        assertTrue(assertThrows(UnusableTable.class, () -> PastedCells.read(" \n\t")).getMessage().startsWith("There is nothing to paste"));
        assertTrue(assertThrows(UnusableTable.class, () -> PastedCells.read("x\t".repeat(600_000))).getMessage().contains("1000000 characters"));
    }
}
