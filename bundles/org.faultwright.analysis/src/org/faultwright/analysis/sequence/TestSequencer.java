/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/**
 * Finds an order of tests with the least expected cost. Up to an amount of work the search looks at every
 * order that could be better (depth first over what is still possible, each state once, cut off by the
 * Huffman bound), so that the result is the best there is. Beyond, the order follows the bound one test
 * ahead, and is stated with its distance from the bound.
 */
public final class TestSequencer {
    /** Outcomes looked at before the search settles for a near result: a second or two of work. */
    public static final int MOST_OUTCOMES = 12_000_000;
    private static final int MOST_STATES = 1_300_000;
    private static final double ROUNDING = 1e-12;
    /** How many tests, and down to which depth, the near search follows to the end before it decides. */
    private static final int TRIED = 4;
    private static final int TRIED_DEPTH = 2;

    /**
     * @param tree       the order
     * @param cost       its expected cost
     * @param bound      no order has a lower expected cost than this
     * @param isBest     whether no order is better at all
     */
    public record Result(TestTree tree, Exact cost, Exact bound, boolean isBest) {
    }

    private final SearchSpace space;
    private final SearchEstimate estimate;
    private final SearchMemory values;
    private final SearchMemory bounds;
    private boolean gaveUp;
    private boolean drawing;

    private int outcomesLeft;

    private TestSequencer(TestProblem problem, int mostOutcomes) {
        this.space = new SearchSpace(problem);
        this.estimate = new SearchEstimate(space);
        this.values = new SearchMemory(MOST_STATES);
        this.bounds = new SearchMemory(MOST_STATES);
        this.outcomesLeft = mostOutcomes;
    }

    public static Result solve(TestProblem problem) {
        return solve(problem, MOST_OUTCOMES);
    }

    /** @param mostOutcomes how many outcomes may be looked at; 0 for a near result at once */
    public static Result solve(TestProblem problem, int mostOutcomes) {
        return new TestSequencer(problem, mostOutcomes).solve();
    }

    private Result solve() {
        long all = space.bits().all();
        value(all, space.start());
        drawing = !gaveUp;
        TestTree tree = gaveUp ? near(all, space.start(), 0).tree() : best(all, space.start());
        Exact cost = CostOfTree.of(space.problem(), tree);
        Exact bound = gaveUp ? Exact.of(estimate.bound(all, space.start())).min(cost) : cost;
        return new Result(tree, cost, bound, !gaveUp);
    }

    private double value(long mask, int circumstance) {
        int known = values.find(mask, circumstance);
        if (known >= 0) {
            return values.value(known);
        }
        if (gaveUp || (values.isFull() || outcomesLeft <= 0) && !drawing) {
            gaveUp = true;
            return 0;
        }
        long tests = space.admissible(mask, circumstance);
        if (tests == 0) {
            double cost = space.finish(mask, circumstance);
            values.put(mask, circumstance, cost, -1);
            return cost;
        }
        Optional<CheckOrder.Checks> checks = checks(mask, circumstance, tests);
        if (checks.isPresent()) {
            values.put(mask, circumstance, checks.get().cost(), checks.get().first());
            return checks.get().cost();
        }
        double best = Double.POSITIVE_INFINITY;
        int bestTest = -1;
        for (int test : byPromise(mask, circumstance, tests)) {
            double cost = value(mask, circumstance, test, best);
            if (cost < best * (1 - ROUNDING)) {
                best = cost;
                bestTest = test;
            }
        }
        values.put(mask, circumstance, best, bestTest);
        return best;
    }

    /** Where all that is left are checks for one fault each, their order is known without a search. */
    private Optional<CheckOrder.Checks> checks(long mask, int circumstance, long tests) {
        List<CheckOrder.Single> singles = estimate.singles(mask, tests);
        double checked = singles.stream().mapToDouble(CheckOrder.Single::weight).sum();
        return singles.size() < 2 ? Optional.empty() : Optional.of(CheckOrder.best(singles,
                space.weight(mask, circumstance) - checked, singles.size() == Long.bitCount(mask)));
    }

