/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A table of comma-, semicolon- or tab-separated values (RFC 4180) as spreadsheets write it, with a heading.
 *
 * @param headings without spaces around them
 * @param rows     those with a word in them; each has a cell for every heading
 */
record Table(List<String> headings, List<Row> rows) {
    private static final int LARGEST = 1_000_000;
    private static final int MOST_COLUMNS = 60;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    /** @param line in the file, the first being 1 */
    record Row(long line, List<String> cells) {
        String cell(int column) {
            return cells.get(column);
        }
    }

    static Table read(byte[] file) throws UnusableTable {
        if (file.length > LARGEST) {
            throw new UnusableTable("The table has more than " + LARGEST + " bytes; take out what is not needed.");
        }
        String text = text(file);
        List<Row> rows = rows(text);
        if (rows.size() < 2) {
            throw new UnusableTable("The table has no rows under its heading; write a line for each, in columns.");
        }
        List<String> headings = rows.get(0).cells();
        check(headings);
        List<Row> body = new ArrayList<>();
        for (Row row : rows.subList(1, rows.size())) {
            if (row.cells().size() > headings.size()) {
                throw new UnusableTable("Line " + row.line() + " has " + row.cells().size() + " columns, the heading has "
                        + headings.size() + "; put a cell with a comma in it in quotation marks.");
            }
            body.add(new Row(row.line(), Stream.concat(row.cells().stream(),
                    Stream.generate(() -> "").limit(headings.size() - (long) row.cells().size())).toList()));
        }
        return new Table(headings, List.copyOf(body));
    }

    private static void check(List<String> headings) throws UnusableTable {
        if (headings.size() > MOST_COLUMNS) {
            throw new UnusableTable("The table has more than " + MOST_COLUMNS + " columns; take out what is not needed.");
        }
        Set<String> seen = new HashSet<>();
        for (String heading : headings) {
            if (heading.isEmpty()) {
                throw new UnusableTable("A column has no heading; give each column one in the first line.");
            }
            if (!seen.add(heading.toLowerCase(Locale.ROOT))) {
                throw new UnusableTable("Two columns have the heading \"" + heading + "\"; give each its own.");
            }
        }
    }

    /** UTF-8, or else what older spreadsheets write. */
    private static String text(byte[] file) {
        String text;
        try {
            text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(file)).toString();
        } catch (CharacterCodingException older) {
            text = new String(file, Charset.forName("windows-1252"));
        }
        return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
    }

    private static List<Row> rows(String text) throws UnusableTable {
        List<Row> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().fieldSeparator(separator(text)).skipEmptyLines(true)
                .ofCsvRecord(text)) {
            for (CsvRecord record : reader) {
                List<String> cells = record.getFields().stream().map(String::strip).toList();
                if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    rows.add(new Row(record.getStartingLineNumber(), cells));
                }
            }
        } catch (CsvParseException | java.io.IOException broken) {
            throw new UnusableTable("The table cannot be read as separated values; look for a quotation mark that is not closed.");
        }
        return rows;
    }

    /** The one of the three that the heading has most of. */
    private static char separator(String text) {
        String heading = text.lines().findFirst().orElse("");
        return Stream.of(',', ';', '\t').max(Comparator.comparing((Character sign) ->
                heading.chars().filter(c -> c == sign).count()).thenComparing(sign -> sign == ',' ? 1 : 0)).orElse(',');
    }

    /** The number of the column with this heading, or -1. */
    int column(String heading) {
        for (int i = 0; i < headings.size(); i++) {
            if (headings.get(i).equalsIgnoreCase(heading)) {
                return i;
            }
        }
        return -1;
    }

    /** @throws UnusableTable where there is no such column */
    int needed(String heading) throws UnusableTable {
        int column = column(heading);
        if (column < 0) {
            throw new UnusableTable("The table has no column \"" + heading + "\"; its headings are "
                    + String.join(", ", headings.stream().map(one -> '"' + one + '"').toList()) + ".");
        }
        return column;
    }
}
