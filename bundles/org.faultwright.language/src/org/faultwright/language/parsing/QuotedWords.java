/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

/** Words of the author's in a message, in one pair of quotation marks whether or not they bring their own, and cut where they would fill the screen. */
public final class QuotedWords {
    private static final int LONGEST = 40;

    private QuotedWords() {
    }

    public static String words(String words) {
        StringBuilder line = new StringBuilder();
        unquoted(words.strip()).codePoints().limit(LONGEST + 1L).forEach(c -> {
            if (Character.isISOControl(c) && !Character.isWhitespace(c)) {
                line.append(String.format("U+%04X", c));
            } else {
                line.appendCodePoint(Character.isWhitespace(c) ? ' ' : c);
            }
        });
        String shown = line.toString().replaceAll(" +", " ");
        return '"' + (shown.length() <= LONGEST ? shown : shown.substring(0, LONGEST) + "…") + '"';
    }

    private static String unquoted(String words) {
        boolean brought = words.length() > 2 && words.startsWith("\"") && words.endsWith("\"");
        return (brought ? words.substring(1, words.length() - 1) : words).replace('"', '\'');
    }
}
