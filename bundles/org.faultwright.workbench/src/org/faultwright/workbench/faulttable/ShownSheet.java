/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.faulttable;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.FaultSheet.State;
import org.faultwright.analysis.table.NotApart;
import org.faultwright.analysis.table.SheetColumn;
import org.faultwright.analysis.table.SheetRow;
import org.faultwright.analysis.table.SheetText;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.SourceRange;
import org.faultwright.publish.page.PlainText;
import org.faultwright.quantity.Exact;

/**
 * The table as it is shown: which rows and columns, in what order, and what each cell says.
 *
 * @param of      the table of the text
 * @param rows    what steps take and normally show, then the faults
 * @param columns the words of the faults first
 * @param group   the faults that are shown alone, where it is not all of them
 */
record ShownSheet(FaultSheet of, List<SheetRow> rows, List<SheetColumn> columns, Optional<NotApart> group) {
    /** Rows that stay where they are. */
    static final int HEAD_ROWS = 2;

    /** In what order faults stand. */
    enum Sorting {
        WRITTEN("as written"), CASES("by cases"), WORDS("by their words"), TIME("by time");

        private final String words;

        Sorting(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }

        private Comparator<FaultSheet.Row> order() {
            return switch (this) {
                case WRITTEN -> (one, other) -> 0;
                case CASES -> Comparator.comparing(FaultSheet.Row::share).reversed();
                case WORDS -> Comparator.comparing((FaultSheet.Row row) -> title(row), String.CASE_INSENSITIVE_ORDER);
                case TIME -> Comparator.comparing((FaultSheet.Row row) -> row.seconds().orElse(Exact.ZERO)).reversed();
            };
        }
    }

    static ShownSheet of(FaultSheet of, Sorting sorting, Optional<NotApart> group) {
        Set<String> chosen = group.map(one -> one.faults().stream().map(fault -> fault.name().text()).collect(Collectors.toSet())).orElse(Set.of());
        Stream<SheetRow> faults = of.rows().stream().filter(row -> group.isEmpty() || chosen.contains(row.name())).sorted(sorting.order())
                .map(row -> new SheetRow.OfFault(row.name()));
        List<SheetColumn> columns = new ArrayList<>(List.of(new SheetColumn.Words(), new SheetColumn.Cases(), new SheetColumn.Time()));
        steps(of, group, chosen).forEach(step -> columns.add(new SheetColumn.OfStep(step)));
        columns.add(new SheetColumn.Remedy());
        return new ShownSheet(of, Stream.concat(Stream.of(new SheetRow.Takes(), new SheetRow.Normal()), faults).toList(), List.copyOf(columns), group);
    }

    /** All of them; for some faults first the steps that would tell them apart, then those at which anything is written of them. */
    private static List<String> steps(FaultSheet of, Optional<NotApart> group, Set<String> chosen) {
        List<String> all = of.columns().stream().map(FaultSheet.Column::name).toList();
        if (group.isEmpty()) {
            return all;
        }
        List<String> would = group.get().would().stream().map(NotApart.Separating::step).toList();
        return Stream.concat(would.stream(), all.stream().filter(step -> !would.contains(step)
                && chosen.stream().anyMatch(fault -> of.cell(fault, step).written()))).toList();
    }

    private static String title(FaultSheet.Row row) {
        return row.fault().title().isBlank() ? row.name() : PlainText.line(row.fault().title());
    }

    Optional<FaultSheet.Row> fault(SheetRow row) {
        return row instanceof SheetRow.OfFault fault ? of.row(fault.name()) : Optional.empty();
    }

    Optional<FaultSheet.Column> step(SheetColumn column) {
        return column instanceof SheetColumn.OfStep step ? of.column(step.name()) : Optional.empty();
    }

    /** What stands over a column. */
    String head(SheetColumn column) {
        return column instanceof SheetColumn.OfStep step ? step.name() : column instanceof SheetColumn.Cases ? "Cases"
                : column instanceof SheetColumn.Time ? "Takes in all" : column instanceof SheetColumn.Remedy ? "Remedy" : "Fault";
    }

    /** What is drawn in a cell. */
    String text(SheetRow row, SheetColumn column) {
        if (fault(row).isPresent()) {
            FaultSheet.Row fault = fault(row).get();
            return column instanceof SheetColumn.Words ? title(fault) : column instanceof SheetColumn.Time ? fault.seconds().map(PrintedNumbers::minutes).orElse("")
                    : column instanceof SheetColumn.OfStep step && state(row, column) == State.OPEN ? "?"
                    : column instanceof SheetColumn.OfStep step ? of.cell(fault.name(), step.name()).words() : typed(row, column);
        }
        return column instanceof SheetColumn.Words ? row instanceof SheetRow.Takes ? "takes" : "is normal" : typed(row, column);
    }

    State state(SheetRow row, SheetColumn column) {
        return row instanceof SheetRow.OfFault fault && column instanceof SheetColumn.OfStep step ? of.cell(fault.name(), step.name()).state() : State.WRITTEN;
    }

