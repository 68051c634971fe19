/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.Ambiguity;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * The fault table of a procedure as a table to be read and changed: a row for each fault, a column for each step that tells something, and of every
 * cell whether it is written, follows from what is normal, is open, or goes against the rest of the text. It is a view of the text and holds nothing of
 * its own.
 */
public final class FaultSheet {
    /** What is known of a cell. */
    public enum State {
        /** The text says what the fault shows there. */
        WRITTEN,
        /** The text says nothing, so the fault shows what is normal there. */
        NORMAL,
        /** The text says nothing and the steps lead the fault there: anything may show. */
        OPEN,
        /** The text says nothing, and need not: the fault does not come there, or the step judges the repair. */
        EMPTY,
        /** What is written there, or follows, goes against the rest of the text. */
        AGAINST
    }

    /**
     * One fault at one step.
     *
     * @param state   what is known of it
     * @param words   what shows there, as it is written or follows; empty where nothing does
     * @param written whether the text itself says it
     * @param told    all of it in sentences, for whoever cannot see the table
     */
    public record Cell(State state, String words, boolean written, String told) {
    }

    /**
     * A fault.
     *
     * @param share   of all cases, from 0 to 1
     * @param seconds the expected time to its conclusion; absent while the steps do not lead there
     * @param found   what was found at its head, the gravest first
     */
    public record Row(Fault fault, Exact share, Optional<Exact> seconds, List<Finding> found) {
        public String name() {
            return fault.name().text();
        }

        /** How often it was met, as written; empty where it is not said. */
        public String cases() {
            return fault.cases().map(cases -> cases.at().text()).orElse("");
        }

        /** The steps that repair it, with commas between them. */
        public String remedies() {
            return fault.remedies().stream().map(Name::text).collect(Collectors.joining(", "));
        }
    }

    /**
     * A step.
     *
     * @param step       as written; absent where only faults name it
     * @param outcomes   what it can show: its outcomes, or those a draft would give it
     * @param normal     what a sound unit shows there; empty where nothing says it
     * @param asked      whether the steps lead to it
     * @param ofRepair   whether it shows that a repair has held
     * @param found      what was found at its head, the gravest first
     */
    public record Column(String name, Optional<Step> step, List<String> outcomes, String normal, boolean asked, boolean ofRepair, List<Finding> found) {
        /** The author's words; empty where there are none. */
        public String title() {
            return step.map(Step::title).orElse("");
        }

        /** How long it takes, as written; empty where it is not said. */
        public String takes() {
            return step.flatMap(one -> one.frame().takes()).map(takes -> takes.at().text()).orElse("");
        }
    }

    private final Procedure procedure;
    private final boolean laidOut;
    private final List<Row> rows;
    private final List<Column> columns;
    private final List<NotApart> groups;
    private final Map<String, Row> rowsByName = new HashMap<>();
    private final Map<String, Column> columnsByName = new HashMap<>();
    private final Map<String, NotApart> mixedUp = new HashMap<>();
    private final Map<String, Map<String, Cell>> cells = new HashMap<>();

    private FaultSheet(Subject subject, List<Finding> found) {
        this.procedure = subject.procedure().orElseThrow();
        FaultWalks walks = FaultWalks.in(subject).orElseThrow();
        FaultTable table = FaultTable.completed(procedure);
        this.laidOut = walks.all().stream().anyMatch(FaultWalk::reachesFinding);
        String file = procedure.source().name();
        Map<Integer, List<Finding>> byPlace = found.stream().filter(finding -> finding.at().source().name().equals(file))
                .sorted(Comparator.comparing(Finding::severity)).collect(Collectors.groupingBy(finding -> finding.at().offset()));
        Optional<TimeStudy> times = laidOut ? TimeStudy.in(subject) : Optional.empty();
        this.rows = table.faults().stream().map(fault -> new Row(fault, table.weight(fault), times.flatMap(study -> study.of(fault).expected()),
                at(byPlace, fault.name()))).toList();
        Set<Step> asked = laidOut ? Set.copyOf(Ambiguity.in(subject).orElseThrow().used()) : Set.of();
        this.columns = columns(table, walks, asked, byPlace);
        SheetCells made = new SheetCells(table, walks, laidOut, found);
        columns.forEach(column -> columnsByName.put(column.name(), column));
        for (Row row : rows) {
            rowsByName.put(row.name(), row);
            cells.put(row.name(), made.of(row.fault(), columns));
        }
        Ambiguity ambiguity = laidOut ? Ambiguity.in(subject).orElseThrow() : Ambiguity.of(table, subject.scope());
        this.groups = ambiguity.groups().stream().map(group -> NotApart.of(group, ambiguity, table, laidOut)).toList();
        groups.stream().filter(group -> !group.foundAsOne()).forEach(group -> group.faults().forEach(fault -> mixedUp.putIfAbsent(fault.name().text(), group)));
    }

