/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/** The tests and faults of a {@link TestProblem} as bits. Faults are renumbered by ascending weight. */
final class FaultBits {
    /** Of each fault. */
    final double[] weight;
    /** Of each fault. */
    final int[] goal;
    /** For each test and outcome the faults that can show it. */
    final long[][] can;
    /** For each test the faults that can show more than one outcome. */
    final long[] vague;
    /** For each test, fault and outcome how often it shows. */
    final double[][][] share;
    /** For each test those that must have been asked before. */
    final long[] needsAsked;
    /** For each goal the tests that must be asked before it is gone on to. */
    final long[] confirming;
    /** Tests that some other needs asked before. */
    final long everNeeded;
    /** For each fault the name of what it is to be told apart as: its goal, or one of several that nothing parts. */
    final int[] merged;
    private final long[][] apart;
    private final int[] original;
    private final boolean everyFaultMatters;
    private final boolean plain;

    FaultBits(TestProblem problem) {
        int faults = problem.weights().size();
        int tests = problem.tests().size();
        this.original = IntStream.range(0, faults).boxed()
                .sorted(Comparator.comparing((Integer f) -> problem.weights().get(f)).thenComparing(f -> f))
                .mapToInt(Integer::intValue).toArray();
        this.weight = Arrays.stream(original).mapToDouble(f -> problem.weights().get(f).doubleValue()).toArray();
        this.goal = Arrays.stream(original).map(f -> problem.goals().get(f)).toArray();
        this.everyFaultMatters = Arrays.stream(goal).distinct().count() == faults;
        this.can = new long[tests][];
        this.vague = new long[tests];
        this.share = new double[tests][faults][];
        this.apart = new long[tests][faults];
        this.needsAsked = new long[tests];
        this.confirming = new long[Arrays.stream(goal).max().orElse(-1) + 1];
        for (int t = 0; t < tests; t++) {
            readTest(t, problem.tests().get(t));
        }
        this.everNeeded = Arrays.stream(needsAsked).reduce(0, (a, b) -> a | b);
        this.merged = mergedGoals();
        this.plain = Arrays.stream(vague).allMatch(v -> v == 0) && everNeeded == 0
                && Arrays.stream(confirming).allMatch(c -> c == 0);
    }

    private void readTest(int t, TestProblem.Test test) {
        can[t] = new long[test.outcomes()];
        for (int f = 0; f < original.length; f++) {
            share[t][f] = test.shares().get(original[f]).stream().mapToDouble(Exact::doubleValue).toArray();
            int possible = 0;
            for (int o = 0; o < share[t][f].length; o++) {
                if (share[t][f][o] > 0) {
                    can[t][o] |= 1L << f;
                    possible++;
                }
            }
            if (possible > 1) {
                vague[t] |= 1L << f;
            }
        }
        for (int f = 0; f < original.length; f++) {
            long together = 0;
            for (long outcome : can[t]) {
                together |= (outcome >> f & 1) != 0 ? outcome : 0;
            }
            apart[t][f] = ~together & all() & ~sameGoal(f);
        }
        test.after().forEach(before -> needsAsked[t] |= 1L << before);
        test.confirms().stream().filter(g -> g < confirming.length).forEach(g -> confirming[g] |= 1L << t);
    }

    private long sameGoal(int fault) {
        return mask(IntStream.range(0, goal.length).filter(other -> goal[other] == goal[fault]));
    }

    private static long mask(IntStream bits) {
        return bits.mapToLong(bit -> 1L << bit).reduce(0, (a, b) -> a | b);
    }

    /** Faults that no order is sure to tell apart, however it goes, are one thing for the bound. */
    private int[] mergedGoals() {
        int[] group = goal.clone();
        for (int f = 0; f < goal.length; f++) {
            long apartFromF = sameGoal(f);
            for (long[] byTest : apart) {
                apartFromF |= byTest[f];
            }
            for (int other = 0; other < goal.length; other++) {
                if ((apartFromF >> other & 1) == 0) {
                    int from = group[other];
                    int to = group[f];
                    Arrays.setAll(group, i -> group[i] == from ? to : group[i]);
                }
            }
        }
        return group;
    }

    long all() {
        return original.length == 0 ? 0 : -1L >>> Long.SIZE - original.length;
    }

    /** The problem's own numbers of some faults, ascending. */
    List<Integer> originals(long mask) {
        return IntStream.range(0, original.length).filter(f -> (mask >> f & 1) != 0).map(f -> original[f]).sorted().boxed()
                .toList();
    }

    /** Whether results are certain and no test is asked for another reason than what it tells. */
    boolean isPlain() {
        return plain;
    }

    /** Whether each fault is a goal of its own. */
    boolean everyFaultMatters() {
        return everyFaultMatters;
    }

    /** Whether the test is sure to part two of these faults that have different goals. */
    boolean tellsApart(int test, long mask) {
        if (mask != 0 && everyFaultMatters && (vague[test] & mask) == 0) {
            return (apart[test][Long.numberOfTrailingZeros(mask)] & mask) != 0;
        }
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            if ((apart[test][Long.numberOfTrailingZeros(rest)] & mask) != 0) {
                return true;
            }
        }
        return false;
    }

    /** The tests that some goal of these faults has to be confirmed by. */
    long confirming(long mask) {
        long found = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            found |= confirming[goal[Long.numberOfTrailingZeros(rest)]];
        }
        return found;
    }

    /** The faults that show what the first of some faults shows, where each shows one thing only. */
    long shownWith(int test, long some, long mask) {
        int outcome = 0;
        while ((can[test][outcome] >> Long.numberOfTrailingZeros(some) & 1) == 0) {
            outcome++;
        }
        return can[test][outcome] & mask;
    }
}
