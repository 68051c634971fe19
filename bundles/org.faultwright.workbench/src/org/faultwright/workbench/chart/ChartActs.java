/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import org.faultwright.publish.chart.ChartBox;

/** What somebody asks of the steps on the canvas, by the mouse or by a key. */
interface ChartActs {
    /** A step is in hand now. */
    void take(ChartBox box);

    /** To go to the step in the text. */
    void goTo(ChartBox box);

    /** To open or fold the routine that the step performs. */
    void openOrFold(ChartBox box);

    /** To let a result lead to another step. */
    void turn(ChartBox from, int cell, ChartBox to);

    /** To ask where a result is to lead. */
    void lead(ChartBox from, int cell);

    /** To put a step on the arrow of a result. */
    void insert(ChartBox from, int cell);

    /** To write a step behind another one. */
    void add(ChartBox behind);

    void takeOut(ChartBox box);
}
