/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/** Small problems made at random, of every kind the search has to deal with; the seed makes them the same each time. */
final class RandomProblems {
    private final Random random;

    RandomProblems(long seed) {
        this.random = new Random(seed);
    }

    /** Tests whose outcome each fault fixes, each fault a goal of its own. */
    TestProblem certain(int faults, int tests, int outcomes) {
        int[][] results = new int[tests][faults];
        for (int[] row : results) {
            for (int f = 0; f < faults; f++) {
                row[f] = random.nextInt(outcomes);
            }
        }
        List<Exact> costs = IntStream.range(0, tests).mapToObj(t -> Exact.of(1 + random.nextInt(9))).toList();
        return TestProblem.certain(weights(faults), costs, results);
    }

    /** Tests each of which finds one fault or not. */
    TestProblem checks(int faults, int tests) {
        int[][] results = new int[tests][faults];
        for (int[] row : results) {
            row[random.nextInt(faults)] = 1;
        }
        List<Exact> costs = IntStream.range(0, tests).mapToObj(t -> Exact.of(1 + random.nextInt(9))).toList();
        return TestProblem.certain(weights(faults), costs, results);
    }

    /** With results that may differ, goals of several faults, tests that come before others or confirm, and set-ups. */
    TestProblem anything(int faults, int tests) {
        List<Integer> goals = IntStream.range(0, faults).mapToObj(f -> random.nextInt(1 + f)).toList();
        List<TestProblem.Test> made = new ArrayList<>();
        for (int test = 0; test < tests; test++) {
            int outcomes = 2 + random.nextInt(2);
            List<List<Exact>> shares = IntStream.range(0, faults).mapToObj(f -> shares(outcomes)).toList();
            List<Integer> after = test > 0 && random.nextInt(6) == 0 ? List.of(random.nextInt(test)) : List.of();
            List<Integer> confirms = random.nextInt(5) == 0 ? List.of(goals.get(random.nextInt(faults))) : List.of();
            made.add(new TestProblem.Test(shares, after, confirms));
        }
        return new TestProblem(weights(faults), goals, made, random.nextBoolean() ? new Switches(tests)
                : SetUpCosts.none(IntStream.range(0, tests).mapToObj(t -> Exact.of(1 + random.nextInt(9))).toList()));
    }

    private List<Exact> weights(int faults) {
        List<Integer> raw = IntStream.range(0, faults).mapToObj(f -> 1 + random.nextInt(20)).toList();
        int sum = raw.stream().mapToInt(Integer::intValue).sum();
        return raw.stream().map(w -> Exact.ratio(w, sum)).toList();
    }

    private List<Exact> shares(int outcomes) {
        int one = random.nextInt(outcomes);
        int other = random.nextInt(5) == 0 ? random.nextInt(outcomes) : one;
        Exact part = Exact.ratio(1 + random.nextInt(3), 4);
        return IntStream.range(0, outcomes).mapToObj(o -> one == other ? o == one ? Exact.ONE : Exact.ZERO
                : o == one ? part : o == other ? Exact.ONE.minus(part) : Exact.ZERO).toList();
    }

    /** Two switches, on or off. Each test needs them so or so; to change one costs something. */
    private final class Switches implements SetUpCosts {
        private final int[] needs;
        private final int[] times;
        private final int[] change = {1 + random.nextInt(5), 1 + random.nextInt(5)};
        private final int[] left = random.ints(24, 0, 4).toArray();

        Switches(int tests) {
            needs = IntStream.range(0, tests).map(t -> random.nextInt(4)).toArray();
            times = IntStream.range(0, tests).map(t -> 1 + random.nextInt(9)).toArray();
        }

        @Override
        public int start() {
            return 0;
        }

        private int changing(int from, int to) {
            return ((from ^ to) & 1) * change[0] + ((from ^ to) >> 1) * change[1];
        }

        @Override
        public Exact cost(int setUp, int test) {
            return Exact.of(times[test] + changing(setUp, needs[test]));
        }

        @Override
        public Exact leastCost(int test) {
            return Exact.of(times[test]);
        }

        @Override
        public int after(int setUp, int test, int outcome) {
            return outcome == 2 ? 0 : needs[test];
        }

        @Override
        public Exact finish(int setUp, int goal) {
            return Exact.of(changing(setUp, left[goal]));
        }

        @Override
        public long exposure(int setUp, int test) {
            return needs[test] & ~setUp;
        }
    }
}
