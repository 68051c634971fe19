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
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * The order that steps are numbered in: along the likeliest path first, then along the next likely one from where it parts,
 * so that the usual repair reads on downwards.
 */
final class WorkingOrder {
    private final StepGraph graph;
    private final Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
    private final List<Step> order = new ArrayList<>();

    private WorkingOrder(StepGraph graph) {
        this.graph = graph;
    }

    /** Every step once; those that nothing leads to come last, as in the text. @param paths the likeliest first */
    static List<Step> of(StepGraph graph, List<List<Step>> paths) {
        WorkingOrder working = new WorkingOrder(graph);
        graph.first().ifPresent(working::meet);
        paths.forEach(path -> path.forEach(working::meet));
        working.branches();
        graph.steps().forEach(working::meet);
        return List.copyOf(working.order);
    }

    private boolean meet(Step step) {
        return met.add(step) && order.add(step);
    }

    /** What no likely path comes by, each branch to its end, from the first step down. */
    private void branches() {
        for (int i = 0; i < order.size(); i++) {
            // What is met while following a branch stands further down and has its turn later.
            Deque<Step> next = new ArrayDeque<>(targets(order.get(i)));
            while (!next.isEmpty()) {
                Step step = next.remove();
                if (meet(step)) {
                    targets(step).stream().filter(one -> !met.contains(one)).findFirst().ifPresent(next::addFirst);
                }
            }
        }
    }

    private List<Step> targets(Step step) {
        return step.outcomes().stream().flatMap(outcome -> named(outcome).stream())
                .flatMap(name -> graph.step(name).stream()).toList();
    }

    private static List<Name> named(Outcome outcome) {
        List<Name> targets = new ArrayList<>();
        outcome.target().ifPresent(targets::add);
        Optional<Name> otherwise = outcome.repeat().map(Outcome.Repeat::otherwise);
        otherwise.ifPresent(targets::add);
        return targets;
    }

    /** A, B … Z, AA, AB … @param index from 0 */
    static String letter(int index) {
        String last = String.valueOf((char) ('A' + index % 26));
        return index < 26 ? last : letter(index / 26 - 1) + last;
    }
}
