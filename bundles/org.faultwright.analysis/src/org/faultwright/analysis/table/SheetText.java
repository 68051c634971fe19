/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The table as rows of cells, for a spreadsheet and back from one. With its headings it can begin a new procedure as well. Cells hold what is written
 * in the text; what only follows from what is normal stays empty, so that pasting a copy back changes nothing.
 */
public final class SheetText {
    private static final String FAULT = "fault";
    private static final String CASES = "cases";
    private static final String REMEDY = "remedy";
    private static final int MOST_ROWS = 500;
    private static final int MOST_COLUMNS = 400;

    private SheetText() {
    }

    /** With headings. @param faults which, in what order */
    public static List<List<String>> copied(FaultSheet sheet, List<String> faults) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(Stream.concat(Stream.of(FAULT, CASES, REMEDY), sheet.columns().stream().map(FaultSheet.Column::name)).toList());
        faults.stream().flatMap(name -> sheet.row(name).stream()).forEach(row -> rows.add(Stream.concat(Stream.of(called(sheet, row), row.cases(),
                row.remedies()), sheet.columns().stream().map(column -> written(sheet.cell(row.name(), column.name())))).toList()));
        return rows;
    }

    /** What the text says in a cell; empty where it only follows. */
    public static String written(FaultSheet.Cell cell) {
        return cell.written() ? cell.words() : "";
    }

    /** Its words, where no other fault is called so; else its name. */
    private static String called(FaultSheet sheet, FaultSheet.Row row) {
        String title = row.fault().title();
        boolean alone = sheet.rows().stream().filter(other -> other.fault().title().equalsIgnoreCase(title) || other.name().equalsIgnoreCase(title)).count() == 1;
        return title.isBlank() || !alone ? row.name() : title;
    }

    /** Whether the first row has headings. */
    public static boolean isHeaded(List<List<String>> cells) {
        return !cells.isEmpty() && !cells.get(0).isEmpty() && cells.get(0).get(0).strip().equalsIgnoreCase(FAULT);
    }

    /**
     * Rows of cells over the table from one cell on; what has headings goes to the rows and columns of that name, and makes those that are missing.
     *
     * @param rows    as they are shown, from the cell on
     * @param columns as they are shown, from the cell on
     */
    public static SheetChange pasted(FaultSheet sheet, List<List<String>> cells, List<SheetRow> rows, List<SheetColumn> columns) {
        SheetChange change = new SheetChange(sheet);
        int widest = cells.stream().mapToInt(List::size).max().orElse(0);
        if (cells.size() > MOST_ROWS || widest > MOST_COLUMNS) {
            change.refuse("Pasted", "all of it", "These are " + cells.size() + " rows of " + widest + " columns; up to " + MOST_ROWS + " of " + MOST_COLUMNS
                    + " are read.");
        } else if (isHeaded(cells)) {
            new Headed(sheet, change).read(cells);
        } else {
            at(change, cells, rows, columns);
        }
        return change;
    }

    private static void at(SheetChange change, List<List<String>> cells, List<SheetRow> rows, List<SheetColumn> columns) {
        for (int i = 0; i < cells.size(); i++) {
            for (int j = 0; j < cells.get(i).size(); j++) {
                String typed = cells.get(i).get(j);
                if (i < rows.size() && j < columns.size()) {
                    change.set(rows.get(i), columns.get(j), typed);
                } else if (!typed.isBlank()) {
                    change.refuse("Pasted row " + (i + 1), "column " + (j + 1), "It lies beyond the last " + (i < rows.size() ? "column" : "row")
                            + " of the table; add a " + (i < rows.size() ? "step" : "fault") + " first, or paste with the headings.");
                    break;
                }
            }
        }
    }

    /** What has headings. */
    private record Headed(FaultSheet sheet, SheetChange change) {
        void read(List<List<String>> cells) {
            List<Optional<SheetColumn>> columns = new ArrayList<>();
            Set<String> seen = new HashSet<>();
            for (int j = 0; j < cells.get(0).size(); j++) {
                String heading = cells.get(0).get(j).strip();
                if (!heading.isEmpty() && !seen.add(heading.toLowerCase(Locale.ROOT))) {
                    change.refuse("Headings", heading, "Two columns have this heading; give each its own.");
                }
                columns.add(j == 0 || heading.isEmpty() ? Optional.empty() : Optional.of(column(heading)));
            }
            Map<String, Integer> faults = new HashMap<>();
            for (int i = 1; i < cells.size(); i++) {
                List<String> row = cells.get(i);
                if (row.stream().allMatch(String::isBlank)) {
                    continue;
                }
                String called = row.get(0).strip();
                if (called.isEmpty()) {
                    change.refuse("Pasted row " + (i + 1), FAULT, "It names no fault; fill in its first cell.");
                    continue;
                }
                Optional<FaultSheet.Row> there = row(called);
                if (faults.putIfAbsent(there.map(FaultSheet.Row::name).orElse(called), i) != null) {
                    change.refuse("Pasted row " + (i + 1), FAULT, "\"" + called + "\" comes a second time; keep one of the rows.");
                    continue;
                }
                fill(row, there.map(FaultSheet.Row::name).orElseGet(() -> change.addFault(called)), columns, i);
            }
        }

        private void fill(List<String> row, String fault, List<Optional<SheetColumn>> columns, int number) {
            for (int j = 1; j < row.size() && !fault.isEmpty(); j++) {
                String typed = row.get(j);
                if (j >= columns.size() || columns.get(j).isEmpty()) {
                    if (!typed.isBlank()) {
                        change.refuse("Pasted row " + (number + 1), "column " + (j + 1), "The column has no heading; give it the name of a step.");
                    }
                } else if (columns.get(j).get() instanceof SheetColumn.OfStep || !typed.isBlank()) {
                    change.set(new SheetRow.OfFault(fault), columns.get(j).get(), typed);
                }
            }
        }

        private SheetColumn column(String heading) {
            if (heading.equalsIgnoreCase(CASES)) {
                return new SheetColumn.Cases();
            }
            if (heading.equalsIgnoreCase(REMEDY)) {
                return new SheetColumn.Remedy();
            }
            Optional<String> step = sheet.column(heading).or(() -> sheet.columns().stream().filter(column -> column.name().equalsIgnoreCase(heading)
                    || column.title().equalsIgnoreCase(heading)).findFirst()).map(FaultSheet.Column::name);
            return new SheetColumn.OfStep(step.orElseGet(() -> change.addStep(heading)));
        }

        private Optional<FaultSheet.Row> row(String called) {
            return sheet.row(called).or(() -> sheet.rows().stream().filter(row -> row.name().equalsIgnoreCase(called)
                    || row.fault().title().equalsIgnoreCase(called)).findFirst());
        }
    }
}
