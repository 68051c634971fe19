/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.faultwright.analysis.faults.LinkedSteps;

/**
 * Which faults are still possible wherever the tree can be: the walks of all faults at once, outcome by
 * outcome. Two ways to one step that leave different faults possible are kept apart.
 */
final class CandidateSets {
    private static final int MOST = 20_000;

    /** @param possible for each fault still possible, by number, the repairs that may have been done by then */
    record Belief(StateGraph.State at, Map<Integer, Set<Integer>> possible) {
    }

    private final LinkedSteps tree;
    private final List<StateGraph.Behaviour> behaviours;
    private final List<Belief> beliefs = new ArrayList<>();
    private boolean complete = true;

    CandidateSets(LinkedSteps tree, List<StateGraph.Behaviour> behaviours) {
        this.tree = tree;
        this.behaviours = behaviours;
        Set<Belief> known = new HashSet<>();
        start().ifPresent(first -> meet(first, known));
        for (int i = 0; i < beliefs.size(); i++) {
            Belief belief = beliefs.get(i);
            for (LinkedSteps.Arrow arrow : tree.arrows(belief.at().step())) {
                after(belief, arrow).ifPresent(next -> meet(next, known));
            }
        }
    }

    private Optional<Belief> start() {
        if (tree.begin().isEmpty()) {
            return Optional.empty();
        }
        Map<Integer, Set<Integer>> all = new TreeMap<>();
        for (int fault = 0; fault < behaviours.size(); fault++) {
            all.put(fault, Set.of(0));
        }
        return Optional.of(new Belief(StateGraph.start(tree, tree.begin().getAsInt()), all));
    }

    private void meet(Belief belief, Set<Belief> known) {
        if (belief.possible().isEmpty() || known.contains(belief)) {
            return;
        }
        if (beliefs.size() == MOST) {
            complete = false;
            return;
        }
        known.add(belief);
        beliefs.add(belief);
    }

    private Optional<Belief> after(Belief belief, LinkedSteps.Arrow arrow) {
        Map<Integer, Set<Integer>> left = new TreeMap<>();
        belief.possible().forEach((fault, dones) -> dones.forEach(done -> {
            if (shown(fault, belief.at().step(), done).containsKey(arrow.key())) {
                left.computeIfAbsent(fault, f -> new TreeSet<>())
                        .add(behaviours.get(fault).doneAfter(belief.at().step(), done));
            }
        }));
        return StateGraph.next(tree, belief.at(), arrow, 0).map(next -> new Belief(next, left));
    }

    private Map<String, Boolean> shown(int fault, int step, int done) {
        Map<String, Boolean> keys = new HashMap<>();
        behaviours.get(fault).at(step, done).forEach(s -> keys.put(s.arrow().key(), s.known()));
        return keys;
    }

    boolean isComplete() {
        return complete;
    }

    /** What is possible each time the tree comes to this step. */
    List<Belief> at(int step) {
        return beliefs.stream().filter(belief -> belief.at().step() == step).toList();
    }

    /** For each fault possible there the outcomes it can show, each with whether that is known. */
    Map<Integer, Map<String, Boolean>> shown(Belief belief) {
        Map<Integer, Map<String, Boolean>> shown = new TreeMap<>();
        belief.possible().forEach((fault, dones) -> {
            Map<String, Boolean> keys = new TreeMap<>();
            dones.forEach(done -> shown(fault, belief.at().step(), done)
                    .forEach((key, known) -> keys.merge(key, known, Boolean::logicalAnd)));
            shown.put(fault, keys);
        });
        return shown;
    }
}
