/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.Optional;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;

/** What can be done with a cell under the right button, or the key for it: what the step can show, to be chosen, first of all. */
final class CellMenu {
    private final GridCanvas grid;
    private final Menu menu;

    /** What is done with a whole row or column. */
    interface LineActions {
        void rename(SheetRow row);

        void rename(SheetColumn column);

        void takeOut(SheetRow row);

        void takeOut(SheetColumn column);
    }

    CellMenu(GridCanvas grid, Runnable clear, Runnable copy, Runnable paste, Runnable goToText, LineActions whole) {
        this.grid = grid;
        this.menu = new Menu(grid);
        grid.setMenu(menu);
        grid.addListener(SWT.MenuDetect, event -> {
            event.doit = grid.sheet().isPresent();
            if (event.doit && event.detail == SWT.MENU_KEYBOARD) {
                Rectangle cell = grid.area(grid.row(), grid.column());
                Point corner = grid.toDisplay(cell.x, cell.y + cell.height);
                event.x = corner.x;
                event.y = corner.y;
            }
        });
        menu.addListener(SWT.Show, event -> fill(clear, copy, paste, goToText, whole));
    }

    private void fill(Runnable clear, Runnable copy, Runnable paste, Runnable goToText, LineActions whole) {
        for (MenuItem old : menu.getItems()) {
            old.dispose();
        }
        Optional<SheetRow> row = grid.inHandRow();
        Optional<SheetColumn> column = grid.inHandColumn();
        if (grid.sheet().isEmpty() || row.isEmpty() || column.isEmpty()) {
            return;
        }
        ShownSheet sheet = grid.sheet().get();
        String now = sheet.typed(row.get(), column.get());
        for (String choice : sheet.choices(row.get(), column.get())) {
            MenuItem item = item(choice.replace("&", "&&"), SWT.RADIO, () -> grid.write(row.get(), column.get(), choice));
            item.setSelection(choice.equals(now));
        }
        if (menu.getItemCount() > 0) {
            new MenuItem(menu, SWT.SEPARATOR);
        }
        item("Change\tEnter", SWT.PUSH, () -> grid.edit(Optional.empty())).setEnabled(sheet.canChange(row.get(), column.get()));
        item("Take out what is written\tDel", SWT.PUSH, clear);
        item("Copy\tCtrl+C", SWT.PUSH, copy);
        item("Paste\tCtrl+V", SWT.PUSH, paste);
        item("Go to the text\tCtrl+Enter", SWT.PUSH, goToText);
        new MenuItem(menu, SWT.SEPARATOR);
        boolean isFault = sheet.fault(row.get()).isPresent();
        item("Rename the fault\u2026", SWT.PUSH, () -> whole.rename(row.get())).setEnabled(isFault);
        item("Take out the fault\u2026", SWT.PUSH, () -> whole.takeOut(row.get())).setEnabled(isFault);
        boolean isStep = column.get() instanceof SheetColumn.OfStep step && sheet.of().column(step.name()).flatMap(FaultSheet.Column::step).isPresent();
        item("Rename the step\u2026", SWT.PUSH, () -> whole.rename(column.get())).setEnabled(isStep);
        item("Take out the step\u2026", SWT.PUSH, () -> whole.takeOut(column.get())).setEnabled(isStep);
    }

    private MenuItem item(String words, int style, Runnable does) {
        MenuItem item = new MenuItem(menu, style);
        item.setText(words);
        item.addListener(SWT.Selection, event -> {
            if (style != SWT.RADIO || item.getSelection()) {
                does.run();
            }
        });
        return item;
    }
}
