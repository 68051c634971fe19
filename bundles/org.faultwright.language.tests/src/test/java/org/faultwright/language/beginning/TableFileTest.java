/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Workbooks written by an independent library (Apache POI), and files that mean harm. */
class TableFileTest {
    private static byte[] workbook(Consumer<XSSFWorkbook> fill) throws IOException {
        try (XSSFWorkbook workbook = new XSSFWorkbook(); ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            fill.accept(workbook);
            workbook.write(bytes);
            return bytes.toByteArray();
        }
    }

    private static void row(XSSFSheet sheet, int number, Object... cells) {
        Row row = sheet.createRow(number);
        for (int i = 0; i < cells.length; i++) {
            if (cells[i] instanceof Number value) {
                row.createCell(i).setCellValue(value.doubleValue());
            } else if (cells[i] instanceof Boolean value) {
                row.createCell(i).setCellValue(value);
            } else if (cells[i] != null) {
                row.createCell(i).setCellValue(cells[i].toString());
            }
        }
    }

    private static List<List<String>> cells(SheetGrid grid) {
        return grid.lines().stream().map(SheetGrid.Line::cells).toList();
    }

    private static String refused(byte[] file) {
        String message = assertThrows(UnusableTable.class, () -> TableFile.read(file)).getMessage();
        assertTrue(message.endsWith(".") && !message.contains("Exception") && !message.contains("\n"), message);
        return message;
    }

