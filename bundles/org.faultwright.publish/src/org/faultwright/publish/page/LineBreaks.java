/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.text.BreakIterator;
import java.util.Locale;

/** Where a line may end: where the language says so, but never between a number and its unit, nor inside one. */
final class LineBreaks implements FSTextBreaker {
    private static final int LONGEST_UNIT = 5;

    private final BreakIterator breaks = BreakIterator.getLineInstance(Locale.ROOT);
    private String text = "";

    @Override
    public void setText(String newText) {
        text = newText;
        breaks.setText(newText);
    }

    @Override
    public int next() {
        int next = breaks.next();
        while (next != BreakIterator.DONE && next < text.length() && (isInsideUnit(next) || isBeforeUnit(next))) {
            next = breaks.next();
        }
        return next;
    }

    private boolean isInsideUnit(int at) {
        return text.charAt(at - 1) == '\u00B0';
    }

    /** A number, a space, and then something short that is no further number: 5 min, 60 °C, 230 V. */
    private boolean isBeforeUnit(int at) {
        if (at < 2 || text.charAt(at - 1) != ' ' || !isNumeral(text.charAt(at - 2))) {
            return false;
        }
        int end = at;
        while (end < text.length() && text.charAt(end) != ' ') {
            end++;
        }
        return end - at <= LONGEST_UNIT && !Character.isDigit(text.charAt(at));
    }

    private static boolean isNumeral(char c) {
        return Character.isDigit(c);
    }
}