    /** What the text says there, as it is changed in place. */
    String typed(SheetRow row, SheetColumn column) {
        if (row instanceof SheetRow.OfFault) {
            FaultSheet.Row fault = fault(row).orElseThrow();
            return column instanceof SheetColumn.Words ? fault.fault().title() : column instanceof SheetColumn.Cases ? fault.cases()
                    : column instanceof SheetColumn.Remedy ? fault.remedies()
                    : column instanceof SheetColumn.OfStep step ? SheetText.written(of.cell(fault.name(), step.name())) : "";
        }
        return step(column).map(step -> row instanceof SheetRow.Takes ? step.takes() : step.normal()).orElse("");
    }

    /** Whether there is anything to be typed there: times in all are computed. */
    boolean canChange(SheetRow row, SheetColumn column) {
        return column instanceof SheetColumn.OfStep || row instanceof SheetRow.OfFault && !(column instanceof SheetColumn.Time);
    }

    /** What can be chosen there without typing it. */
    List<String> choices(SheetRow row, SheetColumn column) {
        return row instanceof SheetRow.Takes ? List.of() : step(column).map(FaultSheet.Column::outcomes).orElse(List.of());
    }

    /** All there is to say of a cell, for who cannot see it and for who wants to know more. */
    String told(SheetRow row, SheetColumn column) {
        if (fault(row).isPresent()) {
            FaultSheet.Row fault = fault(row).get();
            return column instanceof SheetColumn.OfStep step ? title(fault) + ". " + of.cell(fault.name(), step.name()).told()
                    : title(fault) + ". \"" + fault.name() + "\": " + told(fault, column);
        }
        return step(column).map(step -> toldOfStep(step) + (row instanceof SheetRow.Takes
                ? step.takes().isEmpty() ? " It does not say how long it takes." : " It takes " + step.takes() + "."
                : step.normal().isEmpty() ? " It does not say what is normal." : " Normal is " + step.normal() + "."))
                .orElseGet(() -> row instanceof SheetRow.Takes ? "How long each step takes" : "What a sound unit shows at each step");
    }

    private String told(FaultSheet.Row fault, SheetColumn column) {
        String share = PrintedNumbers.percent(fault.share()) + " of all";
        return column instanceof SheetColumn.Cases ? (fault.cases().isEmpty() ? "the cases are not said, counted as 1" : "cases " + fault.cases()) + ", " + share
                : column instanceof SheetColumn.Time ? fault.seconds().map(time -> "to its conclusion it takes " + PrintedNumbers.minutes(time) + " on average")
                        .orElse("the steps do not lead it to a conclusion yet, so that there is no time")
                : column instanceof SheetColumn.Remedy ? (fault.remedies().isEmpty() ? "no remedy is named" : "remedy " + fault.remedies())
                : Stream.concat(fault.found().stream().map(Finding::message), of.mixedUp(fault.name()).map(group -> group.told().get(0)).stream()).distinct()
                        .collect(Collectors.joining(" ", share + ". ", "")).strip();
    }

    private String toldOfStep(FaultSheet.Column step) {
        return step.name() + (step.title().isBlank() ? "." : ": " + PlainText.line(step.title())) + (step.step().isEmpty() ? " The step is not written yet."
                : step.asked() || !of.isLaidOut() ? "" : " No step leads there.")
                + step.found().stream().map(Finding::message).collect(Collectors.joining(" ", " ", "")).stripTrailing();
    }

    /** The sign before the words of a cell: something goes against it, or nothing tells the fault apart. */
    String sign(SheetRow row, SheetColumn column) {
        return state(row, column) == State.AGAINST ? "\u2715 " : isMixedUp(row, column) ? "\u2248 " : "";
    }

    boolean isMixedUp(SheetRow row, SheetColumn column) {
        return column instanceof SheetColumn.Words && row instanceof SheetRow.OfFault fault && of.mixedUp(fault.name()).isPresent();
    }

    /** Whether an error was found there. */
    boolean isGrave(SheetRow row, SheetColumn column) {
        return state(row, column) == State.AGAINST || column instanceof SheetColumn.Words && fault(row).filter(fault -> fault.found().stream()
                .anyMatch(finding -> finding.severity() == Severity.ERROR)).isPresent();
    }

    /** Where in the text a cell stands, or would stand. */
    Optional<SourceRange> place(SheetRow row, SheetColumn column) {
        Optional<Fault> fault = fault(row).map(FaultSheet.Row::fault);
        if (fault.isPresent()) {
            return fault.get().shows().stream().filter(showing -> column instanceof SheetColumn.OfStep step && showing.step().text().equals(step.name())).findFirst()
                    .map(showing -> showing.at()).or(() -> fault.map(one -> one.name().at()));
        }
        return step(column).flatMap(FaultSheet.Column::step).map(step -> step.name().at());
    }
}
