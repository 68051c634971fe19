/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;

/**
 * One step in its place.
 *
 * @param key     its name; within an opened routine {@code Perform/Step}
 * @param begins  whether its graph begins here
 * @param routine what it performs, where that is known
 * @param open    whether the steps of its routine stand in the box
 * @param number  its number on the card; empty where there is none
 * @param title   the author's words, broken into lines
 * @param small   lines under them: what a conclusion finds, which routine is folded
 * @param cells   its results in the order of the text, side by side along the lower edge
 * @param body    how much room the steps of an opened routine take between the words and the cells
 */
public record ChartBox(String key, Step step, boolean begins, Optional<Routine> routine, boolean open, String number, List<String> title,
        List<String> small, List<Cell> cells, int x, int y, int width, int height, int body, int cellHeight) {
    /** Of the line that says what kind of step it is. */
    public static final int HEAD = 20;
    /** Of each line of the title. */
    public static final int TITLE_LINE = 15;
    /** Of each smaller line. */
    public static final int SMALL_LINE = 13;
    static final int PADDING = 5;

    /**
     * A result.
     *
     * @param x     of its left side, from the left side of the box
     * @param lines its words, then where it leads if no arrow says so
     */
    public record Cell(Outcome outcome, int x, int width, List<String> lines) {
    }

    /** Whether the procedure ends here. */
    public boolean isConclusion() {
        return step instanceof Step.Conclude;
    }

    /** The upper edge of the cells. */
    public int cellTop() {
        return y + height - cellHeight;
    }

    public boolean contains(int px, int py) {
        return px >= x && px < x + width && py >= y && py < y + height;
    }

    /** The index of the cell at a place in the box. */
    public Optional<Integer> cellAt(int px, int py) {
        for (int i = 0; i < cells.size() && py >= cellTop() && py < y + height; i++) {
            int left = x + cells.get(i).x();
            if (px >= left && px < left + cells.get(i).width()) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    ChartBox at(int left, int top) {
        return new ChartBox(key, step, begins, routine, open, number, title, small, cells, left, top, width, height, body, cellHeight);
    }
}
