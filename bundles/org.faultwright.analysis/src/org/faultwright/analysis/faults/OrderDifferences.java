/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/**
 * Where two orders of the same steps part: every sequence of outcomes of the new tree is walked in the old one as well, with
 * whatever the old one asks besides left open. The first time round a loop stands for all.
 */
final class OrderDifferences {
    /** More sequences than a tree that a person can follow has; beyond them nothing is proved. */
    private static final int MOST = 20_000;

    /**
     * One sequence with two ends.
     *
     * @param outcomes what each step shows, in the order of the new tree
     * @param before   the conclusions that the author's tree may come to
     * @param after    that of the new one
     */
    record Difference(Map<String, String> outcomes, Set<String> before, String after) {
        @Override
        public String toString() {
            return outcomes.entrySet().stream().map(entry -> entry.getKey() + " " + entry.getValue()).collect(Collectors.joining(", "))
                    + ": " + after + " instead of " + String.join(" or ", before);
        }
    }

    private final Procedure before;
    private final Procedure after;
    private final List<Difference> found = new ArrayList<>();
    private int walked;

    private OrderDifferences(Procedure before, Procedure after) {
        this.before = before;
        this.after = after;
    }

    /** Absent where there are too many sequences to walk them all. */
    static Optional<List<Difference>> between(Procedure before, Procedure after) {
        OrderDifferences differences = new OrderDifferences(before, after);
        first(after).ifPresent(step -> differences.walk(step, new LinkedHashMap<>(), new LinkedHashSet<>()));
        return differences.walked > MOST ? Optional.empty() : Optional.of(List.copyOf(differences.found));
    }

    private static Optional<Step> first(Procedure procedure) {
        return procedure.begin().isPresent() ? procedure.begin().flatMap(procedure::step) : procedure.steps().stream().findFirst();
    }

    private void walk(Step step, Map<String, String> shown, Set<String> met) {
        if (walked > MOST || !met.add(step.name().text())) {
            return;
        }
        if (step instanceof Step.Conclude) {
            walked++;
            Set<String> ends = new LinkedHashSet<>();
            first(before).ifPresent(begin -> ends(begin, shown, new LinkedHashSet<>(), ends));
            if (!ends.equals(Set.of(step.name().text()))) {
                found.add(new Difference(new LinkedHashMap<>(shown), ends, step.name().text()));
            }
        }
        for (Outcome outcome : step.outcomes()) {
            Map<String, String> more = new LinkedHashMap<>(shown);
            if (step.outcomes().size() > 1) {
                more.put(step.name().text(), outcome.key());
            }
            next(outcome, after).ifPresent(then -> walk(then, more, new LinkedHashSet<>(met)));
        }
    }

    /** Where the author's tree may end with these outcomes. */
    private void ends(Step step, Map<String, String> shown, Set<String> met, Set<String> ends) {
        if (walked > MOST || !met.add(step.name().text())) {
            return;
        }
        walked++;
        if (step instanceof Step.Conclude) {
            ends.add(step.name().text());
        }
        String known = shown.get(step.name().text());
        step.outcomes().stream().filter(outcome -> known == null || outcome.key().equals(known))
                .forEach(outcome -> next(outcome, before).ifPresent(then -> ends(then, shown, new LinkedHashSet<>(met), ends)));
    }

    private static Optional<Step> next(Outcome outcome, Procedure procedure) {
        Optional<Name> target = outcome.target();
        return target.flatMap(procedure::step);
    }
}
