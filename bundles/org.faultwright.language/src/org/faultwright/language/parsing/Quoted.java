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
        StringBuilder line = new StringBuilder();
        words.strip().codePoints().limit(LONGEST + 1L).forEach(c -> {
            if (Character.isISOControl(c) && !Character.isWhitespace(c)) {
                line.append(String.format("U+%04X", c));
            } else {
                line.appendCodePoint(Character.isWhitespace(c) ? ' ' : c);
            }
        });
        String shown = line.toString().replaceAll(" +", " ");
        return '"' + (shown.length() <= LONGEST ? shown : shown.substring(0, LONGEST) + "…") + '"';
    }
}
