/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** Places that lead round to the first of them again. @param ways one from each place, in order */
public record Cycle(List<Transition> ways) {
    public List<InlinedStep> places() {
        return ways.stream().map(Transition::from).toList();
    }

    /** A shortest cycle for each group of places that lead to one another by the ways allowed. */
    public static List<Cycle> among(StepMap map, Predicate<Transition> allowed) {
        int[][] successors = new int[map.places().size()][];
        for (InlinedStep place : map.places()) {
            successors[place.index()] = map.ways(place).stream().filter(allowed)
                    .flatMap(way -> way.to().stream()).mapToInt(InlinedStep::index).distinct().toArray();
        }
        Components components = Components.of(successors);
        Set<Integer> seen = new HashSet<>();
        List<Cycle> cycles = new ArrayList<>();
        for (InlinedStep place : map.places()) {
            if (components.isOnCycle(place.index()) && seen.add(components.of(place.index()))) {
                cycles.add(round(map, place, allowed));
            }
        }
        return cycles;
    }

    private static Cycle round(StepMap map, InlinedStep start, Predicate<Transition> allowed) {
        Map<InlinedStep, Transition> reachedBy = new HashMap<>();
        Deque<InlinedStep> waiting = new ArrayDeque<>(List.of(start));
        while (!reachedBy.containsKey(start)) {
            for (Transition way : map.ways(waiting.remove())) {
                Optional<InlinedStep> to = way.to().filter(next -> allowed.test(way) && !reachedBy.containsKey(next));
                to.ifPresent(next -> {
                    reachedBy.put(next, way);
                    waiting.add(next);
                });
            }
        }
        LinkedHashSet<Transition> ways = new LinkedHashSet<>();
        Transition way = reachedBy.get(start);
        while (ways.add(way)) {
            way = reachedBy.get(way.from());
        }
        List<Transition> inOrder = new ArrayList<>(ways);
        Collections.reverse(inOrder);
        return new Cycle(List.copyOf(inOrder));
    }
}
