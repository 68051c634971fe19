/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/**
 * The problem of test sequencing (Pattipati and Alexandridis, "Application of heuristic search and
 * information theory to sequential fault diagnosis", IEEE Transactions on Systems, Man and Cybernetics
 * 20(4), 1990), widened by what a bench needs: outcomes of more than two kinds, results that may show
 * differently or are unknown, tests that must come before others, and changes of the set-up.
 *
 * @param weights how often each fault is met
 * @param goals   what each fault is to be told apart into; faults with one goal need not be told apart
 * @param tests   at most 62
 * @param setUps  the cost of each test
 */
public record TestProblem(List<Exact> weights, List<Integer> goals, List<Test> tests, SetUpCosts setUps) {
    /** More faults or tests than this do not fit one word. */
    public static final int MOST = 62;

    /**
     * One test.
     *
     * @param shares    for each fault how often each outcome shows, from 0 to 1, all together 1
     * @param after     the tests that must have been asked before it
     * @param confirms  the goals that may not be gone on to before this test was asked
     */
    public record Test(List<List<Exact>> shares, List<Integer> after, List<Integer> confirms) {
        public int outcomes() {
            return shares.stream().mapToInt(List::size).max().orElse(0);
        }
    }

    public TestProblem {
        weights = List.copyOf(weights);
        goals = List.copyOf(goals);
        tests = List.copyOf(tests);
        if (weights.size() > MOST || tests.size() > MOST) {
            throw new IllegalArgumentException("more than " + MOST + " faults or tests");
        }
    }

    /**
     * Tests whose outcome each fault fixes.
     *
     * @param results for each test the number of the outcome that each fault shows
     */
    public static TestProblem certain(List<Exact> weights, List<Exact> costs, int[][] results) {
        List<Test> tests = Arrays.stream(results).map(row -> {
            int outcomes = Arrays.stream(row).max().orElse(0) + 1;
            return new Test(Arrays.stream(row).mapToObj(result -> IntStream.range(0, outcomes)
                    .mapToObj(o -> o == result ? Exact.ONE : Exact.ZERO).toList()).toList(), List.of(), List.of());
        }).toList();
        return new TestProblem(weights, IntStream.range(0, weights.size()).boxed().toList(), tests, SetUpCosts.none(costs));
    }
}
