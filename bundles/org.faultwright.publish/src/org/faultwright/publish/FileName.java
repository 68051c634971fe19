/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import java.util.zip.CRC32;
import org.faultwright.procedure.Document;

/** File names made from procedure names: the same on every system, and never a path. */
public final class FileName {
    private static final int LONGEST = 80;
    /** Names that Windows keeps for devices, whatever their ending. */
    private static final Set<String> DEVICES = Set.of("con", "prn", "aux", "nul", "com1", "com2", "com3", "com4",
            "com5", "com6", "com7", "com8", "com9", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8",
            "lpt9");

    private FileName() {
    }

    /**
     * The name of the procedure or library where it is plain. Else other characters become {@code _}, and a sum over the
     * name keeps two such names apart.
     *
     * @param ending with its full stop, such as {@code .pdf}
     */
    public static String of(Document document, String ending) {
        return plain(document.name().text()) + ending;
    }

    static String plain(String name) {
        String plain = name.replaceAll("[^A-Za-z0-9_-]", "_");
        boolean device = DEVICES.contains(plain.toLowerCase(Locale.ROOT));
        if (plain.equals(name) && !plain.isEmpty() && plain.length() <= LONGEST && !device) {
            return plain;
        }
        CRC32 sum = new CRC32();
        sum.update(name.getBytes(StandardCharsets.UTF_8));
        String kept = plain.substring(0, Math.min(plain.length(), LONGEST));
        return String.format(Locale.ROOT, "%s-%08x", kept.isEmpty() ? "procedure" : kept, sum.getValue());
    }
}
