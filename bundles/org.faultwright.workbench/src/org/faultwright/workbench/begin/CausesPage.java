/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.faultwright.language.beginning.ImportedLines.FaultLine;
import org.faultwright.language.beginning.TableKind;
import org.faultwright.language.beginning.Tables;
import org.faultwright.workbench.look.LabelledFields;

/** What it can be. */
final class CausesPage extends QuestionPage {
    private AnswerRows causes;
    private final List<Runnable> imported = new ArrayList<>();
    private List<FaultLine> lines = List.of();

    CausesPage() {
        super("Faults", "What can it be?");
    }

    @Override
    void create(Composite page, QuestionDialog dialog) {
        LabelledFields.hint(page, "Take the last two dozen job slips and count. A fault without a repair is referred to somebody else.");
        causes = new AnswerRows(page, "Fault", List.of(AnswerRows.Column.words("What is broken", "Fuse F1 blown", 22), AnswerRows.Column.words("Cases", "12", 5),
                AnswerRows.Column.words("What puts it right", "Fit a new fuse F1", 22), AnswerRows.Column.words("Minutes", "5", 5)), dialog::changed, dialog::grown);
        LabelledFields.push(page, "From a &table\u2026", () -> fromTable(dialog, TableDialog.UNNAMED));
    }

    void fromTable(QuestionDialog dialog, Path table) {
        TableDialog asked = new TableDialog(dialog.getShell(), TableKind.FAULTS, Tables::faults, table);
        asked.open();
        asked.<FaultLine>taken().ifPresent(taken -> {
            lines = taken;
            causes.append(taken.stream().map(line -> List.of(line.fault(), line.cases(), line.remedy(), "")).toList());
            imported.forEach(Runnable::run);
        });
    }

    /** Called after a fault table was taken; its columns are signs. */
    void whenImported(Runnable told) {
        imported.add(told);
    }

    /** The lines of the fault table that was taken last. */
    List<FaultLine> lines() {
        return lines;
    }

    List<AnswerRows.Row> rows() {
        return causes.filled();
    }

    @Override
    String problem() {
        return causes.filled().stream().filter(row -> !Tables.isCount(row.cell(1))).findFirst()
                .map(row -> "\"" + row.cell(1) + "\" is no number of cases; write one above 0, or nothing.").or(() -> causes.notMinutes(3)).orElse("");
    }

    @Override
    void setFocus() {
        causes.setFocus();
    }
}
