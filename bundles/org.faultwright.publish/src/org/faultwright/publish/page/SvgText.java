/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.faultwright.publish.PlainText;

/** Builds an SVG 1.1 picture as text. Words enter it only through {@link #text} and are escaped there. */
public final class SvgText {
    private static final double LETTER = 0.56;

    private final StringBuilder svg = new StringBuilder();

    public SvgText(int width, int height, String title, String description) {
        svg.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
                .append(width).append("\" height=\"").append(height).append("\" viewBox=\"0 0 ").append(width).append(' ')
                .append(height).append("\" role=\"img\" aria-labelledby=\"title description\" font-family=\"'DejaVu Sans"
                        + " Condensed', 'Segoe UI', 'Noto Sans', Arial, sans-serif\">\n");
        svg.append("<title id=\"title\">").append(HtmlText.escaped(PlainText.line(title))).append("</title>\n");
        svg.append("<desc id=\"description\">").append(HtmlText.escaped(PlainText.line(description))).append("</desc>\n");
        svg.append("<rect width=\"100%\" height=\"100%\" fill=\"#ffffff\"/>\n");
    }

    /** Words on one line, cut with an ellipsis where they are wider than there is room for, in full for a pointer. */
    public SvgText text(int x, int y, int size, String style, int room, String words) {
        String line = PlainText.line(words);
        int fits = (int) (room / (size * LETTER));
        boolean whole = line.codePointCount(0, line.length()) <= fits;
        String shown = whole ? line : line.substring(0, line.offsetByCodePoints(0, Math.max(1, fits - 1))) + "\u2026";
        svg.append("<text x=\"").append(x).append("\" y=\"").append(y).append("\" font-size=\"").append(size)
                .append("\" ").append(style).append('>');
        if (!whole) {
            svg.append("<title>").append(HtmlText.escaped(line)).append("</title>");
        }
        svg.append(HtmlText.escaped(shown)).append("</text>\n");
        return this;
    }

    /** Words on at most two lines, the second cut as {@link #text} cuts. */
    public SvgText lines(int x, int y, int size, String style, int room, String words) {
        String line = PlainText.line(words);
        int fits = (int) (room / (size * LETTER));
        int gap = line.length() <= fits ? -1 : line.lastIndexOf(' ', fits);
        if (gap < 0) {
            return text(x, y, size, style, room, line);
        }
        return text(x, y, size, style, room, line.substring(0, gap))
                .text(x, y + size + 3, size, style, room, line.substring(gap + 1));
    }

    /** @param style presentation attributes, ours */
    public SvgText box(int x, int y, int width, int height, String style) {
        svg.append("<rect x=\"").append(x).append("\" y=\"").append(y).append("\" width=\"").append(width)
                .append("\" height=\"").append(height).append("\" rx=\"3\" ").append(style).append("/>\n");
        return this;
    }

    /** A line from left to right with an arrow head, bent half way. */
    public SvgText arrow(int fromX, int fromY, int toX, int toY) {
        int middle = (fromX + toX) / 2;
        String path = "M" + fromX + ' ' + fromY + " C" + middle + ' ' + fromY + ' ' + middle + ' ' + toY + ' ' + (toX - 6)
                + ' ' + toY;
        svg.append("<path d=\"").append(path).append("\" fill=\"none\" stroke=\"#0b4a57\" stroke-width=\"1.4\"/>\n");
        String head = Arrays.stream(new int[][] { { toX, toY }, { toX - 7, toY - 4 }, { toX - 7, toY + 4 } })
                .map(point -> point[0] + "," + point[1]).reduce((a, b) -> a + " " + b).orElseThrow();
        svg.append("<polygon points=\"").append(head).append("\" fill=\"#0b4a57\"/>\n");
        return this;
    }

    public byte[] bytes() {
        return (svg + "</svg>\n").getBytes(StandardCharsets.UTF_8);
    }
}
