/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.LinkedHashMap;
import java.util.Map;

/** A line as it is being laid out. It is cut into cells where lines of its kind are to stand in columns. */
final class LayoutLine {
    /** Longer lines are not lengthened for the sake of columns, and not kept on one line in braces. */
    static final int LONGEST = 120;

    private static final String INDENT = "    ";

    private final int depth;
    private final boolean blankBefore;
    private final LayoutItem kind;
    private final StringBuilder text = new StringBuilder();
    /** Where its cells begin, by their key. */
    private final Map<String, Integer> cuts = new LinkedHashMap<>();
    private String comment = "";
    private boolean several;

    LayoutLine(int depth, boolean blankBefore, LayoutItem kind) {
        this.depth = depth;
        this.blankBefore = blankBefore;
        this.kind = kind;
    }

    boolean isEmpty() {
        return text.isEmpty() && comment.isEmpty();
    }

    boolean isBlankBefore() {
        return blankBefore;
    }

    void add(SpacedToken word, String gap) {
        if (word.endsLine() && !text.isEmpty()) {
            comment = word.text();
            return;
        }
        several |= word.begins() && !text.isEmpty();
        String key = ColumnAlignment.key(kind, word, cuts.keySet());
        if (!text.isEmpty()) {
            text.append(key.isEmpty() ? gap : ColumnAlignment.gap(kind));
        }
        if (!key.isEmpty()) {
            cuts.put(key, text.length());
        }
        text.append(word.text());
    }

    /** Whether this line can stand in columns with the one before. */
    boolean lines(LayoutLine before) {
        return kind == before.kind && !blankBefore && depth == before.depth && inColumns() && before.inColumns();
    }

    private boolean inColumns() {
        return !cuts.isEmpty() && !several;
    }

    LayoutItem kind() {
        return kind;
    }

    boolean has(String key) {
        return cuts.containsKey(key);
    }

    /** Where the cell now begins. */
    int start(String key) {
        return cuts.get(key);
    }

    /** Moves the cell and what follows it to the right. */
    void widen(String key, int by) {
        int from = start(key);
        text.insert(from, " ".repeat(by));
        cuts.replaceAll((other, at) -> at >= from ? at + by : at);
    }

    int length() {
        return depth * INDENT.length() + text.length();
    }

    @Override
    public String toString() {
        String words = INDENT.repeat(depth) + text;
        return comment.isEmpty() ? words : words + "  " + comment;
    }
}