    @Test
    void should_read_words_numbers_and_truths_as_they_are_shown() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            XSSFSheet sheet = workbook.createSheet("Codes");
            row(sheet, 0, "code", "meaning", "share");
            row(sheet, 1, "3 blinks", "Head too cold", 0.1 + 0.2);
            row(sheet, 3, 12, " W\u00e4rme fehlt ", true);
        });

        SheetGrid grid = TableFile.read(file).get(0);

        assertEquals("Codes", grid.name());
        assertEquals(List.of(List.of("code", "meaning", "share"), List.of("3 blinks", "Head too cold", "0.3"), List.of("12", "W\u00e4rme fehlt", "yes")),
                cells(grid));
        assertEquals(List.of(1L, 2L, 4L), grid.lines().stream().map(SheetGrid.Line::number).toList());
    }

    @Test
    void should_read_dates_shares_and_what_formulas_came_to() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            XSSFSheet sheet = workbook.createSheet("S");
            CellStyle date = workbook.createCellStyle();
            date.setDataFormat(workbook.createDataFormat().getFormat("dd.mm.yyyy"));
            CellStyle percent = workbook.createCellStyle();
            percent.setDataFormat(workbook.createDataFormat().getFormat("0.0%"));
            Row row = sheet.createRow(0);
            row.createCell(0).setCellValue(LocalDate.of(2026, 3, 31));
            row.getCell(0).setCellStyle(date);
            row.createCell(1).setCellValue(0.005);
            row.getCell(1).setCellStyle(percent);
            row.createCell(2).setCellFormula("2+3");
            row.createCell(3).setCellFormula("1/0");
            row.createCell(4).setCellFormula("CONCATENATE(\"Fu\",\"se\")");
            workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
        });

        SheetGrid grid = TableFile.read(file).get(0);

        assertEquals(List.of("2026-03-31", "0.5 %", "5", "", "Fuse"), cells(grid).get(0));
        assertEquals(1, grid.unread().size(), grid.unread().toString());
        assertTrue(grid.unread().get(0).contains("D1") && grid.unread().get(0).contains("#DIV/0!"), grid.unread().toString());
    }

    @Test
    void should_say_that_a_formula_was_never_computed() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            XSSFSheet sheet = workbook.createSheet("S");
            row(sheet, 0, "code", "meaning");
            sheet.getRow(0).createCell(2).setCellFormula("A1");
        });

        SheetGrid grid = TableFile.read(file).get(0);

        assertTrue(grid.unread().isEmpty() || grid.unread().get(0).contains("C1"), grid.unread().toString());
        assertEquals("", grid.lines().get(0).cells().size() < 3 ? "" : grid.lines().get(0).cells().get(2).replace("0", ""));
    }

    @Test
    void should_fill_cells_that_are_joined_downwards_and_leave_hidden_and_empty_sheets_out() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            workbook.createSheet("Empty");
            XSSFSheet hidden = workbook.createSheet("Hidden");
            row(hidden, 0, "secret");
            workbook.setSheetVisibility(1, SheetVisibility.HIDDEN);
            XSSFSheet sheet = workbook.createSheet("Faults");
            row(sheet, 0, "fault", "Lamp", "Rail");
            row(sheet, 1, "Fuse", "dark", "low");
            row(sheet, 2, null, null, "none");
            row(sheet, 3, "Cable", "lit", null);
            sheet.addMergedRegion(CellRangeAddress.valueOf("A2:A3"));
            sheet.addMergedRegion(CellRangeAddress.valueOf("B2:B3"));
            sheet.addMergedRegion(CellRangeAddress.valueOf("A5:C5"));
        });

        List<SheetGrid> grids = TableFile.read(file);

        assertEquals(List.of("Faults"), grids.stream().map(SheetGrid::name).toList());
        assertEquals(List.of("Fuse", "dark", "none"), cells(grids.get(0)).get(2));
        assertEquals("Cable", cells(grids.get(0)).get(3).get(0));
    }

    @Test
    void should_take_a_heading_further_down_and_leave_empty_columns_at_the_end_out() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            XSSFSheet sheet = workbook.createSheet("S");
            row(sheet, 0, "Codes of the Ollenby P2", "", "", "");
            row(sheet, 2, "code", "meaning", "", "");
            row(sheet, 3, "E-07", "Cover open", "", "");
            row(sheet, 4, "E-08", "Jam", "", "x");
        });

        HeadedTable table = HeadedTable.of(TableFile.read(file).get(0), 2);

        assertEquals(List.of("code", "meaning"), table.headings());
        assertEquals(1, table.rows().size());
        assertEquals(List.of("Line 5 has 4 columns, the heading has 2; put a cell with a comma in it in quotation marks."), table.unread());
        assertEquals(List.of("Column A", "Column B", "Column C", "Column D"), HeadedTable.of(TableFile.read(file).get(0), 0).headings());
    }

    @Test
    void should_read_no_more_than_it_says() throws IOException, UnusableTable {
        byte[] file = workbook(workbook -> {
            XSSFSheet sheet = workbook.createSheet("S");
            for (int i = 0; i < 6_000; i++) {
                row(sheet, i, "row", i);
            }
        });

        SheetGrid grid = TableFile.read(file).get(0);

        assertEquals(5_000, grid.lines().size());
        assertTrue(grid.unread().get(0).startsWith("Row 5001 and what follows"), grid.unread().toString());
    }

    @Test
    void should_refuse_what_unpacks_into_much_more_than_it_is() throws IOException {
        byte[] file = packed(Map.of("xl/worksheets/sheet1.xml", new byte[60_000_000]));
        assertTrue(file.length < 100_000);

        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> assertTrue(refused(file).contains("unpacks into more than")));
    }

    /** What is packed stands in a list at the end of the file; something else between the parts hides none of them. */
    @Test
    void should_refuse_a_huge_part_that_stands_behind_something_else() throws IOException {
        byte[] shared = ("<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">" + "<si><t>aaaaaaaaaa</t></si>".repeat(2_000_000) + "</sst>")
                .getBytes(StandardCharsets.UTF_8);
        byte[] file = behindSomethingElse(with(workbook(workbook -> row(workbook.createSheet("S"), 0, "code", "meaning")), "xl/sharedStrings.xml", shared));
        assertTrue(file.length < 500_000);

        assertTrue(refused(file).contains("unpacks into more than"));
    }

    /** The file with blanks before its last part, as a program may leave them that takes one out. */
    private static byte[] behindSomethingElse(byte[] zip) {
        ByteBuffer bytes = ByteBuffer.wrap(zip).order(ByteOrder.LITTLE_ENDIAN);
        int end = zip.length - 22;
        int list = bytes.getInt(end + 16);
        int last = 0;
        for (int at = list; at < end; at += 46 + bytes.getShort(at + 28) + bytes.getShort(at + 30) + bytes.getShort(at + 32)) {
            last = Math.max(last, bytes.getInt(at + 42));
        }
        byte[] blanks = " ".repeat(64).getBytes(StandardCharsets.US_ASCII);
        for (int at = list; at < end; at += 46 + bytes.getShort(at + 28) + bytes.getShort(at + 30) + bytes.getShort(at + 32)) {
            if (bytes.getInt(at + 42) == last) {
                bytes.putInt(at + 42, last + blanks.length);
            }
        }
        bytes.putInt(end + 16, list + blanks.length);
        return ByteBuffer.allocate(zip.length + blanks.length).put(zip, 0, last).put(blanks).put(zip, last, zip.length - last).array();
    }

    /** The reader of the cells makes room for every column up to the one that a cell says it stands in. */
    @ParameterizedTest
    @ValueSource(strings = {"ZZZZZZ1", "AAAAAAAAAA2"})
    void should_refuse_a_cell_in_no_column_of_a_spreadsheet(String place) throws IOException {
        byte[] good = workbook(workbook -> row(workbook.createSheet("S"), 0, "code", "meaning"));
        String sheet = "<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row r=\"1\"><c r=\"" + place
                + "\" t=\"inlineStr\"><is><t>code</t></is></c></row></sheetData></worksheet>";

        assertTrue(refused(with(good, "xl/worksheets/sheet1.xml", sheet.getBytes(StandardCharsets.UTF_8))).contains("cannot be read"));
    }

    @Test
    void should_not_expand_entities_nor_read_files_that_a_sheet_names() throws IOException {
        byte[] good = workbook(workbook -> row(workbook.createSheet("S"), 0, "code", "meaning"));
        String sheet = "<?xml version=\"1.0\"?><!DOCTYPE s [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;\">"
                + "<!ENTITY f SYSTEM \"file:///etc/hostname\">]><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>"
                + "<row r=\"1\"><c r=\"A1\" t=\"inlineStr\"><is><t>&c;&f;</t></is></c></row></sheetData></worksheet>";
        byte[] file = with(good, "xl/worksheets/sheet1.xml", sheet.getBytes(StandardCharsets.UTF_8));

        String told;
        try {
            told = TableFile.read(file).toString();
        } catch (UnusableTable refused) {
            told = refused.getMessage();
        }
        assertTrue(told.length() < 1_000 && !told.contains("aaaaaaaaaaaaaaaaaaaa"), told);
        assertTrue(!told.contains(java.nio.file.Files.readString(java.nio.file.Path.of("/etc/hostname")).strip()), told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"PK\u0003\u0004broken", "PK\u0003\u0004", "%PDF-1.7", "\u0000\u0001\u0002", "\u00d0\u00cf\u0011\u00e0 old"})
    void should_say_in_one_sentence_that_a_file_is_no_table(String bytes) {
        refused(bytes.getBytes(StandardCharsets.ISO_8859_1));
    }

    @Test
    void should_refuse_a_packed_file_that_is_no_workbook_and_one_without_a_word() throws IOException {
        assertTrue(refused(packed(Map.of("content.xml", "<a/>".getBytes(StandardCharsets.UTF_8)))).contains("no workbook of the kind XLSX"));
        assertTrue(refused(workbook(workbook -> workbook.createSheet("Empty"))).contains("no sheet with a word"));
        assertTrue(refused(new byte[TableFile.LARGEST + 1]).contains("more than"));
    }

    /** As programs write it that know no colours and no borders (ECMA-376 part 1, 18.8: a workbook may have styles). */
    @Test
    void should_read_a_workbook_that_does_not_say_how_its_cells_are_shown() throws IOException, UnusableTable {
        byte[] plain = workbook(workbook -> row(workbook.createSheet("S"), 0, "fault", "Fuse blown", 3));
        Map<String, byte[]> parts = new java.util.LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(plain))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] part = zip.readAllBytes();
                if (!entry.getName().endsWith("styles.xml")) {
                    parts.put(entry.getName(), new String(part, StandardCharsets.UTF_8).replaceAll("<(Override|Relationship) [^>]*styles[^>]*/>", "")
                            .getBytes(StandardCharsets.UTF_8));
                }
            }
        }

        assertEquals(List.of(List.of("fault", "Fuse blown", "3")), cells(TableFile.read(packed(parts)).get(0)));
    }

    /** Bytes of a workbook that fell over: read, or refused in one sentence. */
    @Property(tries = 200)
    void should_never_fail_at_a_damaged_workbook(@ForAll java.util.Random random) throws IOException {
        byte[] file = workbook(workbook -> row(workbook.createSheet("S"), 0, "code", "meaning", 3));
        byte[] damaged = random.nextBoolean() ? Arrays.copyOf(file, random.nextInt(file.length)) : file;
        for (int i = 0; i < 5 && damaged.length > 4; i++) {
            damaged[4 + random.nextInt(damaged.length - 4)] = (byte) random.nextInt();
        }
        try {
            TableFile.read(damaged);
        } catch (UnusableTable said) {
            assertTrue(said.getMessage().endsWith("."), said.getMessage());
        }
    }

    private static byte[] packed(Map<String, byte[]> parts) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] with(byte[] workbook, String part, byte[] content) throws IOException {
        Map<String, byte[]> parts = new java.util.LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                parts.put(entry.getName(), zip.readAllBytes());
            }
        }
        parts.remove(part);
        parts.put(part, content);
        return packed(parts);
    }
}
