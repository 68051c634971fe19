/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Path;
import java.util.List;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.beginning.TableKind;

/** A table that was dropped onto the window: a procedure is begun with it. */
public final class DroppedTable {
    private DroppedTable() {
    }

    /** Asks what the table is of, and begins a procedure with it. */
    public static void begin(Path table, Shell shell) {
        List<TableKind> kinds = List.of(TableKind.FAULTS, TableKind.CODES, TableKind.STEPS, TableKind.RANGES);
        int kind = MessageDialog.open(MessageDialog.QUESTION, shell, NewProcedureDialog.TITLE, "A new procedure begins with \"" + table.getFileName()
                + "\". What is in it?", SWT.NONE, "Faults", "Codes", "Steps", "An instrument's ranges", "Cancel");
        if (kind >= 0 && kind < kinds.size()) {
            new NewProcedureDialog(shell, PlacePage.atHand()).open(table, kinds.get(kind));
        }
    }
}
