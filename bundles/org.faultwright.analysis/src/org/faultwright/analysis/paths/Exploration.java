/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;

/**
 * Every state that a procedure can be in: a place, the values of the conditions followed on coming there,
 * and how often each bounded way of the present loop was taken. States are met breadth first, so that the
 * path kept for each is a shortest one, counted in places passed.
 *
 * <p>What leads on does not depend on the conditions. A condition followed alone, with those that may
 * force it, therefore takes exactly the values it takes when all are followed together.
 */
public final class Exploration {
    /** No more states than this are looked at; fewer when one takes more than 128 bits. */
    public static final int MOST_STATES = 2_000_000;

    private final StepMap map;
    private final boolean counts;
    private final Explorer explored;
    private final StateStore states;

    private Exploration(StepMap map, boolean counts, Explorer explorer) {
        this.map = map;
        this.counts = counts;
        this.explored = explorer;
        this.states = explorer.states;
    }

    /** Follows these conditions and every bound, up to {@link #MOST_STATES}. */
    public static Exploration of(StepMap map, List<Condition> conditions) {
        return of(map, conditions, true, MOST_STATES, Explorer.Arrivals.NOBODY);
    }

    /** @param counts whether bounds are kept; if not, a bounded way in a loop leads both ways at any time */
    static Exploration of(StepMap map, List<Condition> conditions, boolean counts, int most,
            Explorer.Arrivals arrivals) {
        Explorer explorer = new Explorer(map, conditions, counts, most, arrivals);
        explorer.run();
        return new Exploration(map, counts, explorer);
    }

    public StepMap map() {
        return map;
    }

    /** Whether every state was looked at. If not, nothing follows from what was not met. */
    public boolean isComplete() {
        return explored.complete;
    }

    /** Whether bounds were kept. If not, there may be paths here that take a bounded way too often. */
    public boolean countsRepeats() {
        return counts;
    }

    /** How many states there are. */
    public int size() {
        return states.size();
    }

    /** Where a state is. @param state counted from 0 in the order of distance from the beginning */
    public InlinedStep place(int state) {
        return map.places().get(states.place(state));
    }

    /**
     * The value of a condition on coming to a state.
     *
     * @throws IllegalArgumentException if the condition is not followed or has no values
     */
    public Name value(int state, Condition condition) {
        if (explored.packing.field(condition) == null || condition.values().isEmpty()) {
            throw new IllegalArgumentException(condition.name() + " is not followed");
        }
        return condition.values().get(valueOnComing(state, condition));
    }

    /** The value, counted from 0, of a condition on coming to a state. */
    int valueOnComing(int state, Condition condition) {
        return explored.packing.field(condition).read(onComing(state));
    }

    /** All values on coming to a state, packed; with how often bounded ways were taken left out. */
    long[] onComing(int state) {
        long[] bits = new long[explored.packing.words()];
        states.read(state, bits);
        explored.packing.forgetCounts(bits);
        return bits;
    }

    /** The value, counted from 0, of a condition at a state once the needs of its place are met. */
    int valueWithNeedsMet(int state, Condition condition) {
        return value(withNeedsMet(state), condition);
    }

    /** All values at a state once the needs of its place are met, packed. */
    long[] withNeedsMet(int state) {
        long[] bits = onComing(state);
        explored.changes.meetNeeds(states.place(state), bits);
        return bits;
    }

    /** The value, counted from 0, of a condition among packed ones. */
    int value(long[] packed, Condition condition) {
        return explored.packing.field(condition).read(packed);
    }

    /** Whether a way was ever taken to where it leads. */
    public boolean isTaken(Transition way) {
        return explored.taken[2 * way.index()];
    }

    /** Whether a bounded way was ever taken to where it leads when its bound is reached. */
    public boolean isTakenOtherwise(Transition way) {
        return explored.taken[2 * way.index() + 1];
    }

    /** A shortest path to a state; its last step is the state's own place. */
    public List<PathStep> path(int state) {
        List<PathStep> path = new ArrayList<>(List.of(place(state).here()));
        for (int at = state; states.parent(at) >= 0; at = states.parent(at)) {
            map.ways().get(states.branch(at) / 2).taken().ifPresent(path::add);
        }
        Collections.reverse(path);
        return List.copyOf(path);
    }

    /** The states on a shortest path to a state, itself the last. */
    List<Integer> way(int state) {
        List<Integer> way = new ArrayList<>();
        for (int at = state; at >= 0; at = states.parent(at)) {
            way.add(at);
        }
        Collections.reverse(way);
        return List.copyOf(way);
    }

    /** A shortest path to a place; absent when it cannot be reached. */
    public Optional<List<PathStep>> path(InlinedStep place) {
        for (int state = 0; state < states.size(); state++) {
            if (states.place(state) == place.index()) {
                return Optional.of(path(state));
            }
        }
        return Optional.empty();
    }

    /** The places reached, by number. */
    public BitSet reached() {
        BitSet reached = new BitSet();
        for (int state = 0; state < states.size(); state++) {
            reached.set(states.place(state));
        }
        return reached;
    }
}
