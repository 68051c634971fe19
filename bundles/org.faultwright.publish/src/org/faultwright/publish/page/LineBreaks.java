/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

/** Where a printed line may not end: between a number and its unit, nor inside a unit. */
final class LineBreaks {
    private static final int LONGEST_UNIT = 5;
    private static final char NO_BREAK = '\u00A0';

    private LineBreaks() {
    }

    /** The words with spaces that keep a number, a space, and something short that is no further number together. */
    static String kept(String words) {
        StringBuilder kept = new StringBuilder(words);
        for (int i = 1; i < words.length() - 1; i++) {
            if (words.charAt(i) == ' ' && isTogether(words, i)) {
                kept.setCharAt(i, NO_BREAK);
            }
        }
        return kept.toString();
    }

    private static boolean isTogether(String words, int gap) {
        char before = words.charAt(gap - 1);
        char after = words.charAt(gap + 1);
        if (before == '\u00B1' || after == '\u00B1') {
            return true;
        }
        if (!Character.isDigit(before) || Character.isDigit(after)) {
            return false;
        }
        int end = gap + 1;
        while (end < words.length() && words.charAt(end) != ' ') {
            end++;
        }
        return end - gap - 1 <= LONGEST_UNIT;
    }
}
