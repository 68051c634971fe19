/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.live;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the first lines of a file say; enough to list it, without reading all of it.
 *
 * @param title    empty where there is none yet
 * @param revision in words, such as "revision 2, released"; empty for a library
 * @param uses     the names of the libraries that it asks for
 */
public record FileHead(String title, boolean library, String revision, Set<String> uses) {
    /** How much of a file is its head, in bytes. */
    static final int BYTES = 4_096;
    private static final Pattern BEGINNING = Pattern.compile("(?m)^\\s*(procedure|library)\\s+\\w+\\s+\"([^\"\\n]*)\"");
    private static final Pattern REVISION = Pattern.compile("(?m)^\\s*revision\\s+(\\d+)(?:\\s+(\\w+))?");
    private static final Pattern USES = Pattern.compile("(?m)^\\s*uses\\s+(\\w+)");

    public static FileHead of(String beginning) {
        Matcher first = BEGINNING.matcher(beginning);
        boolean found = first.find();
        boolean library = found && first.group(1).equals("library");
        Matcher number = REVISION.matcher(beginning);
        String revision = library ? "" : !number.find() ? "no revision" : "revision " + number.group(1)
                + (number.group(2) == null ? "" : ", " + number.group(2).toLowerCase(Locale.ROOT));
        Set<String> uses = new HashSet<>();
        Matcher used = USES.matcher(beginning);
        while (used.find()) {
            uses.add(used.group(1));
        }
        return new FileHead(found ? first.group(2) : "", library, revision, Set.copyOf(uses));
    }
}
