/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.PathStep;

/**
 * The paths through a procedure, conditions left aside and bounds kept: which places can be reached
 * without passing certain others. That is how "on every path before" is decided: every path to a place
 * passes one of a set exactly when the place cannot be reached round them.
 */
public final class Routes {
    private static final int NOT = -2;
    private static final int START = -1;

    private final Exploration states;
    private final Edges edges;
    private final int[] firstEdge;
    private final BitSet reached;
    private final Map<InlinedStep, List<Integer>> statesByPlace = new HashMap<>();

    private Routes(Exploration states, Edges edges) {
        this.states = states;
        this.edges = edges;
        this.reached = states.reached();
        this.firstEdge = new int[states.size() + 1];
        // States are looked at in their own order, so the edges of one follow those of the one before.
        for (int edge = 0; edge < edges.count; edge++) {
            firstEdge[edges.from[edge] + 1]++;
        }
        for (int state = 0; state < states.size(); state++) {
            firstEdge[state + 1] += firstEdge[state];
        }
    }

    /** Every step from one state to another. */
    private static final class Edges implements Explorer.Arrivals {
        int count;
        int[] from = new int[256];
        int[] branch = new int[256];
        int[] to = new int[256];

        @Override
        public void arrive(int fromState, int byBranch, int toState, long[] state) {
            if (count == to.length) {
                from = Arrays.copyOf(from, count * 2);
                branch = Arrays.copyOf(branch, count * 2);
                to = Arrays.copyOf(to, count * 2);
            }
            from[count] = fromState;
            branch[count] = byBranch;
            to[count++] = toState;
        }
    }

    static Routes of(StepMap map, boolean counts, int most) {
        Edges edges = new Edges();
        return new Routes(Exploration.of(map, List.of(), counts, most, edges), edges);
    }

    /** The places and counts that can be met. */
    public Exploration states() {
        return states;
    }

    /** Whether any path comes to this place. */
    public boolean reached(InlinedStep place) {
        return reached.get(place.index());
    }

    int firstEdge(int state) {
        return firstEdge[state];
    }

    int to(int edge) {
        return edges.to[edge];
    }

    Transition way(int edge) {
        return states.map().ways().get(edges.branch[edge] / 2);
    }

    /** What can be reached from the beginning without coming to any of these places. */
    public Reach without(Predicate<InlinedStep> closed) {
        return new Reach(Optional.empty(), closed, place -> false);
    }

    /** As {@link #without}, but nothing is followed past the last places, which are reached themselves. */
    public Reach upTo(Predicate<InlinedStep> last, Predicate<InlinedStep> closed) {
        return new Reach(Optional.empty(), closed, last);
    }

    /**
     * What can be reached once one of the first places was passed, without coming from there to any of
     * the closed ones. A place counts as reached after itself only when it comes round again.
     */
    public Reach after(Predicate<InlinedStep> first, Predicate<InlinedStep> closed) {
        return afterTaking(way -> first.test(way.from()), closed);
    }

    /** As {@link #after}, once one of these ways was taken. */
    public Reach afterTaking(Predicate<Transition> first, Predicate<InlinedStep> closed) {
        return new Reach(Optional.of(first), closed, place -> false);
    }

    /**
     * The places that {@link #afterTaking} reaches once one of the ways that lead on from one place was taken, without a path to any. Only
     * what lies behind that place is looked at, so that it can be asked of every place.
     */
    public Set<InlinedStep> placesAfter(InlinedStep from, Predicate<Transition> first, Predicate<InlinedStep> closed) {
        BitSet met = new BitSet();
        Deque<Integer> waiting = new ArrayDeque<>();
        for (int state : statesOf(from)) {
            for (int edge = firstEdge[state]; edge < firstEdge[state + 1]; edge++) {
                if (first.test(way(edge))) {
                    meet(edges.to[edge], closed, met, waiting);
                }
            }
        }
        while (!waiting.isEmpty()) {
            int state = waiting.remove();
            for (int edge = firstEdge[state]; edge < firstEdge[state + 1]; edge++) {
                meet(edges.to[edge], closed, met, waiting);
            }
        }
        return met.stream().mapToObj(states::place).collect(Collectors.toSet());
    }

    private void meet(int state, Predicate<InlinedStep> closed, BitSet met, Deque<Integer> waiting) {
        if (!met.get(state) && !closed.test(states.place(state))) {
            met.set(state);
            waiting.add(state);
        }
    }

