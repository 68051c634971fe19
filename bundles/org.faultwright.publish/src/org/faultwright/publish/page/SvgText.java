/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

import java.nio.charset.StandardCharsets;
import java.util.List;

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

    /** @param round the radius of its corners @param style presentation attributes, ours */
    public SvgText box(int x, int y, int width, int height, int round, String style) {
        svg.append("<rect x=\"").append(x).append("\" y=\"").append(y).append("\" width=\"").append(width)
                .append("\" height=\"").append(height).append("\" rx=\"").append(round).append("\" ").append(style).append("/>\n");
        return this;
    }

    /** @param style presentation attributes, ours */
    public SvgText line(int fromX, int fromY, int toX, int toY, String style) {
        svg.append("<line x1=\"").append(fromX).append("\" y1=\"").append(fromY).append("\" x2=\"").append(toX).append("\" y2=\"").append(toY)
                .append("\" ").append(style).append("/>\n");
        return this;
    }

    /** A line over corners with a head that points down at its end. @param corners x and y of each @param dashed told apart by its line */
    public SvgText arrow(List<int[]> corners, boolean dashed) {
        int[] tip = corners.get(corners.size() - 1);
        svg.append("<path d=\"");
        for (int i = 0; i < corners.size(); i++) {
            boolean last = i == corners.size() - 1;
            svg.append(i == 0 ? "M" : " L").append(corners.get(i)[0]).append(' ').append(corners.get(i)[1] - (last ? 6 : 0));
        }
        svg.append("\" fill=\"none\" stroke=\"#0b4a57\" stroke-width=\"1.4\" stroke-linejoin=\"round\"")
                .append(dashed ? " stroke-dasharray=\"5 3\"" : "").append("/>\n");
        svg.append("<polygon points=\"").append(tip[0]).append(',').append(tip[1]).append(' ').append(tip[0] - 4).append(',').append(tip[1] - 7)
                .append(' ').append(tip[0] + 4).append(',').append(tip[1] - 7).append("\" fill=\"#0b4a57\"/>\n");
        return this;
    }

    public byte[] bytes() {
        return (svg + "</svg>\n").getBytes(StandardCharsets.UTF_8);
    }
}
