/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

/** Words of the author's in a message, cut where they would fill the screen. */
public final class Quoted {
    private static final int LONGEST = 40;

    private Quoted() {
    }

    public static String words(String words) {
        String line = words.strip().replaceAll("\\s+", " ");
        return "'" + (line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…") + "'";
    }
}
