/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.faultwright.language.beginning.Tables;
import org.faultwright.workbench.look.AccessibleName;

/** Answers in rows; there is always an empty one at the end, and one that was emptied does not count. */
final class AnswerRows {
    /**
     * @param width   in characters; the widest take what is left
     * @param choices what can be chosen; empty where words are typed
     */
    record Column(String heading, String hint, int width, List<String> choices) {
        static Column words(String heading, String hint, int width) {
            return new Column(heading, hint, width, List.of());
        }
    }

    /** One row; the same as long as it is there, whatever is typed into it. */
    static final class Row {
        private final List<Control> cells = new ArrayList<>();
        private Button remove;

        String cell(int column) {
            return cells.get(column) instanceof Text text ? text.getText().strip() : ((Combo) cells.get(column)).getText();
        }

        /** Chooses in a cell in the writer's place. */
        void choose(int column, String choice) {
            if (cells.get(column) instanceof Combo combo && combo.indexOf(choice) >= 0) {
                combo.select(combo.indexOf(choice));
            }
        }

        private boolean isEmpty() {
            return cells.stream().allMatch(cell -> !(cell instanceof Text text) || text.getText().isBlank());
        }
    }

    private static final int WIDE = 16;

    private final List<Row> rows = new ArrayList<>();
    private final List<Column> columns;
    private final Composite grid;
    private final String each;
    private final Runnable changed;
    private final Runnable grown;
    private boolean filling;

    /** @param each what a row is called, for who cannot see it @param grown after a row has come or gone */
    AnswerRows(Composite parent, String each, List<Column> columns, Runnable changed, Runnable grown) {
        this.columns = columns;
        this.each = each;
        this.changed = changed;
        this.grown = grown;
        grid = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().numColumns(columns.size() + 1).spacing(4, 4).applyTo(grid);
        GridDataFactory.fillDefaults().span(2, 1).grab(true, false).applyTo(grid);
        columns.forEach(column -> new Label(grid, SWT.NONE).setText(column.heading()));
        new Label(grid, SWT.NONE);
        add();
    }

    /** Those with a word in them. */
    List<Row> filled() {
        return rows.stream().filter(row -> !row.isEmpty()).toList();
    }

    /** What is wrong with the first cell of a column that is no time; absent where each is one or empty. */
    Optional<String> notMinutes(int column) {
        return filled().stream().map(row -> row.cell(column)).filter(cell -> !cell.isEmpty() && Tables.minutes(cell).isEmpty()).findFirst()
                .map(cell -> "\"" + cell + "\" is no time; write minutes, such as 2 or 30 s, or nothing.");
    }

    /** Puts rows behind those that are there. */
    void append(List<List<String>> more) {
        filling = true;
        try {
            for (List<String> cells : more) {
                Row row = rows.get(rows.size() - 1);
                for (int i = 0; i < cells.size(); i++) {
                    if (row.cells.get(i) instanceof Text text) {
                        text.setText(cells.get(i));
                    } else if (row.cells.get(i) instanceof Combo combo && combo.indexOf(cells.get(i)) >= 0) {
                        combo.select(combo.indexOf(cells.get(i)));
                    }
                }
                add();
            }
        } finally {
            filling = false;
        }
        grown.run();
        changed.run();
    }

    void setFocus() {
        rows.get(0).cells.get(0).setFocus();
    }

    private void add() {
        Row row = new Row();
        rows.add(row);
        for (Column column : columns) {
            Control cell = column.choices().isEmpty() ? typed(column, row) : chosen(column);
            AccessibleName.as(cell, () -> each + " " + (rows.indexOf(row) + 1) + ", " + column.heading());
            row.cells.add(cell);
        }
        row.remove = new Button(grid, SWT.PUSH | SWT.FLAT);
        row.remove.setText("\u2715");
        row.remove.setToolTipText("Take this row out");
        row.remove.addListener(SWT.Selection, event -> remove(row));
        AccessibleName.as(row.remove, () -> "Take " + each + " " + (rows.indexOf(row) + 1) + " out");
        grid.setTabList(rows.stream().flatMap(one -> one.cells.stream()).toArray(Control[]::new));
        ends();
    }

    private Text typed(Column column, Row row) {
        Text text = new Text(grid, SWT.BORDER);
        text.setMessage(rows.size() == 1 ? column.hint() : "");
        text.addListener(SWT.Modify, event -> typed(row));
        text.addListener(SWT.FocusOut, event -> text.getDisplay().asyncExec(() -> toBeginning(text)));
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).grab(column.width() >= WIDE, false)
                .hint((int) (column.width() * CharacterWidth.width(text)), SWT.DEFAULT).applyTo(text);
        return text;
    }

    /** Words that are longer than their cell are read from their beginning; where one is still typing nothing moves. */
    private static void toBeginning(Text text) {
        if (!text.isDisposed() && text.getDisplay().getFocusControl() != null && !text.isFocusControl()) {
            text.setSelection(0);
        }
    }

    private Combo chosen(Column column) {
        Combo combo = new Combo(grid, SWT.READ_ONLY);
        combo.setItems(column.choices().toArray(String[]::new));
        combo.select(0);
        combo.addListener(SWT.Selection, event -> changed.run());
        GridDataFactory.fillDefaults().align(SWT.FILL, SWT.CENTER).applyTo(combo);
        return combo;
    }

    private void typed(Row row) {
        if (filling) {
            return;
        }
        if (row == rows.get(rows.size() - 1) && !row.isEmpty()) {
            add();
            grown.run();
        }
        changed.run();
    }

    private void remove(Row row) {
        if (rows.size() > 1 && row != rows.get(rows.size() - 1)) {
            rows.remove(row);
            row.cells.forEach(Control::dispose);
            row.remove.dispose();
            ends();
            rows.get(0).cells.get(0).setFocus();
            grown.run();
            changed.run();
        }
    }

    /** The empty one at the end cannot be taken out. */
    private void ends() {
        rows.forEach(row -> row.remove.setVisible(row != rows.get(rows.size() - 1)));
    }

    /** The words in a cell, parted by commas. */
    static List<String> parted(String cell) {
        return Arrays.stream(cell.split("[,;]")).map(String::strip).filter(word -> !word.isEmpty()).toList();
    }
}
