/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.page;

/** The paper a sheet is made for (ISO 216; ANSI/ASME Y14.1 for Letter). Lengths are in millimetres. */
public enum Paper {
    A4(210, 297, 2, 12, 5, 6, 5),
    A5(148, 210, 1, 10, 5, 6, 5),
    /** A4 across, for a stand or a screen that is wider than high. */
    A4_ACROSS(297, 210, 2, 10, 12, 6, 5),
    /** Lower than A4, whose arrangement it has: so it is filled further, to what printers can reach. */
    LETTER(215.9, 279.4, 2, 8, 5, 5, 4.3);

    private final double width;
    private final double height;
    private final int columns;
    private final double margin;
    private final double gap;
    private final double top;
    private final double bottom;

    Paper(double width, double height, int columns, double margin, double gap, double top, double bottom) {
        this.width = width;
        this.height = height;
        this.columns = columns;
        this.margin = margin;
        this.gap = gap;
        this.top = top;
        this.bottom = bottom;
    }

    public double width() {
        return width;
    }

    public double height() {
        return height;
    }

    public int columns() {
        return columns;
    }

    /** Free above the running lines. */
    public double top() {
        return top;
    }

    /** Free below the running lines. */
    public double bottom() {
        return bottom;
    }

    /** Free on the left and on the right. */
    public double margin() {
        return margin;
    }

    /** Between two columns. */
    public double gap() {
        return gap;
    }

    /** The width of the printed part. */
    public double room() {
        return width - 2 * margin;
    }

    public double column() {
        return (room() - gap * (columns - 1)) / columns;
    }
}
