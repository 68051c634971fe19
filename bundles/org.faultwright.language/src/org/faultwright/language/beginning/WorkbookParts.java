/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * The parts of a workbook, unpacked once before anything is read from it, so that a small file that unpacks into a huge one is
 * refused, and so is one with a cell far to the right, for which the reader of the cells would make room; and which cells of each sheet
 * are joined, which that reader does not tell. Parts are found as it finds them, by the list at the end of the file.
 */
final class WorkbookParts {
    /** In bytes, unpacked. */
    private static final int LARGEST = 40_000_000;
    private static final int MOST_PARTS = 1_000;
    private static final int LONGEST_JOIN = 2_000;
    private static final int MOST_JOINED = 20_000;
    private static final Pattern PLACE = Pattern.compile("([A-Z]{1,3})(\\d{1,7})");
    private static final String RELATIONS = "xl/_rels/workbook.xml.rels";

    private final Map<String, byte[]> parts = new HashMap<>();

    private WorkbookParts() {
    }

    static WorkbookParts of(byte[] file) throws UnusableTable {
        WorkbookParts made = new WorkbookParts();
        long all = 0;
        byte[] buffer = new byte[1 << 16];
        try (ZipFile zip = ZipFile.builder().setSeekableByteChannel(new SeekableInMemoryByteChannel(file)).get()) {
            List<ZipArchiveEntry> entries = Collections.list(zip.getEntries());
            if (entries.size() > MOST_PARTS) {
                throw new UnusableTable("The workbook has more than " + MOST_PARTS + " parts; copy the table alone into a new one.");
            }
            for (ZipArchiveEntry entry : entries) {
                boolean kept = entry.getName().equals(RELATIONS) || entry.getName().endsWith(".xml");
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                try (InputStream part = zip.getInputStream(entry)) {
                    for (int read = part.read(buffer); read >= 0; read = part.read(buffer)) {
                        all += read;
                        if (all > LARGEST) {
                            throw new UnusableTable("The workbook unpacks into more than " + LARGEST + " bytes; copy the table alone into a new one.");
                        }
                        if (kept) {
                            bytes.write(buffer, 0, read);
                        }
                    }
                }
                if (kept) {
                    made.parts.put(entry.getName(), bytes.toByteArray());
                }
            }
        } catch (IOException | IllegalArgumentException broken) {
            throw new UnusableTable("The file is packed like a workbook, but is damaged; save it anew as XLSX or CSV.");
        }
        if (!made.parts.containsKey(RELATIONS)) {
            throw new UnusableTable("The file is no workbook of the kind XLSX; save the spreadsheet as XLSX or CSV.");
        }
        return made;
    }

    /** Whether it says how its cells are shown; what only writes tables down often leaves that out. */
    boolean haveFormats() {
        return parts.keySet().stream().anyMatch(name -> name.endsWith("styles.xml"));
    }

    /**
     * By row and column, the row in which the cells begin that this one is joined with.
     *
     * @param sheet the id of the sheet in the workbook
     * @throws UnusableTable where the sheet cannot be gone through, or has a cell in no column of a spreadsheet
     */
    Map<Integer, Map<Integer, Integer>> joined(String sheet) throws UnusableTable {
        Map<Integer, Map<Integer, Integer>> joined = new HashMap<>();
        String[] target = {""};
        each(parts.get(RELATIONS), reader -> {
            if (reader.getLocalName().equals("Relationship") && sheet.equals(reader.getAttributeValue(null, "Id"))) {
                target[0] = reader.getAttributeValue(null, "Target");
            }
        });
        String name = target[0].startsWith("/") ? target[0].substring(1) : "xl/" + target[0];
        each(parts.getOrDefault(name, new byte[0]), reader -> {
            if (reader.getLocalName().equals("mergeCell")) {
                join(String.valueOf(reader.getAttributeValue(null, "ref")), joined);
            } else if (reader.getLocalName().equals("c")) {
                String cell = reader.getAttributeValue(null, "r");
                if (cell != null && !PLACE.matcher(cell).matches()) {
                    throw new UnusableTable(Workbook.BROKEN);
                }
            }
        });
        return joined;
    }

    private static void join(String range, Map<Integer, Map<Integer, Integer>> joined) {
        String[] ends = range.split(":");
        if (ends.length == 2 && PLACE.matcher(ends[0]).matches() && PLACE.matcher(ends[1]).matches()) {
            int[] from = place(ends[0]);
            int to = Math.min(place(ends[1])[1], from[1] + LONGEST_JOIN);
            for (int row = from[1]; row <= to && from[1] < to && joined.size() < MOST_JOINED; row++) {
                joined.computeIfAbsent(row, none -> new HashMap<>()).put(from[0], from[1]);
            }
        }
    }

    /** The column, from 0, and the row, from 1, of a cell such as B7. */
    private static int[] place(String cell) {
        Matcher place = PLACE.matcher(cell);
        if (!place.matches()) {
            return new int[] {0, 0};
        }
        int column = 0;
        for (char letter : place.group(1).toCharArray()) {
            column = column * 26 + letter - 'A' + 1;
        }
        return new int[] {column - 1, Integer.parseInt(place.group(2))};
    }

    private interface Element {
        void seen(XMLStreamReader reader) throws UnusableTable;
    }

    private static void each(byte[] xml, Element element) throws UnusableTable {
        // the one of the Java library: another in reach may read on where a document type is declared
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            XMLStreamReader reader = factory.createXMLStreamReader(new ByteArrayInputStream(xml));
            while (reader.hasNext()) {
                if (reader.next() == XMLStreamConstants.START_ELEMENT) {
                    element.seen(reader);
                }
            }
        } catch (XMLStreamException broken) {
            throw new UnusableTable(Workbook.BROKEN);
        }
    }
}
