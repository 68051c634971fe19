/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.List;

/** A file with tables in it: comma-, semicolon- or tab-separated values (RFC 4180), or a workbook (Office Open XML, ECMA-376). */
public final class TableFile {
    /** In bytes. */
    public static final int LARGEST = 5_000_000;
    private static final byte[] ZIP = {'P', 'K', 3, 4};
    private static final byte[] COMPOUND = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0};
    private static final byte[] PDF = {'%', 'P', 'D', 'F'};

    private TableFile() {
    }

    /**
     * @param file the bytes of the file; what it is, they say themselves
     * @return its sheets that have a word in them, at least one
     * @throws UnusableTable where there is nothing to read, in one sentence
     */
    public static List<SheetGrid> read(byte[] file) throws UnusableTable {
        if (file.length > LARGEST) {
            throw new UnusableTable("The table has more than " + LARGEST + " bytes; take out what is not needed.");
        }
        if (begins(file, COMPOUND)) {
            throw new UnusableTable("The file is a spreadsheet of the older kind, or has a password; save it as XLSX or CSV, without one.");
        }
        if (begins(file, PDF)) {
            throw new UnusableTable("The file is a PDF, not a table; copy the table into a spreadsheet and save that.");
        }
        return begins(file, ZIP) ? Workbook.read(file) : List.of(SeparatedValues.read(file));
    }

    private static boolean begins(byte[] file, byte[] with) {
        return file.length >= with.length && java.util.Arrays.equals(file, 0, with.length, with, 0, with.length);
    }
}