    private synchronized List<Integer> statesOf(InlinedStep place) {
        if (statesByPlace.isEmpty()) {
            for (int state = 0; state < states.size(); state++) {
                statesByPlace.computeIfAbsent(states.place(state), any -> new ArrayList<>()).add(state);
            }
        }
        return statesByPlace.getOrDefault(place, List.of());
    }

    /** The places from which, by going on, some path comes to a goal that is not closed, and on the way to no closed place. */
    public Set<InlinedStep> before(Predicate<InlinedStep> goal, Predicate<InlinedStep> closed) {
        int[] firstBack = new int[states.size() + 1];
        for (int edge = 0; edge < edges.count; edge++) {
            firstBack[edges.to[edge] + 1]++;
        }
        for (int state = 0; state < states.size(); state++) {
            firstBack[state + 1] += firstBack[state];
        }
        int[] back = new int[edges.count];
        int[] next = firstBack.clone();
        for (int edge = 0; edge < edges.count; edge++) {
            back[next[edges.to[edge]]++] = edges.from[edge];
        }
        BitSet open = new BitSet();
        BitSet met = new BitSet();
        Deque<Integer> waiting = new ArrayDeque<>();
        for (int state = 0; state < states.size(); state++) {
            open.set(state, !closed.test(states.place(state)));
            if (open.get(state) && goal.test(states.place(state))) {
                waiting.add(state);
            }
        }
        BitSet followed = new BitSet();
        waiting.forEach(followed::set);
        while (!waiting.isEmpty()) {
            int state = waiting.remove();
            for (int edge = firstBack[state]; edge < firstBack[state + 1]; edge++) {
                met.set(back[edge]);
                if (open.get(back[edge]) && !followed.get(back[edge])) {
                    followed.set(back[edge]);
                    waiting.add(back[edge]);
                }
            }
        }
        return met.stream().mapToObj(states::place).collect(Collectors.toSet());
    }

    /** What was reached, and how. A node is a state, met before (as it is) or after (plus size) the first ways. */
    public final class Reach {
        private final int size = states.size();
        private final Optional<Predicate<Transition>> opening;
        private final Predicate<InlinedStep> closed;
        private final Predicate<InlinedStep> last;
        private final int[] via = new int[2 * size];
        private final int[] before = new int[2 * size];
        private final int[] waiting = new int[2 * size];
        private final int[] met = new int[states.map().places().size()];
        private int found;

        private Reach(Optional<Predicate<Transition>> opening, Predicate<InlinedStep> closed, Predicate<InlinedStep> last) {
            this.opening = opening;
            this.closed = closed;
            this.last = last;
            Arrays.fill(via, NOT);
            Arrays.fill(met, NOT);
            if (size > 0) {
                meet(opening.isPresent() ? 0 : size, START, START);
            }
            for (int i = 0; i < found; i++) {
                leadOn(waiting[i]);
            }
        }

        private void leadOn(int node) {
            int state = node % size;
            if (node >= size && last.test(states.place(state))) {
                return;
            }
            for (int edge = firstEdge[state]; edge < firstEdge[state + 1]; edge++) {
                if (node < size) {
                    // a path may pass a first place, come to a closed one and then to a first one again
                    meet(edges.to[edge], edge, node);
                }
                if (node >= size || opening.orElseThrow().test(way(edge))) {
                    meet(edges.to[edge] + size, edge, node);
                }
            }
        }

        private void meet(int node, int edge, int from) {
            InlinedStep place = states.place(node % size);
            if (via[node] != NOT || node >= size && closed.test(place)) {
                return;
            }
            via[node] = edge;
            before[node] = from;
            waiting[found++] = node;
            if (node >= size && met[place.index()] == NOT) {
                met[place.index()] = node;
            }
        }

        public boolean has(InlinedStep place) {
            return met[place.index()] != NOT;
        }

        /** A shortest such path to the place, counted in places passed. */
        public Optional<List<PathStep>> path(InlinedStep place) {
            if (!has(place)) {
                return Optional.empty();
            }
            List<PathStep> path = new ArrayList<>(List.of(place.here()));
            for (int node = met[place.index()]; via[node] != START; node = before[node]) {
                way(via[node]).taken().ifPresent(path::add);
            }
            Collections.reverse(path);
            return Optional.of(List.copyOf(path));
        }
    }
}
