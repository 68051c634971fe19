/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.chart;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * A step in the tree that the chart draws. Every step hangs where it is first met, breadth first; a result that leads
 * to a step hanging elsewhere only names it.
 */
final class Branch {
    /** A result. @param child present where the step it leads to hangs here */
    record Way(Outcome outcome, Optional<Branch> child) {
    }

    private final Step step;
    private final List<Way> ways = new ArrayList<>();

    private Branch(Step step) {
        this.step = step;
    }

    /** One tree from where the graph begins, and one for each step that it leaves out. */
    static List<Branch> of(StepGraph graph) {
        Set<Step> met = Collections.newSetFromMap(new IdentityHashMap<>());
        List<Branch> trees = new ArrayList<>();
        graph.first().filter(met::add).ifPresent(first -> trees.add(grown(first, graph, met)));
        graph.steps().stream().filter(met::add).forEach(left -> trees.add(grown(left, graph, met)));
        return trees;
    }

    private static Branch grown(Step root, StepGraph graph, Set<Step> met) {
        Branch tree = new Branch(root);
        Deque<Branch> next = new ArrayDeque<>(List.of(tree));
        while (!next.isEmpty()) {
            Branch branch = next.remove();
            for (Outcome outcome : branch.step.outcomes()) {
                Optional<Branch> child = outcome.target().flatMap(graph::step).filter(met::add).map(Branch::new);
                child.ifPresent(next::add);
                branch.ways.add(new Way(outcome, child));
            }
        }
        return tree;
    }

    Step step() {
        return step;
    }

    List<Way> ways() {
        return ways;
    }

    List<Branch> children() {
        return ways.stream().flatMap(way -> way.child().stream()).toList();
    }
}
