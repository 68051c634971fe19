/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.ScrollBar;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.workbench.look.Palette;
import org.faultwright.workbench.look.Palette.Use;

/**
 * The table drawn and worked by keys and mouse: a cell is in hand, others may be chosen with it, and what is typed goes into it. The words of the faults
 * and the first rows stay in sight.
 */
final class GridCanvas extends Canvas {
    /** What somebody does to the table. */
    interface Presses {
        void write(SheetRow row, SheetColumn column, String typed);

        /** Takes out what is written in the chosen cells. */
        void clear();

        void inHand(SheetRow row, SheetColumn column);

        void goToText();

        void sort(ShownSheet.Sorting by);

        /** Back from a few faults to all of them. */
        void allFaults();
    }

    private static final int LEAST_LETTERS = 6;
    private static final int MOST_LETTERS = 24;
    private static final int MOST_LETTERS_OF_A_FAULT = 44;

    private final GridPainter painter;
    private final Presses presses;
    private final CellInput inPlace;
    private ShownSheet sheet;
    private String words = "";
    private boolean readOnly;
    private int[] widths = {};
    private int rowHeight = 1;
    /** The cell in hand, and where choosing began. */
    private int row;
    private int column;
    private int fromRow;
    private int fromColumn;
    private int left;
    private int top;

    GridCanvas(Composite parent, Presses presses) {
        super(parent, SWT.V_SCROLL | SWT.H_SCROLL | SWT.DOUBLE_BUFFERED | SWT.NO_BACKGROUND);
        this.presses = presses;
        painter = new GridPainter(this);
        inPlace = new CellInput(this);
        addPaintListener(event -> paint(event.gc));
        addListener(SWT.Resize, event -> fitBars());
        addListener(SWT.MouseDown, this::press);
        addListener(SWT.MouseDoubleClick, event -> cellAt(event.x, event.y).ifPresent(cell -> edit(Optional.empty())));
        addListener(SWT.MouseMove, this::move);
        addListener(SWT.KeyDown, this::key);
        addListener(SWT.Traverse, event -> event.doit = event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS);
        addListener(SWT.FocusIn, event -> focused());
        addListener(SWT.FocusOut, event -> redraw());
        addListener(SWT.Dispose, event -> painter.dispose());
        getVerticalBar().addListener(SWT.Selection, event -> scrolled());
        getHorizontalBar().addListener(SWT.Selection, event -> scrolled());
        SpokenCells.of(this);
    }

    // ---- what is shown

    Optional<ShownSheet> sheet() {
        return Optional.ofNullable(sheet);
    }

    String said() {
        return words;
    }

    /** Shows words instead of a table. */
    void say(String instead) {
        inPlace.close();
        sheet = null;
        words = instead;
        fitBars();
        redraw();
    }

    /** Keeps the last table, if there is one, and says why it cannot be changed. */
    void waits(String why) {
        words = why;
        readOnly = true;
        redraw();
    }

    /** The cell in hand stays the same one, as long as it is there. */
    void show(ShownSheet made) {
        Optional<SheetRow> keptRow = inHandRow();
        Optional<SheetColumn> keptColumn = inHandColumn();
        boolean first = sheet == null;
        sheet = made;
        words = "";
        readOnly = false;
        measure();
        int newRow = keptRow.map(made.rows()::indexOf).filter(place -> place >= 0).orElse(Math.min(Math.max(row, ShownSheet.HEAD_ROWS), made.rows().size() - 1));
        int newColumn = keptColumn.map(made.columns()::indexOf).filter(place -> place >= 0).orElse(Math.min(column, made.columns().size() - 1));
        boolean moved = newRow != row || newColumn != column;
        row = newRow;
        column = newColumn;
        if (moved || fromRow >= made.rows().size() || fromColumn >= made.columns().size()) {
            fromRow = row;
            fromColumn = column;
        }
        fitBars();
        if (first || moved) {
            reveal();
        }
        inPlace.moved();
        redraw();
        toldReaders();
    }

    private void measure() {
        GC gc = new GC(this);
        try {
            gc.setFont(getFont());
            rowHeight = gc.getFontMetrics().getHeight() + 9;
            int letter = (int) Math.ceil(gc.getFontMetrics().getAverageCharacterWidth());
            widths = new int[sheet.columns().size()];
            for (int i = 0; i < widths.length; i++) {
                SheetColumn one = sheet.columns().get(i);
                widths[i] = Math.max(LEAST_LETTERS * letter, Math.min(painter.width(gc, sheet, one), (i == 0 ? MOST_LETTERS_OF_A_FAULT : MOST_LETTERS) * letter));
            }
        } finally {
            gc.dispose();
        }
    }

    // ---- where things are

