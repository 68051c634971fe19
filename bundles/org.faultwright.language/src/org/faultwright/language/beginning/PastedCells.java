/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Rows of cells as spreadsheets put them on the clipboard: a tab between cells, cells with a line end in them in quotation marks. */
public final class PastedCells {
    private static final int LARGEST = 1_000_000;
    private static final char TAB = '\t';
    /** What a spreadsheet would compute; an apostrophe before it tells it not to. */
    private static final Pattern FORMULA = Pattern.compile("'*(?:[=+@]|-(?!\\d)).*", Pattern.DOTALL);

    private PastedCells() {
    }

    /**
     * Every row, also empty ones, without the blanks around cells.
     *
     * @throws UnusableTable where nothing can be read from it
     */
    public static List<List<String>> read(String pasted) throws UnusableTable {
        if (pasted.length() > LARGEST) {
            throw new UnusableTable("What was copied has more than " + LARGEST + " characters; copy the cells alone.");
        }
        if (pasted.isBlank()) {
            throw new UnusableTable("There is nothing to paste; copy cells in the spreadsheet first.");
        }
        List<List<String>> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().fieldSeparator(TAB).skipEmptyLines(false).ofCsvRecord(pasted)) {
            for (CsvRecord record : reader) {
                rows.add(record.getFields().stream().map(cell -> asWords(cell.replaceAll("[\\p{Cntrl}\\s]+", " ").strip())).toList());
            }
        } catch (CsvParseException | IOException broken) {
            throw new UnusableTable("What was copied cannot be read as cells; look for a quotation mark that is not closed.");
        }
        return rows;
    }

    private static String asWords(String cell) {
        return cell.startsWith("'") && FORMULA.matcher(cell).matches() ? cell.substring(1) : cell;
    }

    /** For the clipboard. The words of a text never become a formula of the spreadsheet that they are pasted into. */
    public static String write(List<List<String>> rows) {
        StringWriter text = new StringWriter();
        try (CsvWriter writer = CsvWriter.builder().fieldSeparator(TAB).build(text)) {
            rows.forEach(row -> writer.writeRecord(row.stream().map(cell -> FORMULA.matcher(cell).matches() ? "'" + cell : cell).toList()));
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }
}