    /** The value with this test first; anything not under the limit once it is certain not to be under it. */
    private double value(long mask, int circumstance, int test, double limit) {
        double cost = space.cost(mask, circumstance, test);
        double sum = cost + boundAfter(mask, circumstance, test);
        for (int outcome = 0; outcome < space.outcomes(test) && sum < limit * (1 - ROUNDING) && !gaveUp; outcome++) {
            long left = space.after(mask, test, outcome);
            if (left != 0) {
                int after = space.after(circumstance, left, test, outcome);
                sum += value(left, after) - bound(left, after);
            }
        }
        return sum;
    }

    private double boundAfter(long mask, int circumstance, int test) {
        double sum = 0;
        outcomesLeft -= space.outcomes(test);
        for (int outcome = 0; outcome < space.outcomes(test); outcome++) {
            long left = space.after(mask, test, outcome);
            if (left != 0) {
                sum += bound(left, space.after(circumstance, left, test, outcome));
            }
        }
        return sum;
    }

    private double bound(long mask, int circumstance) {
        if ((mask & mask - 1) == 0 && space.bits().isPlain()) {
            return 0;
        }
        int known = bounds.find(mask, circumstance);
        if (known >= 0) {
            return bounds.value(known);
        }
        double bound = estimate.bound(mask, circumstance);
        if (!bounds.isFull()) {
            bounds.put(mask, circumstance, bound, -1);
        }
        return bound;
    }

    /** The tests, the lowest bound first: a good one early cuts off the others. */
    private int[] byPromise(long mask, int circumstance, long tests) {
        int count = Long.bitCount(tests);
        int[] order = new int[count];
        double[] promise = new double[count];
        int filled = 0;
        for (long rest = tests; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            double own = space.cost(mask, circumstance, test) + boundAfter(mask, circumstance, test);
            int place = filled++;
            for (; place > 0 && promise[place - 1] > own; place--) {
                promise[place] = promise[place - 1];
                order[place] = order[place - 1];
            }
            promise[place] = own;
            order[place] = test;
        }
        return order;
    }

    private TestTree best(long mask, int circumstance) {
        value(mask, circumstance);
        int test = values.test(values.find(mask, circumstance));
        if (test < 0) {
            return new TestTree.Left(space.bits().originals(mask));
        }
        Map<Integer, TestTree> next = new TreeMap<>();
        for (int outcome = 0; outcome < space.outcomes(test); outcome++) {
            long left = space.after(mask, test, outcome);
            if (left != 0) {
                next.put(outcome, best(left, space.after(circumstance, left, test, outcome)));
            }
        }
        return new TestTree.Ask(test, next);
    }

    private record Near(TestTree tree, double cost) {
    }

    private Near near(long mask, int circumstance, int depth) {
        long tests = space.admissible(mask, circumstance);
        if (tests == 0) {
            return new Near(new TestTree.Left(space.bits().originals(mask)), space.finish(mask, circumstance));
        }
        Optional<CheckOrder.Checks> checks = checks(mask, circumstance, tests);
        if (checks.isPresent()) {
            return near(mask, circumstance, depth, checks.get().first());
        }
        int[] order = byPromise(mask, circumstance, tests);
        int tried = depth < TRIED_DEPTH ? Math.min(TRIED, order.length) : 1;
        IntStream candidates = IntStream.range(0, tried).map(i -> order[i]);
        // The bound says little where few tests help; what a test tells for its cost is a second opinion.
        if (depth < TRIED_DEPTH) {
            candidates = IntStream.concat(candidates, IntStream.of(mostTelling(mask, circumstance, order))).distinct();
        }
        return candidates.mapToObj(test -> near(mask, circumstance, depth, test))
                .min(Comparator.comparingDouble(Near::cost)).orElseThrow();
    }

    /** The test with the largest gain of information for its cost. */
    private int mostTelling(long mask, int circumstance, int[] tests) {
        return IntStream.of(tests).boxed().max(Comparator.comparingDouble(test -> estimate.gain(mask, circumstance, test)
                / space.cost(mask, circumstance, test))).orElseThrow();
    }

    private Near near(long mask, int circumstance, int depth, int test) {
        double cost = space.cost(mask, circumstance, test);
        Map<Integer, TestTree> next = new HashMap<>();
        for (int outcome = 0; outcome < space.outcomes(test); outcome++) {
            long left = space.after(mask, test, outcome);
            if (left != 0) {
                Near after = near(left, space.after(circumstance, left, test, outcome), depth + 1);
                next.put(outcome, after.tree());
                cost += after.cost();
            }
        }
        return new Near(new TestTree.Ask(test, next), cost);
    }
}
