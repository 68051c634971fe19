/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.OnDemand;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Components;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * A step graph with its arrows followed: steps by number, each outcome with the number of the step it
 * leads to. Arrows to nowhere stay, as arrows without a target.
 */
public final class LinkedSteps {
    /** Stands for a target that is missing, unknown or an exit. */
    public static final int NOWHERE = -1;

    /**
     * One outcome of a step.
     *
     * @param to        the step it leads to, or {@link #NOWHERE}
     * @param counter   which bound on repeats it is counted by, or -1
     * @param otherwise where it leads once it was taken as often as it may be
     */
    public record Arrow(int from, Outcome outcome, int to, int counter, int otherwise) {
        public String key() {
            return outcome.key();
        }

        public int atMost() {
            return outcome.repeat().map(Outcome.Repeat::atMost).orElse(0);
        }

        /** Of one tree each is made once; to compare all that an outcome holds would take longer than to follow it. */
        @Override
        public boolean equals(Object other) {
            return this == other;
        }

        @Override
        public int hashCode() {
            return 31 * from + to;
        }
    }

    private final StepGraph graph;
    private final List<Step> steps;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<List<Arrow>> arrows = new ArrayList<>();
    private final int counters;
    private final OnDemand<Components> loops = new OnDemand<>();

    /** The tree of a subject's procedure, computed once. */
    public static LinkedSteps in(Subject subject, Procedure procedure) {
        return subject.shared(LinkedSteps.class, s -> new LinkedSteps(procedure));
    }

    public LinkedSteps(StepGraph graph) {
        this.graph = graph;
        this.steps = graph.steps();
        for (int i = 0; i < steps.size(); i++) {
            numbers.putIfAbsent(steps.get(i).name().text(), i);
        }
        int counted = 0;
        for (int i = 0; i < steps.size(); i++) {
            List<Arrow> own = new ArrayList<>();
            for (Outcome outcome : steps.get(i).outcomes()) {
                boolean bounded = outcome.repeat().isPresent();
                own.add(new Arrow(i, outcome, number(outcome.target()), bounded ? counted++ : -1,
                        number(outcome.repeat().map(Outcome.Repeat::otherwise))));
            }
            arrows.add(List.copyOf(own));
        }
        this.counters = counted;
    }

    private int number(Optional<Name> name) {
        return name.map(n -> numbers.getOrDefault(n.text(), NOWHERE)).orElse(NOWHERE);
    }

    public StepGraph graph() {
        return graph;
    }

    public int size() {
        return steps.size();
    }

    public int counters() {
        return counters;
    }

    public Step step(int number) {
        return steps.get(number);
    }

    public OptionalInt number(String name) {
        Integer found = numbers.get(name);
        return found == null ? OptionalInt.empty() : OptionalInt.of(found);
    }

    /** The step it begins at; absent in a broken text. */
    public OptionalInt begin() {
        return graph.first().map(first -> number(first.name().text())).orElse(OptionalInt.empty());
    }

    public List<Arrow> arrows(int step) {
        return arrows.get(step);
    }

    /** Whether two steps are on one loop. */
    public boolean together(int one, int other) {
        return loops.get(() -> Components.of(arrows.stream().map(own -> own.stream()
                .flatMap(arrow -> targets(arrow).stream()).mapToInt(Integer::intValue).toArray()).toArray(int[][]::new))).together(one, other);
    }

    public boolean isConclusion(int step) {
        return steps.get(step) instanceof Step.Conclude;
    }

    /** The conclusions that find this fault. */
    public BitSet finding(String fault) {
        BitSet found = new BitSet();
        for (int i = 0; i < size(); i++) {
            if (step(i) instanceof Step.Conclude conclude
                    && conclude.finds().stream().anyMatch(name -> name.text().equals(fault))) {
                found.set(i);
            }
        }
        return found;
    }

    /** The steps with these names; unknown names are left out. */
    public List<Integer> numbers(List<Name> names) {
        return names.stream().map(name -> number(name.text())).filter(OptionalInt::isPresent)
                .map(OptionalInt::getAsInt).distinct().toList();
    }

    /** The steps from which one of these can be reached by any arrows, themselves included. */
    public BitSet leadingTo(BitSet goals) {
        List<List<Integer>> back = IntStream.range(0, size()).<List<Integer>>mapToObj(i -> new ArrayList<>()).toList();
        for (List<Arrow> own : arrows) {
            own.forEach(arrow -> targets(arrow).forEach(to -> back.get(to).add(arrow.from())));
        }
        return spread(goals, back);
    }

    /** The steps that can be reached from this one by any arrows, itself included. */
    public BitSet reachable(int from) {
        BitSet seen = new BitSet();
        Deque<Integer> open = new ArrayDeque<>(List.of(from));
        seen.set(from);
        while (!open.isEmpty()) {
            for (Arrow arrow : arrows(open.remove())) {
                for (int to : new int[] {arrow.to(), arrow.otherwise()}) {
                    if (to != NOWHERE && !seen.get(to)) {
                        seen.set(to);
                        open.add(to);
                    }
                }
            }
        }
        return seen;
    }

    /** The steps that can be reached from the beginning. */
    public BitSet used() {
        return begin().isPresent() ? reachable(begin().getAsInt()) : new BitSet();
    }

    public static Set<Integer> targets(Arrow arrow) {
        return IntStream.of(arrow.to(), arrow.otherwise()).filter(to -> to != NOWHERE).boxed()
                .collect(Collectors.toSet());
    }

    private static BitSet spread(BitSet start, List<? extends List<Integer>> neighbours) {
        BitSet seen = (BitSet) start.clone();
        Deque<Integer> open = new ArrayDeque<>();
        start.stream().forEach(open::add);
        while (!open.isEmpty()) {
            for (int next : neighbours.get(open.remove())) {
                if (!seen.get(next)) {
                    seen.set(next);
                    open.add(next);
                }
            }
        }
        return seen;
    }

    /**
     * Where an arrow ends up without any further question being asked: past steps of a single outcome,
     * such as closing the cover.
     */
    public int straightOn(int step) {
        int at = step;
        for (int i = 0; i <= size() && at != NOWHERE && arrows(at).size() == 1; i++) {
            at = arrows(at).get(0).to();
        }
        return at;
    }
}
