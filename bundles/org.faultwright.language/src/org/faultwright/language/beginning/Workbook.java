/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;

/**
 * The sheets of a workbook (Office Open XML, ECMA-376). A formula counts with the value that was computed when the file was
 * saved, a date is written year-month-day, and cells that are joined downwards all have what stands in the first.
 */
final class Workbook {
    private static final int MOST_LINES = 5_000;
    private static final int MOST_COLUMNS = 200;
    private static final int MOST_UNREAD = 50;
    static final String BROKEN = "The workbook cannot be read; open it in a spreadsheet, save it anew as XLSX or CSV, and choose that.";

    private final List<String> unread = new ArrayList<>();
    private int more;

    private Workbook() {
    }

    static List<SheetGrid> read(byte[] file) throws UnusableTable {
        WorkbookParts parts = WorkbookParts.of(file);
        List<SheetGrid> grids = new ArrayList<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(file), new ReadingOptions(parts.haveFormats(), true));
                Stream<Sheet> sheets = workbook.getSheets()) {
            for (Sheet sheet : sheets.filter(one -> one.getVisibility() == SheetVisibility.VISIBLE).toList()) {
                SheetGrid grid = new Workbook().grid(sheet, parts.joined(sheet.getId()));
                if (!grid.lines().isEmpty() || !grid.unread().isEmpty()) {
                    grids.add(grid);
                }
            }
        } catch (IOException | RuntimeException broken) {
            // the reader throws exceptions of many kinds at a file that is damaged
            throw new UnusableTable(BROKEN);
        }
        if (grids.isEmpty()) {
            throw new UnusableTable("The workbook has no sheet with a word in it.");
        }
        return List.copyOf(grids);
    }

    private SheetGrid grid(Sheet sheet, Map<Integer, Map<Integer, Integer>> joined) throws IOException {
        List<SheetGrid.Line> lines = new ArrayList<>();
        Map<Integer, String> above = new HashMap<>();
        try (Stream<Row> rows = sheet.openStream()) {
            for (Row row : (Iterable<Row>) rows::iterator) {
                if (row.getRowNum() > MOST_LINES) {
                    tell("Row " + row.getRowNum() + " and what follows is not read: no more than " + MOST_LINES + " rows are.");
                    break;
                }
                List<String> cells = cells(row, joined.getOrDefault(row.getRowNum(), Map.of()), above);
                if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    lines.add(new SheetGrid.Line(row.getRowNum(), cells));
                }
            }
        }
        if (more > 0) {
            unread.add("And " + more + " more cells.");
        }
        return new SheetGrid(sheet.getName(), lines, unread);
    }

    /** @param joined by column, the row in which the cells begin that the one here is joined with @param above by column, what stands there */
    private List<String> cells(Row row, Map<Integer, Integer> joined, Map<Integer, String> above) {
        List<String> cells = new ArrayList<>();
        for (Cell cell : row) {
            if (cell != null && cell.getColumnIndex() < MOST_COLUMNS) {
                put(cells, cell.getColumnIndex(), words(cell));
            }
        }
        joined.forEach((column, first) -> {
            String here = column < cells.size() ? cells.get(column) : "";
            if (first == row.getRowNum()) {
                above.put(column, here);
            } else if (here.isEmpty() && column < MOST_COLUMNS) {
                put(cells, column, above.getOrDefault(column, ""));
            }
        });
        return cells;
    }

    private static void put(List<String> cells, int column, String words) {
        if (cells.size() <= column) {
            cells.addAll(Collections.nCopies(column + 1 - cells.size(), ""));
        }
        cells.set(column, words);
    }

    private String words(Cell cell) {
        if (cell.getType() == CellType.ERROR) {
            tell("Cell " + cell.getAddress() + " holds the error " + cell.getRawValue() + "; it counts as empty.");
            return "";
        }
        String raw = cell.getRawValue() == null ? "" : cell.getRawValue().strip();
        if (raw.isEmpty() && cell.getFormula() != null && !cell.getFormula().isEmpty()) {
            tell("Cell " + cell.getAddress() + " holds a formula that was never computed; it counts as empty. Open the file in a spreadsheet and save it.");
            return "";
        }
        if (raw.startsWith("#") && cell.getType() == CellType.FORMULA) {
            tell("Cell " + cell.getAddress() + " holds the error " + raw + "; it counts as empty.");
            return "";
        }
        if (cell.getType() == CellType.BOOLEAN) {
            return "1".equals(raw) || "true".equalsIgnoreCase(raw) ? "yes" : "no";
        }
        if (cell.getType() == CellType.STRING || cell.getType() == CellType.EMPTY) {
            return cell.getText().strip();
        }
        try {
            return number(cell, new BigDecimal(raw));
        } catch (NumberFormatException words) {
            return cell.getText().strip();
        }
    }

    /** A number as its cell shows it, without what binary fractions add in the sixteenth digit. */
    private static String number(Cell cell, BigDecimal value) {
        String format = cell.getDataFormatString() == null ? "" : cell.getDataFormatString().replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]", "").toLowerCase(Locale.ROOT);
        if (format.contains("%")) {
            return plain(value.movePointRight(2)) + " %";
        }
        if (format.matches(".*[ymd].*") && !format.startsWith("general")) {
            try {
                return cell.asDate().toLocalDate().toString();
            } catch (RuntimeException noDate) {
                return plain(value);
            }
        }
        return plain(value);
    }

    private static String plain(BigDecimal value) {
        BigDecimal rounded = value.round(new MathContext(15)).stripTrailingZeros();
        return Math.abs((long) rounded.scale()) > 30 ? rounded.toString() : rounded.toPlainString();
    }

    private void tell(String sentence) {
        if (unread.size() < MOST_UNREAD) {
            unread.add(sentence);
        } else {
            more++;
        }
    }
}