    /** The words of the faults take no more than two fifths of the room. */
    private int frozenWidth() {
        return sheet == null ? 0 : Math.min(widths[0], Math.max(60, getClientArea().width * 2 / 5));
    }

    private int frozenHeight() {
        return (1 + ShownSheet.HEAD_ROWS) * rowHeight;
    }

    private int x(int at) {
        if (at == 0) {
            return 0;
        }
        int x = frozenWidth() - left;
        for (int i = 1; i < at; i++) {
            x += widths[i];
        }
        return x;
    }

    private int y(int at) {
        return (at + 1) * rowHeight - (at < ShownSheet.HEAD_ROWS ? 0 : top);
    }

    /** Where a cell is drawn, in pixels of the canvas. */
    Rectangle area(int atRow, int atColumn) {
        return new Rectangle(x(atColumn), y(atRow), atColumn == 0 ? frozenWidth() : widths[atColumn], rowHeight);
    }

    private int columnAt(int x) {
        if (sheet == null || x < 0) {
            return -1;
        }
        if (x < frozenWidth()) {
            return 0;
        }
        int end = frozenWidth() - left;
        for (int i = 1; i < widths.length; i++) {
            end += widths[i];
            if (x < end) {
                return i;
            }
        }
        return -1;
    }

    private int rowAt(int y) {
        if (sheet == null || y < rowHeight) {
            return -1;
        }
        int at = y < frozenHeight() ? y / rowHeight - 1 : (y + top) / rowHeight - 1;
        return at < sheet.rows().size() ? at : -1;
    }

    private Optional<Point> cellAt(int x, int y) {
        int atRow = rowAt(y);
        int atColumn = columnAt(x);
        return atRow < 0 || atColumn < 0 ? Optional.empty() : Optional.of(new Point(atColumn, atRow));
    }

    // ---- what is chosen

    int row() {
        return row;
    }

    int column() {
        return column;
    }

    Optional<SheetRow> inHandRow() {
        return sheet == null || row >= sheet.rows().size() ? Optional.empty() : Optional.of(sheet.rows().get(row));
    }

    Optional<SheetColumn> inHandColumn() {
        return sheet == null || column >= sheet.columns().size() ? Optional.empty() : Optional.of(sheet.columns().get(column));
    }

    List<SheetRow> chosenRows() {
        return sheet == null ? List.of() : sheet.rows().subList(Math.min(row, fromRow), Math.max(row, fromRow) + 1);
    }

    List<SheetColumn> chosenColumns() {
        return sheet == null ? List.of() : sheet.columns().subList(Math.min(column, fromColumn), Math.max(column, fromColumn) + 1);
    }

    void chooseAll() {
        if (sheet != null) {
            fromRow = Math.min(ShownSheet.HEAD_ROWS, sheet.rows().size() - 1);
            fromColumn = 0;
            row = sheet.rows().size() - 1;
            column = sheet.columns().size() - 1;
            redraw();
        }
    }

    /** Whether every fault and every column is chosen. */
    boolean isAllChosen() {
        return sheet != null && chosenRows().size() >= sheet.rows().size() - ShownSheet.HEAD_ROWS && chosenColumns().size() == sheet.columns().size();
    }

    private boolean isChosen(int atRow, int atColumn) {
        boolean several = row != fromRow || column != fromColumn;
        return several && atRow >= Math.min(row, fromRow) && atRow <= Math.max(row, fromRow) && atColumn >= Math.min(column, fromColumn)
                && atColumn <= Math.max(column, fromColumn);
    }

    /** Takes a cell in hand. @param extend whether those between it and where choosing began are chosen with it */
    void take(int toRow, int toColumn, boolean extend) {
        if (sheet == null) {
            return;
        }
        row = Math.max(0, Math.min(toRow, sheet.rows().size() - 1));
        column = Math.max(0, Math.min(toColumn, sheet.columns().size() - 1));
        if (!extend) {
            fromRow = row;
            fromColumn = column;
        }
        reveal();
        redraw();
        toldReaders();
        presses.inHand(sheet.rows().get(row), sheet.columns().get(column));
    }

    void take(SheetRow toRow, SheetColumn toColumn) {
        if (sheet != null && sheet.rows().contains(toRow) && sheet.columns().contains(toColumn)) {
            take(sheet.rows().indexOf(toRow), sheet.columns().indexOf(toColumn), false);
        }
    }

    /** All there is to say of the cell in hand; empty where there is none. */
    String told() {
        return sheet == null ? words : sheet.told(sheet.rows().get(row), sheet.columns().get(column));
    }

    private void toldReaders() {
        SpokenCells.moved(this);
    }

    private void focused() {
        redraw();
        toldReaders();
    }

    // ---- changing a cell

