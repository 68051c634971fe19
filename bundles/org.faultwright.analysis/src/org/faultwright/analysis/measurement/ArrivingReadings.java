/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.QuantityKind;

/** Which readings of an earlier step can have been taken when a later one is reached. */
public final class ArrivingReadings {
    private ArrivingReadings() {
    }

    /** The values of the outcomes from which the later step can be reached without taking the reading anew. */
    public static Interval at(Step later, String earlier, StepGraph graph) {
        Optional<Step> step = graph.steps().stream().filter(one -> one.name().text().equals(earlier)).findFirst();
        if (step.isEmpty()) {
            return Interval.EVERYTHING;
        }
        List<Interval> arriving = new ArrayList<>();
        for (Outcome outcome : step.get().outcomes()) {
            if (leads(outcome, later, step.get(), graph)) {
                arriving.add(values(outcome, step.get()));
            }
        }
        return arriving.stream().reduce(ArrivingReadings::around).orElse(Interval.EVERYTHING);
    }

    private static boolean leads(Outcome outcome, Step later, Step earlier, StepGraph graph) {
        Set<Step> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Step> waiting = new ArrayDeque<>();
        targets(outcome).flatMap(name -> graph.step(name).stream()).forEach(waiting::add);
        while (!waiting.isEmpty()) {
            Step step = waiting.remove();
            if (step == later) {
                return true;
            }
            if (step != earlier && seen.add(step)) {
                step.outcomes().stream().flatMap(ArrivingReadings::targets).flatMap(name -> graph.step(name).stream())
                        .forEach(waiting::add);
            }
        }
        return false;
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream());
    }

    private static Interval values(Outcome outcome, Step step) {
        QuantityKind kind = step instanceof Step.Measure measure && measure.kind().isPresent()
                ? measure.kind().get().value() : QuantityKind.TEMPERATURE;
        if (outcome.head() instanceof Outcome.Band band) {
            return band.limit().value().interval(kind);
        }
        Optional<Interval> expected = expected(step).map(expectation -> expectation.limit().value().interval(kind));
        return switch (outcome.key()) {
            case Step.WITHIN -> expected.orElse(Interval.EVERYTHING);
            case Step.BELOW -> expected.flatMap(Interval::lower).map(low -> Interval.below(low.opposite()))
                    .orElse(Interval.EVERYTHING);
            case Step.ABOVE -> expected.flatMap(Interval::upper).map(high -> Interval.above(high.opposite()))
                    .orElse(Interval.EVERYTHING);
            default -> Interval.EVERYTHING;
        };
    }

    private static Optional<Step.Expectation> expected(Step step) {
        return step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
    }

    private static Interval around(Interval one, Interval other) {
        return new Interval(further(one.lower(), other.lower(), -1), further(one.upper(), other.upper(), 1));
    }

    private static Optional<Bound> further(Optional<Bound> one, Optional<Bound> other, int direction) {
        return one.flatMap(a -> other.map(b -> {
            int order = a.value().compareTo(b.value()) * direction;
            return order > 0 || order == 0 && a.included() ? a : b;
        }));
    }
}
