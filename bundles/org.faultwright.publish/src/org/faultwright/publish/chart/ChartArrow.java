/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.List;

/**
 * The way from a result to the step that it leads to.
 *
 * @param from      the key of the box that it begins at
 * @param cell      the index of the result there
 * @param to        the key of the box that it ends at
 * @param otherwise whether it is the way that is taken once a bounded repetition is used up
 * @param points    its corners: the first on the lower edge of the one box, the last on the upper edge of the other
 */
public record ChartArrow(String from, int cell, String to, boolean otherwise, List<Point> points) {
    /** A corner. */
    public record Point(int x, int y) {
        Point moved(int right, int down) {
            return new Point(x + right, y + down);
        }
    }

    ChartArrow moved(int right, int down) {
        return new ChartArrow(from, cell, to, otherwise, points.stream().map(point -> point.moved(right, down)).toList());
    }
}
