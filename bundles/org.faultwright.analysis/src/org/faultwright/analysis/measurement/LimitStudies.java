/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.Loading;
import org.faultwright.quantity.measure.MeasurementBudget;
import org.faultwright.quantity.measure.UncertaintyContribution;
import org.faultwright.quantity.measure.UnitSpread;

/** The studies of all limits of one document; finds each step's instrument, range, points and decision rule. */
public final class LimitStudies {
    private final KnownBudgets budgets;
    private final Scope scope;
    private final org.faultwright.procedure.StatedDecisionRule rule;
    private final List<LimitStudy> all = new ArrayList<>();

    LimitStudies(Document document) {
        this(document, document.scope(), new KnownBudgets());
    }

    LimitStudies(Document document, Scope scope, KnownBudgets budgets) {
        this.budgets = budgets;
        this.scope = scope;
        this.rule = rule(document);
    }

    private LimitStudies(Subject subject) {
        this(subject.document(), subject.scope(), KnownBudgets.of(subject));
        for (StepGraph graph : subject.graphs()) {
            graph.steps().stream().filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                    .flatMap(step -> step.readings().stream()).forEach(step -> of(step).ifPresent(all::add));
        }
    }

    /** The studies of a document's measurements in reading order, computed once. */
    public static List<LimitStudy> of(Subject subject) {
        return Collections.unmodifiableList(subject.shared(LimitStudies.class, LimitStudies::new).all);
    }

    static org.faultwright.procedure.StatedDecisionRule rule(Document document) {
        if (document instanceof Procedure procedure) {
            return procedure.decisionRule();
        }
        return Stream.concat(Stream.of((Library) document), document.libraries().stream())
                .flatMap(library -> library.statedRule().stream()).map(Written::value).findFirst()
                .orElseGet(org.faultwright.procedure.StatedDecisionRule.Simple::new);
    }

    /** The decision rule in force in a document, for a limit with that spread of good units. */
    private DecisionRule rule(Written<Limit> limit, Step.Measure step, QuantityKind kind) {
        if (rule instanceof org.faultwright.procedure.StatedDecisionRule.Simple) {
            return new DecisionRule.Simple();
        }
        if (rule instanceof org.faultwright.procedure.StatedDecisionRule.ByRisk byRisk) {
            Optional<Exact> mean = limit.value().nominal().map(nominal -> nominal.base(kind));
            Optional<UnitSpread> spread = step.unitDeviation().map(Written::value).filter(stated -> stated.fits(kind))
                    .map(stated -> new UnitSpread(mean, stated.difference()));
            return new DecisionRule.ByRisk(spread, byRisk.percent().dividedBy(Exact.of(100)));
        }
        return new DecisionRule.Guarded();
    }

    /** What a step reads with; absent where it names none that is known. */
    Optional<Instrument> instrument(Step.Measure step) {
        return step.instrument().flatMap(scope::instrument);
    }

    Optional<LimitStudy> of(Step.Measure step) {
        Optional<QuantityKind> kind = step.kind().map(Written::value);
        Optional<Instrument> instrument = instrument(step);
        List<Written<Limit>> limits = kind.map(known -> limits(step, known)).orElseGet(List::of);
        if (limits.isEmpty() || instrument.isEmpty()) {
            return Optional.empty();
        }
        return RangeFinder.choose(step, kind.get(), instrument.get(), around(limits, kind.get()))
                .map(choice -> new LimitStudy(step, kind.get(), instrument.get(), choice,
                        limits.stream().map(limit -> studied(limit, step, choice.range())).toList()));
    }

    /** The limits that a reading of that kind can be held against. */
    private static List<Written<Limit>> limits(Step.Measure step, QuantityKind kind) {
        Stream<Written<Limit>> bands = step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit());
        return Stream.concat(step.expects().map(Step.Expectation::limit).stream(), bands)
                .filter(limit -> limit.value().fits(kind) && !limit.value().interval(kind).isEmpty()).toList();
    }

    /** From the lowest to the highest end of any limit. */
    static Interval around(List<Written<Limit>> limits, QuantityKind kind) {
        List<Exact> ends = limits.stream().map(limit -> limit.value().interval(kind))
                .flatMap(interval -> Stream.of(interval.lower(), interval.upper()).flatMap(Optional::stream))
                .map(Bound::value).sorted().toList();
        return ends.isEmpty() ? Interval.EVERYTHING
                : Interval.from(Bound.including(ends.get(0)), Bound.including(ends.get(ends.size() - 1)));
    }

    private StudiedLimit studied(Written<Limit> limit, Step.Measure step, MeterRange range) {
        MeasurementBudget budget = budgets.of(limit.value(), range, extras(step, range), rule(limit, step, range.kind()));
        return new StudiedLimit(limit, budget, loading(budget.limits(), step, range));
    }

    /** What the author allows for beside the instrument's accuracy. */
    static List<UncertaintyContribution> extras(Step.Measure step, MeterRange range) {
        return step.uncertainties().stream().filter(share -> share.halfWidth().value().fits(range.kind()))
                .map(share -> UncertaintyContribution.halfWidth(share.of(), share.halfWidth().value())).toList();
    }

    private Optional<Loading> loading(Interval limits, Step.Measure step, MeterRange range) {
        List<Quantity> sources = Stream.of(step.point(), step.against()).flatMap(Optional::stream).map(scope::point)
                .flatMap(Optional::stream).map(Point::sourceResistance).flatMap(Optional::stream).map(Written::value)
                .filter(source -> source.fits(QuantityKind.RESISTANCE)).toList();
        Optional<Exact> largest = Stream.of(limits.lower(), limits.upper()).flatMap(Optional::stream)
                .map(end -> end.value().absolute()).reduce(Exact::max);
        if (sources.isEmpty() || largest.isEmpty()) {
            return Optional.empty();
        }
        Optional<Quantity> frequency = step.point().flatMap(scope::point).flatMap(Point::carries)
                .flatMap(Point.Carried::frequency).map(stated -> stated.highest().value());
        return Loading.of(largest.get(), sources.stream().reduce(LimitStudies::inARow).orElseThrow(), range, frequency);
    }

    private static Quantity inARow(Quantity one, Quantity other) {
        return Quantity.of(one.unit().fromBase(one.base().plus(other.base())), one.unit());
    }
}
