/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SourceTextTest {
    private static final SourceText THREE_LINES = new SourceText("a.procedure", "one\ntwo\r\n\nfour");

    @ParameterizedTest
    @CsvSource({"0, 1, 1", "2, 1, 3", "3, 1, 4", "4, 2, 1", "8, 2, 5", "9, 3, 1", "10, 4, 1", "14, 4, 5"})
    void should_count_lines_and_columns_from_one(int offset, int line, int column) {
        assertEquals(line, THREE_LINES.line(offset));
        assertEquals(column, THREE_LINES.column(offset));
    }

    @ParameterizedTest
    @CsvSource({"1, one", "2, two", "3, ''", "4, four"})
    void should_give_a_line_without_its_end(int line, String text) {
        assertEquals(text, THREE_LINES.lineText(line));
    }

    @Test
    void should_bear_an_empty_text() {
        SourceText empty = new SourceText("empty", "");

        assertEquals(1, empty.line(0));
        assertEquals(1, empty.column(0));
        assertEquals("", empty.lineText(1));
    }

    @Test
    void should_say_where_a_range_stands() {
        SourceRange range = new SourceRange(THREE_LINES, 4, 3);

        assertEquals("two", range.text());
        assertEquals("a.procedure:2:1", range.toString());
        assertEquals(7, range.end());
    }
}