    /** Opens the cell in hand. @param typed what it begins with; what the text says where nothing is typed yet */
    void edit(Optional<String> typed) {
        if (sheet != null && !readOnly && sheet.canChange(sheet.rows().get(row), sheet.columns().get(column))) {
            SheetRow ofRow = sheet.rows().get(row);
            SheetColumn ofColumn = sheet.columns().get(column);
            inPlace.open(typed.orElseGet(() -> sheet.typed(ofRow, ofColumn)), typed.isPresent(), sheet.choices(ofRow, ofColumn),
                    sheet.head(ofColumn) + ", " + sheet.text(ofRow, sheet.columns().get(0)), value -> presses.write(ofRow, ofColumn, value));
        }
    }

    /** As if it had been typed into the cell. */
    void write(SheetRow toRow, SheetColumn toColumn, String typed) {
        if (!readOnly) {
            presses.write(toRow, toColumn, typed);
        }
    }

    CellInput inPlace() {
        return inPlace;
    }

    // ---- keys and mouse

    private void key(Event event) {
        if (sheet == null || (event.stateMask & SWT.MOD3) != 0) {
            return;
        }
        boolean extend = (event.stateMask & SWT.MOD2) != 0;
        boolean far = (event.stateMask & SWT.MOD1) != 0;
        int page = Math.max(1, (getClientArea().height - frozenHeight()) / rowHeight - 1);
        switch (event.keyCode) {
            case SWT.ARROW_RIGHT -> take(row, far ? widths.length : column + 1, extend);
            case SWT.ARROW_LEFT -> take(row, far ? 0 : column - 1, extend);
            case SWT.ARROW_DOWN -> take(far ? sheet.rows().size() : row + 1, column, extend);
            case SWT.ARROW_UP -> take(far ? 0 : row - 1, column, extend);
            case SWT.HOME -> take(far ? 0 : row, 0, extend);
            case SWT.END -> take(far ? sheet.rows().size() : row, widths.length, extend);
            case SWT.PAGE_DOWN -> take(row + page, column, extend);
            case SWT.PAGE_UP -> take(row - page, column, extend);
            case SWT.CR, SWT.KEYPAD_CR -> {
                if (far) {
                    presses.goToText();
                } else {
                    edit(Optional.empty());
                }
            }
            case SWT.F2 -> edit(Optional.empty());
            case SWT.ESC -> presses.allFaults();
            case SWT.DEL, SWT.BS -> presses.clear();
            default -> {
                if (!far && event.character >= ' ' && event.character != SWT.DEL) {
                    edit(Optional.of(String.valueOf(event.character)));
                }
            }
        }
    }

    private void press(Event event) {
        setFocus();
        if (sheet != null && event.y < rowHeight && event.button == 1) {
            sortBy(columnAt(event.x));
            return;
        }
        Optional<Point> cell = cellAt(event.x, event.y);
        boolean within = cell.filter(at -> isChosen(at.y, at.x)).isPresent();
        if (event.button == 1 || !within) {
            cell.ifPresent(at -> take(at.y, at.x, (event.stateMask & SWT.MOD2) != 0));
        }
    }

    private void sortBy(int at) {
        if (at >= 0) {
            SheetColumn clicked = sheet.columns().get(at);
            if (clicked instanceof SheetColumn.Words) {
                presses.sort(ShownSheet.Sorting.WORDS);
            } else if (clicked instanceof SheetColumn.Cases) {
                presses.sort(ShownSheet.Sorting.CASES);
            } else if (clicked instanceof SheetColumn.Time) {
                presses.sort(ShownSheet.Sorting.TIME);
            } else {
                take(0, at, false);
            }
        }
    }

    /** Choosing with the button down; else a hint on what is under the mouse. In a hint an ampersand would mark the next letter. */
    private void move(Event event) {
        if ((event.stateMask & SWT.BUTTON1) != 0) {
            cellAt(event.x, event.y).filter(at -> at.y != row || at.x != column).ifPresent(at -> take(at.y, at.x, true));
            return;
        }
        String hint = sheet == null ? null : event.y < rowHeight && columnAt(event.x) > 0 ? sheet.told(new SheetRow.Takes(), sheet.columns().get(columnAt(event.x)))
                : cellAt(event.x, event.y).map(at -> sheet.told(sheet.rows().get(at.y), sheet.columns().get(at.x))).orElse(null);
        String plain = hint == null ? null : hint.replace("&", "&&");
        if (!Objects.equals(plain, getToolTipText())) {
            setToolTipText(plain);
        }
    }

    // ---- drawing and scrolling

    private void scrolled() {
        left = getHorizontalBar().getSelection();
        top = getVerticalBar().getSelection();
        inPlace.moved();
        redraw();
    }

