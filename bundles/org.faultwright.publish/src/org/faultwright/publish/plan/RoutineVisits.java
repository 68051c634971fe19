/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** How often one way comes to a routine: what is filled in there needs room for each time. */
final class RoutineVisits {
    /** More boxes than this nobody tells apart at arm's length. */
    static final int MOST = 3;

    private final Routine routine;
    private final Scope scope;
    private final Predicate<Step> sends;
    private final Map<String, Integer> within = new HashMap<>();

    private RoutineVisits(Routine routine, Scope scope, Predicate<Step> sends) {
        this.routine = routine;
        this.scope = scope;
        this.sends = sends;
    }

    /**
     * A step that may come round again counts twice.
     *
     * @param sends whether a step that performs the routine sends its reader to where it is printed apart
     * @return 1 to {@link #MOST}
     */
    static int of(StepGraph procedure, Routine routine, Scope scope, Predicate<Step> sends) {
        return Math.max(1, Math.min(MOST, new RoutineVisits(routine, scope, sends).most(procedure)));
    }

    private int most(StepGraph graph) {
        Map<Step, Integer> from = new IdentityHashMap<>();
        Set<Step> open = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Step> stack = new ArrayDeque<>(graph.first().stream().toList());
        while (!stack.isEmpty()) {
            Step step = stack.peek();
            if (open.add(step)) {
                next(graph, step).filter(to -> !open.contains(to)).forEach(stack::push);
                continue;
            }
            stack.pop();
            int behind = next(graph, step).mapToInt(to -> from.getOrDefault(to, 0)).max().orElse(0);
            from.putIfAbsent(step, Math.min(MOST, behind + own(graph, step)));
        }
        return graph.first().map(from::get).orElse(0);
    }

    private int own(StepGraph graph, Step step) {
        Optional<Routine> performed = scope.performedBy(step);
        if (performed.isEmpty()) {
            return 0;
        }
        int once = performed.get() == routine ? sends.test(step) ? 1 : 0 : within(performed.get());
        return once > 0 && comesRound(graph, step) ? 2 * once : once;
    }

    /** A routine that performs itself is come to once at least; what more is an error of its text. */
    private int within(Routine other) {
        Integer known = within.putIfAbsent(other.name().text(), 0);
        if (known == null) {
            known = most(other);
            within.put(other.name().text(), known);
        }
        return known;
    }

    private static boolean comesRound(StepGraph graph, Step step) {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Step> open = new ArrayDeque<>(Set.of(step));
        while (!open.isEmpty()) {
            for (Step to : (Iterable<Step>) next(graph, open.remove())::iterator) {
                if (to == step) {
                    return true;
                }
                if (met.add(to)) {
                    open.add(to);
                }
            }
        }
        return false;
    }

    private static Stream<Step> next(StepGraph graph, Step step) {
        return step.outcomes().stream().flatMap(outcome -> Stream.concat(outcome.target().stream(),
                outcome.repeat().map(Outcome.Repeat::otherwise).stream())).flatMap(name -> graph.step(name).stream());
    }
}
