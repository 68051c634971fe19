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
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/**
 * The order of independent checks by weight over cost (Kadane and Simon 1977; Smith 1956). The example with its
 * figures was constructed and all its 24 orders tried.
 */
class CheckOrderTest {
    private static final List<CheckOrder.Check> CHECKS = List.of(check("0.4", "5"), check("0.3", "15"), check("0.2", "1"),
            check("0.1", "2"));

    private static CheckOrder.Check check(String weight, String cost) {
        return new CheckOrder.Check(Exact.of(weight), Exact.of(cost));
    }

    @Test
    void should_put_the_largest_weight_over_cost_first() {
        assertEquals(List.of(2, 0, 3, 1), CheckOrder.best(CHECKS));
        assertEquals(Exact.of("10.3"), CheckOrder.cost(CHECKS, CheckOrder.best(CHECKS)));
    }

    @Test
    void should_cost_more_by_weight_alone_and_by_cost_alone() {
        assertEquals(Exact.of("14.5"), CheckOrder.cost(CHECKS, List.of(0, 1, 2, 3)));
        assertEquals(Exact.of("10.6"), CheckOrder.cost(CHECKS, List.of(2, 3, 0, 1)));
    }

    @Test
    void should_be_the_best_of_all_24_orders() {
        List<Exact> costs = permutations(4).stream().map(order -> CheckOrder.cost(CHECKS, order)).sorted().toList();

        assertEquals(24, costs.size());
        assertEquals(Exact.of("10.3"), costs.get(0));
        assertEquals(Exact.of("19.6"), costs.get(23));
    }

    @Test
    void should_be_the_best_of_all_orders_of_checks_made_at_random() {
        Random random = new Random(4);
        for (int i = 0; i < 300; i++) {
            List<CheckOrder.Check> checks = IntStream.range(0, 1 + i % 6).mapToObj(c -> new CheckOrder.Check(
                    Exact.of(random.nextInt(20)), Exact.of(1 + random.nextInt(9)))).toList();
            Exact least = permutations(checks.size()).stream().map(order -> CheckOrder.cost(checks, order))
                    .min(Exact::compareTo).orElseThrow();

            assertEquals(least, CheckOrder.cost(checks, CheckOrder.best(checks)), checks.toString());
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
