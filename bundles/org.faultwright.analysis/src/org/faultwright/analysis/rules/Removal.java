/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.procedure.SourceRange;

/** Takes a part out of a text, and its line with it where nothing else stands there. */
final class Removal {
    private Removal() {
    }

    static Fix of(String title, SourceRange part) {
        String text = part.source().content();
        int from = part.offset();
        while (from > 0 && isBlank(text.charAt(from - 1))) {
            from--;
        }
        int to = part.end();
        while (to < text.length() && isBlank(text.charAt(to))) {
            to++;
        }
        boolean startsLine = from == 0 || text.charAt(from - 1) == '\n';
        boolean endsLine = to == text.length() || text.charAt(to) == '\n';
        if (startsLine && endsLine && to < text.length()) {
            to++;
        } else if (!endsLine) {
            from = part.offset();
        }
        SourceRange gone = new SourceRange(part.source(), from, to - from);
        return Fix.replacing(title, gone, Remarks.keptFrom(gone.text(), startsLine ? text.substring(from, part.offset()) : ""));
    }

    private static boolean isBlank(char c) {
        return c == ' ' || c == '\t' || c == '\r';
    }
}
