/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * The order of independent checks by weight over cost (Kadane and Simon 1977; Smith 1956). The example with its
 * figures was constructed and all its 24 orders tried.
 */
class CheckOrderTest {
    private static final List<CheckOrder.Single> CHECKS = List.of(new CheckOrder.Single(0, 0.4, 5), new CheckOrder.Single(1, 0.3, 15),
            new CheckOrder.Single(2, 0.2, 1), new CheckOrder.Single(3, 0.1, 2));

    /** The expected cost of one order, summed fault by fault: each costs all checks up to its own. */
    private static double cost(List<CheckOrder.Single> checks, List<Integer> order, double unchecked, boolean oneIsLeft) {
        double spent = 0;
        double expected = 0;
        for (int i = 0; i < order.size(); i++) {
            CheckOrder.Single check = checks.get(order.get(i));
            spent += oneIsLeft && i == order.size() - 1 ? 0 : check.cost();
            expected += check.weight() * spent;
        }
        return expected + unchecked * spent;
    }

    @Test
    void should_put_the_largest_weight_over_cost_first() {
        CheckOrder.Checks best = CheckOrder.best(CHECKS, 0, false);

        assertEquals(2, best.first());
        assertEquals(10.3, best.cost(), 1e-12);
        assertEquals(10.3, cost(CHECKS, List.of(2, 0, 3, 1), 0, false), 1e-12);
    }

    @Test
    void should_cost_more_by_weight_alone_and_by_cost_alone() {
        assertEquals(14.5, cost(CHECKS, List.of(0, 1, 2, 3), 0, false), 1e-12);
        assertEquals(10.6, cost(CHECKS, List.of(2, 3, 0, 1), 0, false), 1e-12);
    }

    @Test
    void should_be_the_best_of_all_24_orders() {
        List<Double> costs = permutations(4).stream().map(order -> cost(CHECKS, order, 0, false)).sorted().toList();

        assertEquals(24, costs.size());
        assertEquals(10.3, costs.get(0), 1e-12);
        assertEquals(19.6, costs.get(23), 1e-12);
    }

    @Test
    void should_be_the_best_of_all_orders_of_checks_made_at_random() {
        Random random = new Random(4);
        for (int i = 0; i < 300; i++) {
            List<CheckOrder.Single> checks = IntStream.range(0, 2 + i % 5).mapToObj(c -> new CheckOrder.Single(c,
                    random.nextInt(20), 1 + random.nextInt(9))).toList();
            double unchecked = random.nextInt(10);
            boolean oneIsLeft = i % 2 == 0;
            double rest = oneIsLeft ? 0 : unchecked;
            double least = permutations(checks.size()).stream().mapToDouble(order -> cost(checks, order, rest, oneIsLeft)).min().orElseThrow();

            assertEquals(least, CheckOrder.best(checks, rest, oneIsLeft).cost(), 1e-9, checks + " and " + rest);
        }
    }

    private static List<List<Integer>> permutations(int size) {
        if (size == 0) {
            return List.of(List.of());
        }
        List<List<Integer>> all = new ArrayList<>();
        for (List<Integer> shorter : permutations(size - 1)) {
            for (int place = 0; place < size; place++) {
                List<Integer> longer = new ArrayList<>(shorter);
                longer.add(place, size - 1);
                all.add(longer);
            }
        }
        assertTrue(all.stream().distinct().count() == all.size());
        return all;
    }
}
