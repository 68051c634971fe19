/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.ComputedBudget;
import org.faultwright.quantity.measure.ComputedBudget.Scale;
import org.faultwright.quantity.measure.DecisionRule;
import org.faultwright.quantity.measure.DimensionCheck;
import org.faultwright.quantity.measure.Expression;

/** The studies of all computed values of one document. */
public final class ComputedStudies {
    private final Document document;
    private final DecisionRule rule;
    private Optional<LimitStudies> studies = Optional.empty();
    private final List<ComputedStudy> all = new ArrayList<>();

    ComputedStudies(Document document) {
        this.document = document;
        this.rule = LimitStudies.rule(document) instanceof org.faultwright.procedure.StatedDecisionRule.Simple
                ? new DecisionRule.Simple() : new DecisionRule.Guarded();
    }

    private ComputedStudies(Subject subject) {
        this(subject.document());
        for (StepGraph graph : subject.graphs()) {
            graph.steps().stream().filter(Step.Calculate.class::isInstance).map(Step.Calculate.class::cast)
                    .forEach(step -> in(graph, step).ifPresent(all::add));
        }
    }

    /** The studies of a document's decisions in reading order, computed once. */
    public static List<ComputedStudy> of(Subject subject) {
        return Collections.unmodifiableList(subject.shared(ComputedStudies.class, ComputedStudies::new).all);
    }

    Optional<ComputedStudy> of(Step.Calculate step) {
        return document.graphs().stream().filter(graph -> graph.steps().contains(step)).findFirst()
                .flatMap(graph -> in(graph, step));
    }

    private Optional<ComputedStudy> in(StepGraph graph, Step.Calculate step) {
        List<Written<Limit>> limits = limits(step);
        if (step.formula().isEmpty() || limits.isEmpty()) {
            return Optional.empty();
        }
        ComputedFormula computed = ComputedFormula.of(step, graph);
        if (computed.problem().isPresent()) {
            return Optional.of(failed(step, computed.problem().get()));
        }
        Expression formula = computed.formula().orElseThrow();
        Map<String, Step.Measure> readings = computed.readings();
        Map<String, QuantityKind> kinds = new TreeMap<>();
        readings.forEach((name, reading) -> kinds.put(name, reading.kind().orElseThrow().value()));
        DimensionCheck check = formula.dimensionOfKinds(kinds);
        if (check.problem().isPresent()) {
            return Optional.of(failed(step, check.problem().get().sentence()));
        }
        List<ReadingPlace> places = new ArrayList<>();
        for (Step.Measure reading : readings.values()) {
            ReadingPlace.Found found = ReadingPlace.of(reading, step, graph, studies());
            if (found.place().isEmpty()) {
                return Optional.of(failed(step, found.problem()));
            }
            places.add(found.place().get());
        }
        RepresentativeReadings representatives = new RepresentativeReadings(formula, places);
        List<ComputedLimit> studied = limits.stream().filter(limit -> fits(limit.value(), check))
                .map(limit -> studied(limit, formula, check, representatives)).toList();
        Optional<String> problem = studied.isEmpty() ? Optional.of("No limit of " + step.name()
                + " is written in a unit of what it computes.")
                : studied.stream().flatMap(limit -> limit.budget().problems().stream()).findFirst();
        return Optional.of(problem.map(sentence -> failed(step, sentence))
                .orElseGet(() -> new ComputedStudy(step, studied, Optional.empty())));
    }

    /** Made when the first decision asks: most documents have none. */
    private LimitStudies studies() {
        if (studies.isEmpty()) {
            studies = Optional.of(new LimitStudies(document));
        }
        return studies.get();
    }

    private static ComputedStudy failed(Step.Calculate step, String problem) {
        return new ComputedStudy(step, List.of(), Optional.of(problem));
    }

    private static List<Written<Limit>> limits(Step.Calculate step) {
        Stream<Written<Limit>> bands = step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit());
        return Stream.concat(step.expects().map(Step.Expectation::limit).stream(), bands).toList();
    }

    private static boolean fits(Limit limit, DimensionCheck check) {
        boolean level = check.form() == DimensionCheck.Form.LEVEL;
        Dimension dimension = check.dimension().orElseThrow();
        return limit.quantities().stream().allMatch(end -> (end.unit().isKnown() || end.unit().status() == Unit.Status.MISSING)
                && end.unit().isLogarithmic() == level && end.dimension().equals(dimension))
                && !limit.interval(kind(check)).isEmpty();
    }

    /** As what the limits are read: ten degrees between two temperatures are 10 K. */
    private static QuantityKind kind(DimensionCheck check) {
        return check.dimension().filter(Dimension.TEMPERATURE::equals).isPresent()
                && check.form() == DimensionCheck.Form.PLAIN ? QuantityKind.TEMPERATURE_DIFFERENCE : QuantityKind.TEMPERATURE;
    }

    private ComputedLimit studied(Written<Limit> limit, Expression formula, DimensionCheck check,
            RepresentativeReadings representatives) {
        Interval limits = limit.value().interval(kind(check));
        Unit written = limit.value().quantities().get(0).unit();
        boolean difference = kind(check) == QuantityKind.TEMPERATURE_DIFFERENCE && written.offset().signum() != 0;
        Unit unit = difference ? new Unit("K", "K", written.dimension(), written.factor(), Exact.ZERO, Unit.Status.KNOWN)
                : written;
        Scale scale = check.form() == DimensionCheck.Form.PLAIN ? Scale.RATIO : Scale.INTERVAL;
        return new ComputedLimit(limit, ComputedBudget.of(formula, limits, unit, scale, representatives::at, rule));
    }
}