    /**
     * The table of a subject that is a procedure; absent for a library.
     *
     * @param found what was found in the text so far
     */
    public static Optional<FaultSheet> of(Subject subject, List<Finding> found) {
        return subject.procedure().map(procedure -> new FaultSheet(subject, found));
    }

    private List<Column> columns(FaultTable table, FaultWalks walks, Set<Step> asked, Map<Integer, List<Finding>> byPlace) {
        Set<String> named = procedure.faults().stream().flatMap(fault -> fault.shows().stream()).map(Showing::step).map(Name::text)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        Map<String, Step> completed = new HashMap<>();
        table.steps().forEach(step -> completed.putIfAbsent(step.name().text(), step));
        List<Column> found = new ArrayList<>();
        Set<String> taken = new LinkedHashSet<>();
        for (Step step : procedure.writtenSteps()) {
            if (taken.add(step.name().text()) && (named.contains(step.name().text()) || asks(step))) {
                Optional<Step> known = Optional.ofNullable(completed.get(step.name().text()));
                found.add(new Column(step.name().text(), Optional.of(step), outcomes(known), Results.normal(step, procedure.scope()).map(Outcome::key)
                        .orElse(""), asked.contains(step), walks.judgesRepair(step), at(byPlace, step.name())));
            }
        }
        named.stream().filter(taken::add).forEach(name -> found.add(new Column(name, Optional.empty(), outcomes(Optional.ofNullable(completed.get(name))),
                "", false, false, List.of())));
        return List.copyOf(found);
    }

    private static List<Finding> at(Map<Integer, List<Finding>> byPlace, Name name) {
        return byPlace.getOrDefault(name.at().offset(), List.of());
    }

    /** A question with more than one answer, or one that is still to be given them. */
    private static boolean asks(Step step) {
        return step.asks() && step.outcomes().size() != 1;
    }

    private static List<String> outcomes(Optional<Step> step) {
        return step.map(Step::outcomes).orElse(List.of()).stream().map(Outcome::key).filter(key -> !key.equals(Step.DOUBTFUL)).toList();
    }

    public Procedure procedure() {
        return procedure;
    }

    /** Whether the steps lead any fault to a conclusion that finds it; until then they are still to be drafted. */
    public boolean isLaidOut() {
        return laidOut;
    }

    /** In the order written. */
    public List<Row> rows() {
        return rows;
    }

    /** In the order written; steps that only faults name come last. */
    public List<Column> columns() {
        return columns;
    }

    public Optional<Row> row(String fault) {
        return Optional.ofNullable(rowsByName.get(fault));
    }

    public Optional<Column> column(String step) {
        return Optional.ofNullable(columnsByName.get(step));
    }

    /** @param fault a name among the rows @param step a name among the columns */
    public Cell cell(String fault, String step) {
        return cells.get(fault).get(step);
    }

    /** Faults of which no two are told apart, in the order of the table. */
    public List<NotApart> groups() {
        return groups;
    }

    /** The first group of which a fault is one, where it matters that nothing tells them apart. */
    public Optional<NotApart> mixedUp(String fault) {
        return Optional.ofNullable(mixedUp.get(fault));
    }
}
