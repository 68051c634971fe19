/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import org.faultwright.procedure.SourceRange;

/** The lines of something that is taken out of a text. */
public final class WholeLines {
    private WholeLines() {
    }

    /** The range with its whole line or lines, where nothing else stands on them. */
    public static SourceRange alone(SourceRange range) {
        String text = range.source().content();
        int from = range.offset();
        while (from > 0 && (text.charAt(from - 1) == ' ' || text.charAt(from - 1) == '\t')) {
            from--;
        }
        int to = range.end();
        while (to < text.length() && (text.charAt(to) == ' ' || text.charAt(to) == '\t' || text.charAt(to) == '\r')) {
            to++;
        }
        boolean whole = (from == 0 || text.charAt(from - 1) == '\n') && (to == text.length() || text.charAt(to) == '\n');
        return whole ? new SourceRange(range.source(), from, Math.min(to + 1, text.length()) - from) : range;
    }

    /** The range with its whole line or lines where nothing else stands on them, and with one of two empty lines around it. */
    public static SourceRange of(SourceRange range) {
        SourceRange lines = alone(range);
        if (lines.equals(range)) {
            return range;
        }
        String text = range.source().content();
        int from = lines.offset();
        int end = lines.end();
        boolean emptyBefore = from > 0 && text.substring(text.lastIndexOf('\n', from - 2) + 1, from).isBlank();
        int next = text.indexOf('\n', end);
        if (emptyBefore && next >= 0 && text.substring(end, next).isBlank()) {
            end = next + 1;
        }
        return new SourceRange(range.source(), from, end - from);
    }

    /** What stands before it on its line; empty where that is more than blanks. */
    public static String indent(SourceRange range) {
        String text = range.source().content();
        String before = text.substring(text.lastIndexOf('\n', range.offset() - 1) + 1, range.offset());
        return before.isBlank() ? before : "";
    }
}
