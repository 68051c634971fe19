/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.quality;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * A code that an indicator can give and for which the step that reads it has no result of its own: it goes with whatever is left, or nowhere.
 *
 * @param goes  where whatever is left leads; absent where the step says nothing of it
 * @param later whether every way from there comes to a step that reads the same indicator and has a result for the code
 */
public record UnnamedCode(Step step, Indicator.Code code, Optional<Name> goes, boolean later) {
    /** All that a meaning may consist of and still tell that nothing is amiss. Any other word may tell of a fault or a danger, in whatever language. */
    private static final Set<String> PLAIN = Set.of("ready", "on", "ok", "good", "normal", "idle", "standby", "waiting", "warming", "up", "running", "working",
            "busy", "switched", "present");

    /** Whether a reader who meets the code is left alone with what may be a fault, a lock-out or a danger. A meaning that nobody states may be one. */
    public boolean isGrave() {
        return !later && mayTellOfDanger(code.meaning());
    }

    /** Whether a meaning may tell of a fault, a lock-out or a danger. */
    public static boolean mayTellOfDanger(String meaning) {
        return meaning.isBlank() || !Stream.of(meaning.toLowerCase(Locale.ROOT).strip().split("[^\\p{L}\\p{N}]+")).allMatch(PLAIN::contains);
    }

    /** Of a step that reads an indicator, those without a result. */
    static List<UnnamedCode> of(Step step, Indicator indicator, StepGraph graph, Procedure procedure) {
        Optional<Name> rest = step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.AnythingElse).findFirst().flatMap(Outcome::target);
        return indicator.codes().stream().filter(code -> !names(step, code)).map(code -> new UnnamedCode(step, code, rest,
                rest.flatMap(graph::step).filter(next -> !escapes(next, graph, indicator, code, procedure, Set.of())).isPresent())).toList();
    }

    private static boolean names(Step step, Indicator.Code code) {
        return step.outcomes().stream().anyMatch(outcome -> outcome.key().equals(code.pattern().text()));
    }

    private static boolean reads(Step step, Indicator indicator, Indicator.Code code) {
        return step instanceof Step.Observe observe && observe.indicator().filter(name -> name.text().equals(indicator.name().text())).isPresent() && names(step, code);
    }

    /**
     * Whether some way on from a step comes to an end, or out of its routine, without a step that has a result for the code, those of the routines on the way
     * among them. A single such way is enough: on it nobody would be told.
     */
    private static boolean escapes(Step first, StepGraph graph, Indicator indicator, Indicator.Code code, Procedure procedure, Set<String> within) {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Step> open = new ArrayDeque<>(List.of(first));
        while (!open.isEmpty()) {
            Step step = open.remove();
            if (!met.add(step) || reads(step, indicator, code) || isReadInside(step, indicator, code, procedure, within)) {
                continue;
            }
            List<Name> targets = step.outcomes().stream().flatMap(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())).toList();
            if (targets.isEmpty() || targets.stream().anyMatch(target -> graph.step(target).isEmpty())) {
                return true;
            }
            targets.forEach(target -> open.add(graph.step(target).orElseThrow()));
        }
        return false;
    }

    /** Whether the step performs a routine that nobody leaves without having read the code; of one that performs itself that is not known. */
    private static boolean isReadInside(Step step, Indicator indicator, Indicator.Code code, Procedure procedure, Set<String> within) {
        Optional<Routine> routine = procedure.scope().performedBy(step).filter(one -> !within.contains(one.name().text()));
        if (routine.isEmpty() || routine.get().first().isEmpty()) {
            return false;
        }
        Set<String> inside = new HashSet<>(within);
        inside.add(routine.get().name().text());
        return !escapes(routine.get().first().get(), routine.get(), indicator, code, procedure, inside);
    }

    @Override
    public String toString() {
        return step.name() + " " + code.pattern();
    }
}
