/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntSupplier;
import java.util.stream.IntStream;
import org.faultwright.analysis.sequence.TestProblem;
import org.faultwright.analysis.sequence.TestSequencer;
import org.faultwright.quantity.Exact;

/** Prints how long the best order of tests takes to find, for fault tables of several kinds and sizes. */
public final class OrderBenchmark {
    private static final int ROUNDS = 7;

    private OrderBenchmark() {
    }

    public static void main(String[] arguments) {
        for (int size : new int[] {10, 15, 20}) {
            report(size, size, "two results, half and half", random -> () -> random.nextInt(2));
            report(size, size, "two results, one fault in four", random -> () -> random.nextInt(4) == 0 ? 1 : 0);
            report(size, size, "two results, one fault in ten", random -> () -> random.nextInt(10) == 0 ? 1 : 0);
            report(size, size, "three results", random -> () -> random.nextInt(3));
        }
        report(40, 60, "two results, half and half", random -> () -> random.nextInt(2));
        report(60, 60, "two results, one fault in ten", random -> () -> random.nextInt(10) == 0 ? 1 : 0);
    }

    /** Where the results of a table come from. */
    private interface Table {
        IntSupplier results(Random random);
    }

    private static void report(int faults, int tests, String kind, Table table) {
        long[] times = new long[ROUNDS];
        TestSequencer.Result result = null;
        for (int round = 0; round < ROUNDS; round++) {
            TestProblem problem = problem(faults, tests, table, round);
            long start = System.nanoTime();
            result = TestSequencer.solve(problem);
            times[round] = System.nanoTime() - start;
        }
        Arrays.sort(times);
        double gap = result.cost().dividedBy(result.bound()).doubleValue() - 1;
        System.out.printf(Locale.ROOT, "%d faults, %d tests, %s: middle %d ms, longest %d ms, %s%n", faults, tests, kind,
                times[ROUNDS / 2] / 1_000_000, times[ROUNDS - 1] / 1_000_000,
                result.isBest() ? "exact" : String.format(Locale.ROOT, "near, at most %.0f %% over the bound", 100 * gap));
    }

    private static TestProblem problem(int faults, int tests, Table table, int seed) {
        Random random = new Random(seed);
        IntSupplier results = table.results(random);
        int[][] rows = new int[tests][faults];
        for (int[] row : rows) {
            Arrays.setAll(row, fault -> results.getAsInt());
        }
        List<Integer> weights = random.ints(faults, 1, 30).boxed().toList();
        int sum = weights.stream().mapToInt(Integer::intValue).sum();
        return TestProblem.certain(weights.stream().map(weight -> Exact.ratio(weight, sum)).toList(),
                IntStream.range(0, tests).mapToObj(test -> Exact.of(1 + random.nextInt(10))).toList(), rows);
    }
}
