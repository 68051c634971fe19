/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.faultwright.procedure.Condition;

/** Meets the states of a step map breadth first. */
final class Explorer {
    private final StepMap map;
    private final Components loops;
    private final boolean counts;
    private final Arrivals arrivals;
    private final int[] to;
    private final int[] otherwise;
    private final int[] atMost;
    private final boolean[] bounded;
    private final boolean[] open;
    private final StatePacking.Field[] count;
    private final boolean[] leavesLoop;
    final StatePacking packing;
    final StateChanges changes;
    final StateStore states;
    final boolean[] taken;
    boolean complete = true;

    /** Told of every step from one state to another. */
    interface Arrivals {
        Arrivals NOBODY = (from, branch, to, state) -> {
        };

        /** @param branch twice the number of the way, plus 1 where it led otherwise */
        void arrive(int from, int branch, int to, long[] state);
    }

    Explorer(StepMap map, List<Condition> conditions, boolean counts, int most, Arrivals arrivals) {
        this.map = map;
        this.counts = counts;
        this.arrivals = arrivals;
        this.loops = map.loops();
        Collection<List<Transition>> counted = counts ? counted() : List.of();
        this.packing = new StatePacking(conditions, counted);
        this.changes = new StateChanges(map, packing);
        this.states = new StateStore(map.places().size(), packing.bitCount(), packing.words(), Math.max(1,
                Math.min(most, 2 * Exploration.MOST_STATES / packing.words())));
        List<Transition> ways = map.ways();
        this.to = map.targets();
        this.otherwise = map.otherTargets();
        this.atMost = map.bounds();
        this.bounded = new boolean[to.length];
        this.open = new boolean[to.length];
        this.count = new StatePacking.Field[to.length];
        this.taken = new boolean[2 * to.length];
        this.leavesLoop = new boolean[2 * to.length];
        for (Transition way : ways) {
            leavesLoop[2 * way.index()] = !counted.isEmpty() && leavesLoop(way, to[way.index()]);
            leavesLoop[2 * way.index() + 1] = !counted.isEmpty() && leavesLoop(way, otherwise[way.index()]);
            bounded[way.index()] = way.isBounded();
            open[way.index()] = !counts && canComeAgain(way);
            count[way.index()] = packing.field(way).orElse(null);
        }
    }

    private boolean leavesLoop(Transition way, int target) {
        return target >= 0 && !loops.together(way.from().index(), target);
    }

    private boolean canComeAgain(Transition way) {
        return way.isBounded() && way.to().map(to -> loops.together(way.from().index(), to.index())).orElse(false);
    }

    /** A way that cannot come again needs no count, and one loop's counts say nothing once it is left. */
    private Collection<List<Transition>> counted() {
        Map<Integer, List<Transition>> byLoop = new TreeMap<>();
        map.ways().stream().filter(this::canComeAgain).forEach(way -> byLoop
                .computeIfAbsent(loops.of(way.from().index()), loop -> new ArrayList<>()).add(way));
        return byLoop.values();
    }

    void run() {
        if (map.begin().isEmpty()) {
            return;
        }
        long[] here = new long[packing.words()];
        long[] next = new long[packing.words()];
        changes.start(here);
        states.add(map.begin().get().index(), here, -1, -1);
        for (int state = 0; state < states.size() && complete; state++) {
            int place = states.place(state);
            states.read(state, here);
            changes.meetNeeds(place, here);
            changes.leave(place, here);
            for (int way = map.firstWay(place); way < map.firstWay(place + 1); way++) {
                System.arraycopy(here, 0, next, 0, next.length);
                changes.prove(way, next);
                leadOn(state, way, next);
            }
        }
    }

    private void leadOn(int state, int way, long[] next) {
        if (!bounded[way]) {
            arrive(state, 2 * way, to[way], next);
        } else if (open[way]) {
            if (atMost[way] > 0) {
                arrive(state, 2 * way, to[way], next.clone());
            }
            arrive(state, 2 * way + 1, otherwise[way], next);
        } else {
            int times = count[way] == null ? 0 : count[way].read(next);
            boolean again = times < atMost[way];
            if (again && count[way] != null) {
                count[way].write(next, times + 1);
            }
            arrive(state, again ? 2 * way : 2 * way + 1, again ? to[way] : otherwise[way], next);
        }
    }

    private void arrive(int from, int branch, int place, long[] state) {
        taken[branch] = true;
        if (place < 0) {
            return;
        }
        if (leavesLoop[branch]) {
            packing.forgetCounts(state);
        }
        int arrived = states.add(place, state, from, branch);
        if (arrived < 0) {
            complete = false;
        } else {
            arrivals.arrive(from, branch, arrived, state);
        }
    }
}
