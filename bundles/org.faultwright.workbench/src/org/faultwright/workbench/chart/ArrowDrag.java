/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.chart;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Rectangle;
import org.faultwright.publish.chart.ChartBox;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/**
 * A result that is drawn towards a step with the mouse.
 *
 * @param x     where the mouse is, in pixels of the canvas
 * @param moved whether it has gone far enough to be no click
 */
record ArrowDrag(ChartBox from, int cell, int beginX, int beginY, int x, int y, boolean moved) {
    /** In pixels; a hand that clicks is not quite still. */
    private static final int STILL_A_CLICK = 6;

    static ArrowDrag begin(ChartBox from, int cell, int x, int y) {
        return new ArrowDrag(from, cell, x, y, x, y, false);
    }

    ArrowDrag to(int newX, int newY) {
        return new ArrowDrag(from, cell, beginX, beginY, newX, newY, moved || Math.abs(newX - beginX) + Math.abs(newY - beginY) > STILL_A_CLICK);
    }

    /** The same after the chart has been scrolled under the mouse: the result that it began at has gone along. */
    ArrowDrag scrolled(int right, int down) {
        return new ArrowDrag(from, cell, beginX + right, beginY + down, x, y, moved);
    }

    /** @param over where the step under the mouse is drawn; null over none */
    void paint(GC gc, Rectangle over) {
        gc.setForeground(Palette.now().of(Use.QUANTITY));
        gc.setLineWidth(3);
        if (over != null) {
            gc.setLineStyle(SWT.LINE_DASH);
            gc.drawRoundRectangle(over.x - 5, over.y - 5, over.width + 10, over.height + 10, 8, 8);
        }
        gc.setLineStyle(SWT.LINE_SOLID);
        gc.drawLine(beginX, beginY, x, y);
        gc.setBackground(Palette.now().of(Use.QUANTITY));
        gc.fillOval(x - 5, y - 5, 10, 10);
        gc.setLineWidth(1);
    }
}
