/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.BudgetLine;

/**
 * How well the instrument of a measurement decides its limits: the range in use, the uncertainty at each
 * limit, the zones in which a reading is accepted, doubtful or rejected, and what connecting the
 * instrument changes. Cards, hovers and the command line explain a limit with it.
 *
 * @param step       the measurement
 * @param kind       what it reads
 * @param instrument what it is read with
 * @param choice     the range in use and how it was chosen
 * @param limits     each limit of the step: what it expects, then its bands in reading order
 */
public record LimitStudy(Step.Measure step, QuantityKind kind, Instrument instrument, ChosenRange choice,
        List<StudiedLimit> limits) {

    /**
     * The study of a measurement; absent when it has no limit, names no known instrument, or its limits or
     * the instrument's ranges are not written in units of what it reads. Rules report each of these.
     */
    public static Optional<LimitStudy> of(Document document, Step.Measure step) {
        return new LimitStudies(document).of(step);
    }

    /** The range in use. */
    public MeterRange range() {
        return choice.range();
    }

    /** What the step expects; absent where it has bands alone. */
    public Optional<StudiedLimit> expected() {
        return step.expects().flatMap(expected -> of(expected.limit()));
    }

    /** The study of one of the step's limits, as written. */
    public Optional<StudiedLimit> of(Written<?> limit) {
        return limits.stream().filter(studied -> studied.limit().equals(limit)).findFirst();
    }

    /** The smallest test uncertainty ratio of the step's limits; absent when none has one. */
    public Optional<Exact> ratio() {
        return limits.stream().flatMap(limit -> limit.budget().ratio().stream()).reduce(Exact::min);
    }

    /** The numbers in the order in which they were computed, with their formulas and the clauses behind them. */
    public List<BudgetLine> explain() {
        List<BudgetLine> lines = new ArrayList<>(List.of(new BudgetLine("instrument", name(), "", "the step")));
        validity().ifPresent(lines::add);
        lines.add(choice.explain());
        for (StudiedLimit limit : limits) {
            if (limits.size() > 1) {
                lines.add(new BudgetLine("limit", limit.limit().value().spelling(), "", "the step"));
            }
            lines.addAll(limit.explain());
        }
        return List.copyOf(lines);
    }

    /** For which temperatures and until when the budget holds; absent where the instrument states neither. */
    public Optional<BudgetLine> validity() {
        List<String> holds = Stream.concat(instrument.validAt().map(at -> "at " + at.value().spelling()).stream(),
                instrument.calibrationDue().map(due -> "until " + due.value()).stream()).toList();
        return holds.isEmpty() ? Optional.empty() : Optional.of(new BudgetLine("accuracy holds", String.join(", ", holds), "",
                "the instrument's data"));
    }

    private String name() {
        return instrument.title().isBlank() ? instrument.name().text() : instrument.name() + ", " + instrument.title();
    }

    /** Each problem that kept a number from being computed. */
    public List<String> problems() {
        return Stream.concat(choice.problem().stream(), limits.stream().flatMap(limit -> limit.budget().problems().stream()))
                .distinct().toList();
    }
}
