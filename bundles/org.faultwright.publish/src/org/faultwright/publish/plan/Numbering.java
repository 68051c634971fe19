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

/** The order that steps are numbered in: breadth first from where the graph begins, so that arrows mostly lead on. */
final class Numbering {
    private Numbering() {
    }

    /** Every step once; those that nothing leads to come last, as in the text. */
    static List<Step> readingOrder(StepGraph graph) {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Step> order = new ArrayList<>();
        Deque<Step> next = new ArrayDeque<>();
        graph.first().ifPresent(next::add);
        while (!next.isEmpty()) {
            Step step = next.remove();
            if (met.add(step)) {
                order.add(step);
                step.outcomes().stream().flatMap(outcome -> targets(outcome).stream())
                        .flatMap(name -> graph.step(name).stream()).forEach(next::add);
            }
        }
        graph.steps().stream().filter(met::add).forEach(order::add);
        return order;
    }

    private static List<Name> targets(Outcome outcome) {
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
