/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A table with a heading for each column.
 *
 * @param headings without spaces around them
 * @param rows     those with a word in them; each has a cell for every heading
 * @param unread   lines that could not be read, each a sentence that says where
 * @param remarks  cells that count as empty, each a sentence that says where and why
 */
public record HeadedTable(List<String> headings, List<Row> rows, List<String> unread, List<String> remarks) {
    private static final int MOST_COLUMNS = 60;
    private static final int MOST_ROWS = 2_000;

    /** @param line in the file, the first being 1 */
    public record Row(long line, List<String> cells) {
        String cell(int column) {
            return column < 0 ? "" : cells.get(column);
        }
    }

    public HeadedTable {
        headings = List.copyOf(headings);
        rows = List.copyOf(rows);
        unread = List.copyOf(unread);
        remarks = List.copyOf(remarks);
    }

    /**
     * @param heading which of the lines with a word in them holds the headings, the first being 1; 0 where none does
     * @throws UnusableTable where no table is left, in one sentence
     */
    public static HeadedTable of(SheetGrid grid, int heading) throws UnusableTable {
        if (grid.lines().size() <= heading) {
            throw new UnusableTable("The table has no rows under its heading; write a line for each, in columns.");
        }
        List<String> headings = heading == 0 ? letters(width(grid.lines())) : named(grid.lines().get(heading - 1).cells());
        check(headings);
        List<Row> rows = new ArrayList<>();
        List<String> unread = new ArrayList<>();
        for (SheetGrid.Line line : grid.lines().subList(heading, grid.lines().size())) {
            if (rows.size() == MOST_ROWS) {
                unread.add("Line " + line.number() + " and what follows is not read: no more than " + MOST_ROWS + " lines are.");
                break;
            }
            List<String> cells = line.cells();
            if (cells.stream().skip(headings.size()).anyMatch(cell -> !cell.isEmpty())) {
                unread.add("Line " + line.number() + " has " + cells.size() + " columns, the heading has " + headings.size()
                        + "; put a cell with a comma in it in quotation marks.");
                continue;
            }
            rows.add(new Row(line.number(), Stream.concat(cells.stream().limit(headings.size()),
                    Stream.generate(() -> "").limit(Math.max(0, headings.size() - (long) cells.size()))).toList()));
        }
        return new HeadedTable(headings, rows, unread, grid.unread());
    }

    /** Without columns at the end that have no heading and no word in them. */
    private static int width(List<SheetGrid.Line> lines) {
        return lines.stream().mapToInt(line -> {
            int last = line.cells().size();
            while (last > 0 && line.cells().get(last - 1).isEmpty()) {
                last--;
            }
            return last;
        }).max().orElse(0);
    }

    /** Up to the last column with a heading; lines that are longer are told one by one. */
    private static List<String> named(List<String> cells) {
        int last = cells.size();
        while (last > 0 && cells.get(last - 1).isEmpty()) {
            last--;
        }
        return cells.subList(0, last);
    }

    private static List<String> letters(int columns) {
        return Stream.iterate(0, i -> i + 1).limit(columns).map(i -> "Column " + (i < 26 ? "" : (char) ('A' + i / 26 - 1)) + (char) ('A' + i % 26)).toList();
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

    /** The number of the column with this heading, or -1. */
    public int column(String heading) {
        for (int i = 0; i < headings.size(); i++) {
            if (headings.get(i).equalsIgnoreCase(heading)) {
                return i;
            }
        }
        return -1;
    }
}
