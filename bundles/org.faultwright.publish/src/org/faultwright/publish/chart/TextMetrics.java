/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.publish.page.PlainText;

/** How much room words take, without asking a font: the picture is the same on every machine. */
public final class TextMetrics {
    /** The size of a title, in points. */
    public static final int TITLE = 12;
    /** The size of everything else. */
    public static final int WORDS = 11;
    /** The width of a letter as a part of its size, on the wide side for the fonts that are asked for. */
    private static final double WIDTH = 0.56;
    private static final double BOLD = 0.6;

    private TextMetrics() {
    }

    static int width(String words, int size) {
        return (int) Math.ceil(words.codePointCount(0, words.length()) * size * WIDTH);
    }

    /** Words broken at spaces; the last line is cut with an ellipsis where there are more. */
    static List<String> lines(String words, int size, boolean bold, int room, int most) {
        int fits = Math.max(1, (int) (room / (size * (bold ? BOLD : WIDTH))));
        List<String> lines = new ArrayList<>();
        String left = PlainText.line(words);
        while (!left.isEmpty()) {
            boolean whole = left.codePointCount(0, left.length()) <= fits;
            boolean last = lines.size() == most - 1;
            if (whole || last) {
                lines.add(whole ? left : left.substring(0, left.offsetByCodePoints(0, fits - 1)).strip() + "\u2026");
                return lines;
            }
            int end = left.offsetByCodePoints(0, fits);
            int gap = left.lastIndexOf(' ', end);
            lines.add(left.substring(0, gap > 0 ? gap : end));
            left = left.substring(gap > 0 ? gap + 1 : end);
        }
        return lines;
    }
}
