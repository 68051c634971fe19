/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** How a routine is read: by the fewest of its steps to the exit that it is left by. */
final class RoutineWay {
    /** @param by the outcome it goes on by */
    record On(Step step, Outcome by) {
    }

    private RoutineWay() {
    }

    /** A step that performs another routine counts once. Empty where nothing leads to the exit. */
    static List<On> shortest(StepGraph routine, String exit) {
        Map<Step, On> before = new IdentityHashMap<>();
        Deque<Step> open = new ArrayDeque<>(routine.first().stream().toList());
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        met.addAll(open);
        while (!open.isEmpty()) {
            Step step = open.remove();
            for (Outcome outcome : step.outcomes()) {
                Optional<Name> target = outcome.target();
                Optional<Step> next = target.flatMap(routine::step);
                if (next.isPresent() && met.add(next.get())) {
                    before.put(next.get(), new On(step, outcome));
                    open.add(next.get());
                } else if (next.isEmpty() && target.filter(name -> name.text().equals(exit)).isPresent()) {
                    List<On> way = new ArrayList<>(List.of(new On(step, outcome)));
                    Stream.iterate(before.get(step), on -> on != null, on -> before.get(on.step())).forEach(on -> way.add(0, on));
                    return way;
                }
            }
        }
        return List.of();
    }
}
