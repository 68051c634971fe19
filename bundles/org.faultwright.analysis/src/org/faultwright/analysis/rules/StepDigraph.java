/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** The steps of one graph as numbers, and the arrows between them, whatever the state of the set-up. */
final class StepDigraph {
    /** @param outcome whose arrow it is. @param otherwise whether it is the one taken when its bound is used up */
    public record Arrow(int from, int to, Outcome outcome, boolean otherwise) {
        /** Whether it can be taken again and again. */
        boolean isUnbounded() {
            return otherwise || outcome.repeat().isEmpty();
        }
    }

    private final StepGraph graph;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<List<Arrow>> leaving = new ArrayList<>();
    private final List<List<Integer>> arriving = new ArrayList<>();
    private final BitSet ends = new BitSet();

    /** Those of each procedure or routine of a subject, put together once. */
    private static final class OfGraphs {
        private final Map<StepGraph, StepDigraph> known = Collections.synchronizedMap(new IdentityHashMap<>());
    }

    static StepDigraph of(StepGraph graph, Subject subject) {
        return subject.shared(OfGraphs.class, any -> new OfGraphs()).known.computeIfAbsent(graph, StepDigraph::new);
    }

    private StepDigraph(StepGraph graph) {
        this.graph = graph;
        // Of two steps with one name the first alone can be reached.
        graph.steps().stream().filter(step -> numbers.putIfAbsent(step.name().text(), numbers.size()) == null)
                .forEach(step -> {
            steps.add(step);
            leaving.add(new ArrayList<>());
            arriving.add(new ArrayList<>());
        });
        IntStream.range(0, steps.size()).forEach(this::leave);
    }

    private void leave(int step) {
        if (steps.get(step).outcomes().isEmpty()) {
            ends.set(step);
        }
        for (Outcome outcome : steps.get(step).outcomes()) {
            arrow(step, outcome.target(), outcome, false);
            outcome.repeat().ifPresent(repeat -> arrow(step, Optional.of(repeat.otherwise()), outcome, true));
        }
    }

    /** An arrow that leads out of the graph, or to something unknown, counts as an end. */
    private void arrow(int from, Optional<Name> target, Outcome outcome, boolean otherwise) {
        Optional<Integer> to = target.map(name -> numbers.get(name.text()));
        if (to.isPresent()) {
            leaving.get(from).add(new Arrow(from, to.get(), outcome, otherwise));
            arriving.get(to.get()).add(from);
        } else {
            ends.set(from);
        }
    }

    int size() {
        return steps.size();
    }

    Step step(int number) {
        return steps.get(number);
    }

    List<Arrow> from(int step) {
        return leaving.get(step);
    }

    /** The steps that lead to one. */
    List<Integer> to(int step) {
        return arriving.get(step);
    }

    /** The step it begins at; absent when that is unknown. */
    Optional<Integer> first() {
        return graph.first().map(step -> numbers.get(step.name().text()));
    }

    BitSet reachable(int from) {
        return closure(List.of(from), step -> leaving.get(step).stream().map(Arrow::to).toList());
    }

    /** The steps from which one can be reached, itself among them. */
    BitSet leadingTo(int step) {
        return closure(List.of(step), arriving::get);
    }

    /** The steps from which an end can be reached. */
    BitSet ending() {
        return closure(ends.stream().boxed().toList(), arriving::get);
    }

    private static BitSet closure(Collection<Integer> from, IntFunction<List<Integer>> next) {
        BitSet seen = new BitSet();
        Deque<Integer> waiting = new ArrayDeque<>(from);
        while (!waiting.isEmpty()) {
            int step = waiting.remove();
            if (!seen.get(step)) {
                seen.set(step);
                waiting.addAll(next.apply(step));
            }
        }
        return seen;
    }

    /** For each step those that the allowed arrows lead to. */
    int[][] successors(Predicate<Arrow> allowed) {
        return leaving.stream().map(arrows -> arrows.stream().filter(allowed).mapToInt(Arrow::to).distinct().toArray())
                .toArray(int[][]::new);
    }
}
