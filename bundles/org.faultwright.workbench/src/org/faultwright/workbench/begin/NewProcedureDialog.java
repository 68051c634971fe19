/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.begin;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.swt.widgets.Shell;
import org.faultwright.language.beginning.Beginning;
import org.faultwright.language.beginning.Interview;
import org.faultwright.language.beginning.Interview.Cause;
import org.faultwright.language.beginning.InterviewProgress;
import org.faultwright.language.beginning.TableKind;

/** Asks for a procedure as one thinks at the bench. */
final class NewProcedureDialog extends QuestionDialog {
    static final String TITLE = "New procedure";
    private static final String NOTHING = "Nothing is answered yet, so this is a short, whole text to write over.";

    private final UnitPage unit;
    private final ComplaintPage complaint;
    private final CausesPage causes;
    private final SignsPage signs;
    private final SignsByFaultPage shown;
    private final DangersPage dangers;
    private final PlacePage place;

    NewProcedureDialog(Shell shell, Path folder) {
        this(shell, new UnitPage(), new ComplaintPage(), new CausesPage(), new SignsPage(), new DangersPage(true), folder);
    }

    private NewProcedureDialog(Shell shell, UnitPage unit, ComplaintPage complaint, CausesPage causes, SignsPage signs, DangersPage dangers, Path folder) {
        this(shell, unit, complaint, causes, signs, new SignsByFaultPage(causes, signs), dangers,
                new PlacePage(() -> Interview.suggestedName(unit.unit(), complaint.seen()), folder, NOTHING));
    }

    private NewProcedureDialog(Shell shell, UnitPage unit, ComplaintPage complaint, CausesPage causes, SignsPage signs, SignsByFaultPage shown, DangersPage dangers,
            PlacePage place) {
        super(shell, TITLE, List.of(unit, complaint, causes, signs, shown, dangers, place));
        this.unit = unit;
        this.complaint = complaint;
        this.causes = causes;
        this.signs = signs;
        this.shown = shown;
        this.dangers = dangers;
        this.place = place;
    }

    /** Opens with a table to be taken. */
    void open(Path table, TableKind kind) {
        create();
        getShell().getDisplay().asyncExec(() -> {
            show(kind == TableKind.FAULTS ? causes : signs);
            switch (kind) {
                case FAULTS -> causes.fromTable(this, table);
                case CODES -> signs.codesFromTable(this, table);
                case STEPS -> signs.stepsFromTable(this, table);
                case RANGES -> signs.rangesFromTable(this, table);
            }
        });
        open();
    }

    Interview asked() {
        List<SignsPage.SignRow> told = signs.signs();
        String name = place.isUnnamed() ? Interview.suggestedName(unit.unit(), complaint.seen()) : place.procedureName();
        return new Interview(name, unit.unit(), unit.boards(), complaint.seen(), complaint.complaints(), unit.supply(), unit.hasCover(),
                causes.rows().stream().map(row -> new Cause(row.cell(0), row.cell(1), row.cell(2), row.cell(3), shown.of(row, told))).toList(),
                told.stream().map(SignsPage.SignRow::sign).toList(), dangers.dangers(), dangers.store(), signs.meter());
    }

    @Override
    Supplier<InterviewProgress> growing() {
        Interview asked = asked();
        boolean nothing = asked.unit().isEmpty() && asked.seen().isEmpty() && asked.complaints().isEmpty() && asked.causes().isEmpty() && asked.signs().isEmpty()
                && asked.dangers().isEmpty();
        return nothing ? () -> new InterviewProgress(Beginning.procedure(asked.name()).text(), false, List.of(), List.of()) : () -> InterviewProgress.of(asked);
    }

    @Override
    boolean write(InterviewProgress grown) {
        return place.folder().isPresent() && NewText.write(getShell(), TITLE, place.folder().get(), place.procedureName(), grown.text());
    }
}
