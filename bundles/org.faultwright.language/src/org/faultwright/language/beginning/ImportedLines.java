/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * What a table says, line by line, with the lines that could not be read.
 *
 * @param read   in the order of the table
 * @param unread each a sentence that says where and why
 */
public record ImportedLines<T>(List<T> read, List<String> unread) {
    /** A code that an indicator can show. @param shown as the language writes it */
    public record Code(String shown, String meaning) {
    }

    /**
     * A fault.
     *
     * @param cases   a number above 0
     * @param remedy  what puts it right; empty where the table does not say
     * @param shows   by the heading of a column what is shown there, {@code or} between several
     */
    public record FaultLine(String fault, String cases, String remedy, Map<String, String> shows) {
    }

    /** What a line of a list of steps can become; the language has more. */
    public enum StepKind {
        CHECK, MEASURE, DO;

        /** As a step of that kind begins. */
        String keyword() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * A step.
     *
     * @param minutes a number; empty where the table does not say
     * @param expects a limit; empty where the table has none
     * @param quantity of the limit, as the language writes it; empty where there is none
     * @param at      where it is read; empty where the table does not say
     */
    public record StepLine(String step, StepKind kind, String minutes, String expects, String quantity, String at) {
    }

    /** A range of an instrument, as the language writes it. */
    public record Range(String line) {
    }

    public ImportedLines {
        read = List.copyOf(read);
        unread = List.copyOf(unread);
    }

    /** How one line is read. */
    interface Reading<T> {
        T of(HeadedTable.Row row) throws UnusableTable;
    }

    static <T> ImportedLines<T> of(TableKind kind, HeadedTable table, Map<String, Integer> columns, Reading<T> reading) throws UnusableTable {
        kind.check(table, columns);
        List<T> read = new ArrayList<>();
        List<String> unread = new ArrayList<>(table.unread());
        for (HeadedTable.Row row : table.rows()) {
            try {
                read.add(reading.of(row));
            } catch (UnusableTable line) {
                unread.add(line.getMessage());
            }
        }
        return new ImportedLines<>(read, unread);
    }

    /** Everything, or nothing. @throws UnusableTable with the first line that could not be read */
    List<T> whole() throws UnusableTable {
        if (!unread.isEmpty()) {
            throw new UnusableTable(unread.get(0) + (unread.size() == 1 ? "" : " (" + (unread.size() - 1) + " more "
                    + (unread.size() == 2 ? "line" : "lines") + " cannot be read.)"));
        }
        return read;
    }
}
