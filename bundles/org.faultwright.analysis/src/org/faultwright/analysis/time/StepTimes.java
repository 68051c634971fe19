/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.trace.FaultBehaviour;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/**
 * How long each step takes, in seconds. A step that performs a routine and states no time of its own
 * takes as long as the steps of the routine on the way to the exit in question. Where no time is stated a
 * step counts as taking none, and is remembered.
 */
public final class StepTimes {
    /** Routines that perform one another round a circle end here. */
    private static final int DEEPEST = 8;

    /** @param worst absent where nothing bounds it */
    public record Time(Exact expected, Optional<Exact> worst) {
        static final Time NONE = exactly(Exact.ZERO);

        static Time exactly(Exact seconds) {
            return new Time(seconds, Optional.of(seconds));
        }
    }

    private final Scope scope;
    private final int depth;
    private final Set<Step> untimed = new LinkedHashSet<>();
    private final Map<String, Map<String, Time>> routines = new HashMap<>();

    public StepTimes(Scope scope) {
        this(scope, 0);
    }

    private StepTimes(Scope scope, int depth) {
        this.scope = scope;
        this.depth = depth;
    }

    /** The stated time, where one is stated and is a time. */
    public static Optional<Exact> stated(Step step) {
        return step.frame().time().map(Written::value).flatMap(StepTimes::seconds);
    }

    static Optional<Exact> seconds(Quantity quantity) {
        return quantity.unit().isKnown() && !quantity.unit().isLogarithmic()
                && quantity.dimension().equals(Dimension.TIME)
                ? Optional.of(quantity.base().max(Exact.ZERO)) : Optional.empty();
    }

    /** Whether a time is to be asked for: conclusions are only read. */
    static boolean wantsTime(Step step) {
        return !(step instanceof Step.Conclude);
    }

    public Time of(Step step, String outcome) {
        Optional<Exact> stated = stated(step);
        if (stated.isPresent()) {
            return Time.exactly(stated.get());
        }
        Optional<Routine> routine = scope.performedBy(step);
        if (routine.isPresent()) {
            return routine(routine.get()).getOrDefault(outcome, Time.NONE);
        }
        if (wantsTime(step)) {
            untimed.add(step);
        }
        return Time.NONE;
    }

    /** The steps asked about so far that state no time. */
    Set<Step> untimed() {
        return untimed;
    }

    private Map<String, Time> routine(Routine routine) {
        Map<String, Time> known = routines.get(routine.name().text());
        if (known == null) {
            known = depth < DEEPEST ? byExit(routine) : Map.of();
            routines.put(routine.name().text(), known);
        }
        return known;
    }

    private Map<String, Time> byExit(StepGraph routine) {
        StepTimes inside = new StepTimes(scope, depth + 1);
        LinkedSteps tree = new LinkedSteps(routine);
        StateGraph all = new StateGraph(tree, FaultBehaviour.anything(tree));
        Map<String, Time> found = new HashMap<>();
        for (Name exit : routine.exits()) {
            Duration duration = new Duration(all, inside, move -> move.to().isEmpty() && leavesBy(all, move, exit));
            found.put(exit.text(), new Time(duration.expected().seconds().orElse(Exact.ZERO),
                    duration.worst().seconds()));
        }
        untimed.addAll(inside.untimed());
        return found;
    }

    private static boolean leavesBy(StateGraph all, StateGraph.Move move, Name exit) {
        LinkedSteps.Arrow arrow = move.shown().arrow();
        boolean used = arrow.counter() >= 0
                && all.state(move.from()).taken().get(arrow.counter()) >= arrow.atMost();
        Optional<Name> target = used ? arrow.outcome().repeat().map(r -> r.otherwise()) : arrow.outcome().target();
        return target.map(Name::text).filter(exit.text()::equals).isPresent();
    }
}