    private void fitBars() {
        Rectangle room = getClientArea();
        int wide = 0;
        for (int i = 1; sheet != null && i < widths.length; i++) {
            wide += widths[i];
        }
        left = bar(getHorizontalBar(), left, wide, room.width - frozenWidth());
        top = bar(getVerticalBar(), top, sheet == null ? 0 : (sheet.rows().size() - ShownSheet.HEAD_ROWS) * rowHeight, room.height - frozenHeight());
        inPlace.moved();
    }

    private int bar(ScrollBar bar, int place, int all, int seen) {
        int kept = Math.max(0, Math.min(place, all - seen));
        bar.setValues(kept, 0, Math.max(1, Math.max(all, seen)), Math.max(1, seen), rowHeight, Math.max(1, seen));
        bar.setVisible(all > seen);
        return kept;
    }

    private void reveal() {
        Rectangle room = getClientArea();
        Rectangle cell = area(row, column);
        if (column > 0) {
            left += cell.x < frozenWidth() || cell.width > room.width - frozenWidth() ? cell.x - frozenWidth() : Math.max(0, cell.x + cell.width - room.width);
        }
        if (row >= ShownSheet.HEAD_ROWS) {
            top += cell.y < frozenHeight() ? cell.y - frozenHeight() : Math.max(0, cell.y + cell.height - room.height);
        }
        fitBars();
    }

    private void paint(GC gc) {
        Rectangle room = getClientArea();
        gc.setBackground(Palette.now().of(sheet == null ? Use.DESK : Use.WINDOW));
        gc.fillRectangle(room);
        gc.setTextAntialias(SWT.ON);
        if (sheet != null) {
            List<Integer> seen = new ArrayList<>();
            for (int i = 1; i < widths.length; i++) {
                if (x(i) < room.width && x(i) + widths[i] > frozenWidth()) {
                    seen.add(i);
                }
            }
            int fixed = frozenWidth();
            gc.setClipping(fixed, frozenHeight(), Math.max(0, room.width - fixed), Math.max(0, room.height - frozenHeight()));
            cells(gc, ShownSheet.HEAD_ROWS, sheet.rows().size(), seen, room.height);
            gc.setClipping(fixed, 0, Math.max(0, room.width - fixed), frozenHeight());
            seen.forEach(at -> painter.head(gc, sheet, sheet.columns().get(at), new Rectangle(x(at), 0, widths[at], rowHeight), isColumnIn(at)));
            cells(gc, 0, Math.min(ShownSheet.HEAD_ROWS, sheet.rows().size()), seen, room.height);
            gc.setClipping(0, frozenHeight(), fixed, Math.max(0, room.height - frozenHeight()));
            cells(gc, ShownSheet.HEAD_ROWS, sheet.rows().size(), List.of(0), room.height);
            gc.setClipping(0, 0, fixed, frozenHeight());
            painter.head(gc, sheet, sheet.columns().get(0), new Rectangle(0, 0, fixed, rowHeight), false);
            cells(gc, 0, Math.min(ShownSheet.HEAD_ROWS, sheet.rows().size()), List.of(0), room.height);
            gc.setClipping(column == 0 ? 0 : fixed, row < ShownSheet.HEAD_ROWS ? 0 : frozenHeight(), room.width, room.height);
            painter.cursor(gc, area(row, column), isFocusControl());
            gc.setClipping((Rectangle) null);
            gc.setForeground(Palette.now().of(Use.PAGE_EDGE));
            gc.drawLine(fixed - 1, 0, fixed - 1, room.height);
            gc.drawLine(0, frozenHeight() - 1, room.width, frozenHeight() - 1);
        }
        if (!words.isEmpty()) {
            say(gc, room);
        }
    }

    private boolean isColumnIn(int at) {
        return isFocusControl() && at == column;
    }

    private void cells(GC gc, int first, int end, List<Integer> columns, int height) {
        for (int i = first; i < end; i++) {
            int y = y(i);
            if (y + rowHeight > 0 && y < height) {
                for (int at : columns) {
                    painter.cell(gc, sheet, sheet.rows().get(i), sheet.columns().get(at), area(i, at), isChosen(i, at) || at == 0 && i == row && isFocusControl());
                }
            }
        }
    }

    private void say(GC gc, Rectangle room) {
        gc.setFont(getFont());
        Point extent = gc.textExtent(words);
        int y = sheet == null ? room.height / 3 : room.height - extent.y - 10;
        gc.setBackground(Palette.now().of(Use.DESK));
        if (sheet != null) {
            gc.fillRectangle(0, y, room.width, extent.y + 10);
        }
        gc.setForeground(Palette.now().of(Use.DESK_WORDS));
        gc.drawText(words, Math.max(6, (room.width - extent.x) / 2), y + 5, true);
    }
}
