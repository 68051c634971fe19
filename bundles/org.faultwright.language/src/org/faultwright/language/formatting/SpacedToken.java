/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

/**
 * A word, sign, quoted text or comment, with the white space its author put before it.
 *
 * @param newlines line ends in that white space
 * @param spaced   whether there is any at all
 * @param item     what begins here
 * @param keyword  the keyword it is; empty for names, numbers, texts and comments
 */
record SpacedToken(String text, int newlines, boolean spaced, LayoutItem item, String keyword, boolean comment) {
    boolean endsLine() {
        return text.startsWith("//");
    }

    boolean is(String sign) {
        return keyword.equals(sign);
    }

    boolean begins() {
        return item.beginsLine();
    }
}
