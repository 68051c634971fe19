/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.FaultTable;
import org.faultwright.procedure.Step;

/**
 * Steps that are asked for nothing, by the fault table: wherever the tree comes to them they leave the same
 * faults possible. Steps that confirm the complaint, judge a repair, do something or perform a routine
 * are asked for other reasons and are left out.
 */
public final class StepWorth {
    private final List<Step> tellingNothing = new ArrayList<>();
    private final Map<Step, String> knownBefore = new LinkedHashMap<>();

    private StepWorth(Subject subject) {
        FaultWalks walks = FaultWalks.in(subject).orElseThrow();
        FaultTable table = walks.table();
        if (table.size() == 0) {
            return;
        }
        CandidateSets beliefs = new CandidateSets(walks.tree(), walks.behaviours());
        if (!beliefs.isComplete()) {
            return;
        }
        table.steps().stream().filter(step -> isAskedToKnow(step) && !walks.judgesRepair(step) && !table.isSilentAbout(step))
                .forEach(step -> judge(step, walks, beliefs));
    }

    /** What is asked for nothing in a subject that is a procedure, computed once. */
    public static Optional<StepWorth> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(StepWorth.class, StepWorth::new));
    }

    private static boolean isAskedToKnow(Step step) {
        return step.outcomes().size() > 1 && !(step instanceof Step.Do) && !(step instanceof Step.Perform)
                && step.frame().confirms().isEmpty();
    }

    private void judge(Step step, FaultWalks walks, CandidateSets beliefs) {
        List<Map<Integer, Map<String, Boolean>>> arrivals = walks.tree().number(step.name().text()).stream()
                .mapToObj(beliefs::at).flatMap(List::stream).map(beliefs::shown).toList();
        if (arrivals.isEmpty() || !arrivals.stream().allMatch(StepWorth::leavesAll)) {
            return;
        }
        Set<String> keys = new HashSet<>();
        arrivals.forEach(arrival -> arrival.values().forEach(shown -> keys.addAll(shown.keySet())));
        boolean known = arrivals.stream().flatMap(arrival -> arrival.values().stream())
                .allMatch(shown -> shown.values().stream().allMatch(certain -> certain));
        if (keys.size() == 1 && known) {
            String only = keys.iterator().next();
            boolean catches = step.outcomes().stream().filter(outcome -> !outcome.key().equals(only))
                    .anyMatch(walks::endsWithoutFinding);
            if (!catches) {
                knownBefore.put(step, only);
            }
        } else if (known && arrivals.stream().anyMatch(arrival -> arrival.size() > 1)) {
            tellingNothing.add(step);
        }
    }

    /** Whether every outcome that can show leaves every fault possible that was so before. */
    private static boolean leavesAll(Map<Integer, Map<String, Boolean>> arrival) {
        return arrival.values().stream().map(shown -> new TreeSet<>(shown.keySet())).distinct().count() <= 1;
    }

    /** Steps of which no outcome narrows down what is possible, on any path. */
    public List<Step> tellingNothing() {
        return List.copyOf(tellingNothing);
    }

    /** Steps of which the outcome is certain before they are asked, on every path, and which catch nothing else. */
    public Map<Step, String> knownBefore() {
        return knownBefore;
    }
}
