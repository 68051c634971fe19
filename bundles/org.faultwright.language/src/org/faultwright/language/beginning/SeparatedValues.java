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
import java.util.List;
import java.util.stream.Stream;

/** Comma-, semicolon- or tab-separated values (RFC 4180) as spreadsheets write them. */
final class SeparatedValues {
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private SeparatedValues() {
    }

    static SheetGrid read(byte[] file) throws UnusableTable {
        String text = text(file);
        if (text.indexOf('\0') >= 0) {
            throw new UnusableTable("The file is no table; save the spreadsheet as XLSX or CSV and choose that.");
        }
        List<SheetGrid.Line> lines = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().fieldSeparator(separator(text)).skipEmptyLines(true)
                .ofCsvRecord(text)) {
            for (CsvRecord record : reader) {
                List<String> cells = record.getFields().stream().map(String::strip).toList();
                if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
                    lines.add(new SheetGrid.Line(record.getStartingLineNumber(), cells));
                }
            }
        } catch (CsvParseException | java.io.IOException broken) {
            throw new UnusableTable("The table cannot be read as separated values; look for a quotation mark that is not closed.");
        }
        return new SheetGrid("", lines, List.of());
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

    /** The one of the three that the first line has most of. */
    private static char separator(String text) {
        String heading = text.lines().findFirst().orElse("");
        return Stream.of(',', ';', '\t').max(Comparator.comparing((Character sign) ->
                heading.chars().filter(c -> c == sign).count()).thenComparing(sign -> sign == ',' ? 1 : 0)).orElse(',');
    }
}
