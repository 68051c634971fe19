/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.faultwright.workbench.look.AccessibleName;

/** A line to type in, over the cell that is changed. Enter and Tab write it and go on, Escape leaves the cell as it was, the arrows offer what the step can show. */
final class CellInput {
    private static final int LEAST = 170;

    private final GridCanvas grid;
    private Text line;
    private Consumer<String> writes;
    private List<String> choices = List.of();

    CellInput(GridCanvas grid) {
        this.grid = grid;
    }

    /** The line while a cell is open. */
    Optional<Text> line() {
        return line == null || line.isDisposed() ? Optional.empty() : Optional.of(line);
    }

    /** @param typed whether the value is the first sign of something new, which goes on behind it */
    void open(String value, boolean typed, List<String> offered, String name, Consumer<String> writing) {
        close();
        choices = offered;
        writes = writing;
        line = new Text(grid, SWT.SINGLE | SWT.BORDER);
        line.setText(value);
        AccessibleName.as(line, () -> name + (choices.isEmpty() ? "" : "; the arrows offer " + String.join(", ", choices)));
        line.addListener(SWT.Traverse, this::traverse);
        line.addListener(SWT.KeyDown, this::key);
        line.addListener(SWT.FocusOut, event -> write());
        moved();
        line.setFocus();
        if (typed) {
            line.setSelection(value.length());
        } else {
            line.selectAll();
        }
    }

    /** Puts the line over its cell again. */
    void moved() {
        line().ifPresent(open -> {
            Rectangle cell = grid.area(grid.row(), grid.column());
            Point wanted = open.computeSize(SWT.DEFAULT, SWT.DEFAULT);
            int width = Math.max(cell.width, LEAST);
            Rectangle room = grid.getClientArea();
            int height = Math.max(cell.height, wanted.y);
            open.setBounds(Math.max(0, Math.min(cell.x, room.width - width)), Math.max(0, Math.min(cell.y - (height - cell.height) / 2, room.height - height)), width, height);
        });
    }

    private void traverse(Event event) {
        if (event.detail == SWT.TRAVERSE_ESCAPE) {
            event.doit = false;
            close();
            grid.setFocus();
        } else if (event.detail == SWT.TRAVERSE_RETURN || event.detail == SWT.TRAVERSE_TAB_NEXT || event.detail == SWT.TRAVERSE_TAB_PREVIOUS) {
            event.doit = false;
            int down = event.detail == SWT.TRAVERSE_RETURN ? 1 : 0;
            int right = event.detail == SWT.TRAVERSE_TAB_NEXT ? 1 : event.detail == SWT.TRAVERSE_TAB_PREVIOUS ? -1 : 0;
            write();
            grid.setFocus();
            grid.take(grid.row() + down, grid.column() + right, false);
        }
    }

    private void key(Event event) {
        if (choices.isEmpty() || event.keyCode != SWT.ARROW_DOWN && event.keyCode != SWT.ARROW_UP) {
            return;
        }
        event.doit = false;
        int at = choices.indexOf(line.getText());
        int next = event.keyCode == SWT.ARROW_DOWN ? at + 1 : (at < 0 ? choices.size() : at) - 1;
        line.setText(choices.get(Math.floorMod(next, choices.size())));
        line.selectAll();
    }

    /** Writes what is typed, and closes the line. */
    void write() {
        line().ifPresent(open -> {
            String value = open.getText();
            Consumer<String> writing = writes;
            close();
            writing.accept(value);
        });
    }

    /** Leaves the cell as it was. */
    void close() {
        line().ifPresent(open -> {
            line = null;
            open.dispose();
        });
    }
}
