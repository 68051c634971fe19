/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.Comparator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Control;
import org.faultwright.analysis.table.FaultSheet.State;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/** Draws cells: what is written upright, what follows slanted, a question mark where anything may show, a bar and a cross where something is against it. */
final class GridPainter {
    private static final int ROOM = 7;
    private static final int BAR = 4;
    private static final int MEASURED = 4;
    private static final String ELLIPSIS = "\u2026";

    private final Font plain;
    private final Font slanted;
    private final Font bold;

    GridPainter(Control control) {
        plain = control.getFont();
        FontData data = plain.getFontData()[0];
        slanted = new Font(control.getDisplay(), new FontData(data.getName(), data.getHeight(), SWT.ITALIC));
        bold = new Font(control.getDisplay(), new FontData(data.getName(), data.getHeight(), SWT.BOLD));
    }

    void dispose() {
        slanted.dispose();
        bold.dispose();
    }

    /** How wide a column would like to be: its longest words decide, by their letters first, as there may be thousands. */
    int width(GC gc, ShownSheet sheet, SheetColumn column) {
        gc.setFont(plain);
        return Math.max(headWidth(gc, sheet, column), sheet.rows().stream().map(row -> sheet.sign(row, column) + sheet.text(row, column)).distinct()
                .sorted(Comparator.comparingInt(String::length).reversed()).limit(MEASURED).mapToInt(words -> extent(gc, words)).max().orElse(0));
    }

    private int extent(GC gc, String words) {
        gc.setFont(plain);
        return gc.textExtent(words).x + 2 * ROOM + BAR;
    }

    private int headWidth(GC gc, ShownSheet sheet, SheetColumn column) {
        gc.setFont(bold);
        return gc.textExtent(sheet.head(column)).x + 2 * ROOM + BAR;
    }

    void head(GC gc, ShownSheet sheet, SheetColumn column, Rectangle at, boolean isIn) {
        Palette palette = Palette.now();
        gc.setBackground(palette.of(isIn ? Use.STEP_IN_HAND : Use.WINDOW));
        gc.fillRectangle(at);
        boolean idle = sheet.step(column).filter(step -> sheet.of().isLaidOut() && !step.asked()).isPresent();
        gc.setForeground(palette.of(idle ? Use.COMMENT : Use.HEADING));
        gc.setFont(idle ? slanted : bold);
        words(gc, sheet.head(column), at);
        lines(gc, at);
    }

    void cell(GC gc, ShownSheet sheet, SheetRow row, SheetColumn column, Rectangle at, boolean isIn) {
        Palette palette = Palette.now();
        boolean head = !(row instanceof SheetRow.OfFault) || column instanceof SheetColumn.Words;
        State state = sheet.state(row, column);
        gc.setBackground(palette.of(isIn ? Use.STEP_IN_HAND : head ? Use.WINDOW : state == State.OPEN ? Use.CODE_GROUND : Use.PAPER));
        gc.fillRectangle(at);
        boolean beside = state == State.NORMAL || column instanceof SheetColumn.Time || !(row instanceof SheetRow.OfFault);
        gc.setFont(state == State.NORMAL || column instanceof SheetColumn.Time ? slanted : plain);
        gc.setForeground(palette.of(state == State.OPEN ? Use.QUANTITY : beside ? Use.BESIDE : column instanceof SheetColumn.Cases ? Use.QUANTITY : Use.NAME));
        words(gc, sheet.sign(row, column) + sheet.text(row, column), at);
        boolean grave = sheet.isGrave(row, column);
        if (grave || sheet.isMixedUp(row, column)) {
            gc.setBackground(palette.of(grave ? Use.ERROR : Use.WARNING));
            gc.fillRectangle(at.x, at.y, BAR, at.height - 1);
        }
        lines(gc, at);
    }

    private static void lines(GC gc, Rectangle at) {
        gc.setForeground(Palette.now().of(Use.DESK));
        gc.drawLine(at.x, at.y + at.height - 1, at.x + at.width - 1, at.y + at.height - 1);
        gc.drawLine(at.x + at.width - 1, at.y, at.x + at.width - 1, at.y + at.height - 1);
    }

    void cursor(GC gc, Rectangle at, boolean focused) {
        gc.setForeground(Palette.now().of(focused ? Use.QUANTITY : Use.HEADING));
        gc.setLineWidth(focused ? 2 : 1);
        gc.drawRectangle(at.x + 1, at.y + 1, at.width - 3, at.height - 3);
        gc.setLineWidth(1);
    }

    private static void words(GC gc, String words, Rectangle at) {
        int room = at.width - 2 * ROOM;
        String fitted = words;
        if (gc.textExtent(words).x > room) {
            int low = 0;
            int high = words.length();
            while (low < high) {
                int middle = (low + high + 1) / 2;
                if (gc.textExtent(words.substring(0, middle) + ELLIPSIS).x <= room) {
                    low = middle;
                } else {
                    high = middle - 1;
                }
            }
            fitted = words.substring(0, low) + ELLIPSIS;
        }
        gc.drawText(fitted, at.x + ROOM, at.y + (at.height - 1 - gc.getFontMetrics().getHeight()) / 2, SWT.DRAW_TRANSPARENT);
    }
}
