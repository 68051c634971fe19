/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.List;
import java.util.Optional;

/**
 * A tree of steps with a place for each box and each arrow, in units of a letter of {@link TextMetrics#WORDS} points; whoever draws
 * it scales them. The same steps have the same places, whatever draws them.
 *
 * @param boxes a box that holds others before those that it holds
 */
public record Chart(int width, int height, List<Heading> headings, List<ChartBox> boxes, List<ChartArrow> arrows) {
    /** Stands over a part. @param y of the line that the letters stand on */
    public record Heading(String words, int x, int y) {
    }

    /** The box of that key. */
    public Optional<ChartBox> box(String key) {
        return boxes.stream().filter(box -> box.key().equals(key)).findFirst();
    }

    /** The innermost box at a place. */
    public Optional<ChartBox> at(int x, int y) {
        return boxes.stream().filter(box -> box.contains(x, y)).reduce((outer, inner) -> inner);
    }

    /** The arrows that lead away from a box, in the order of its results. */
    public List<ChartArrow> from(String key) {
        return arrows.stream().filter(arrow -> arrow.from().equals(key)).toList();
    }

    /** The arrows that lead to a box. */
    public List<ChartArrow> to(String key) {
        return arrows.stream().filter(arrow -> arrow.to().equals(key)).toList();
    }
}
