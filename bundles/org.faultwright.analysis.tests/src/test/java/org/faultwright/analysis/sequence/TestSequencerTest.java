/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

class TestSequencerTest {
    /**
     * The example of Pattipati and Alexandridis, IEEE Transactions on Systems, Man and Cybernetics 20(4), 1990: the
     * table from memory, its optimum computed again.
     */
    private static final List<Exact> WEIGHTS = exact("0.70 0.01 0.02 0.10 0.05 0.12");
    private static final String[] ROWS = {"00000", "01001", "00110", "10011", "11000", "11110"};

    private static List<Exact> exact(String numbers) {
        return Stream.of(numbers.split(" ")).map(Exact::of).toList();
    }

    private static TestProblem published() {
        int[][] results = new int[5][ROWS.length];
        for (int fault = 0; fault < ROWS.length; fault++) {
            for (int test = 0; test < 5; test++) {
                results[test][fault] = ROWS[fault].charAt(test) - '0';
            }
        }
        return TestProblem.certain(WEIGHTS, Collections.nCopies(5, Exact.ONE), results);
    }

    @Test
    void should_find_the_published_optimum() {
        TestSequencer.Result result = TestSequencer.solve(published());

        assertTrue(result.isBest());
        assertEquals(Exact.of("2.18"), result.cost());
        assertEquals(Exact.of("2.18"), result.bound());
        assertEquals(1, ((TestTree.Ask) result.tree()).test(), "the second test comes first");
    }

    @Test
    void should_state_the_huffman_bound_where_it_does_not_search() {
        TestSequencer.Result result = TestSequencer.solve(published(), 0);

        assertFalse(result.isBest());
        assertEquals(1.59, result.bound().doubleValue(), 1e-12);
        assertTrue(result.cost().compareTo(Exact.of("2.18")) >= 0, result.cost().toString());
    }

    /** Independent single-fault checks p .4 .3 .2 .1, c 5 15 1 2: with the last one left out, all orders tried. */
    @Test
    void should_order_single_checks_as_every_order_tried_does() {
        TestProblem checks = TestProblem.certain(exact("0.4 0.3 0.2 0.1"), exact("5 15 1 2"),
                new int[][] {{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}});

        assertEquals(new EveryOrder(checks).leastCost(), TestSequencer.solve(checks).cost());
    }

    @Test
    void should_be_as_good_as_the_best_of_all_orders_of_certain_tests() {
        RandomProblems random = new RandomProblems(20260117);
        for (int i = 0; i < 3000; i++) {
            assertBest(random.certain(2 + i % 5, 1 + i % 6, 2 + i % 3), "certain " + i);
        }
    }

    @Test
    void should_be_as_good_as_the_best_of_all_orders_of_single_checks() {
        RandomProblems random = new RandomProblems(7);
        for (int i = 0; i < 1000; i++) {
            assertBest(random.checks(2 + i % 5, 1 + i % 6), "checks " + i);
        }
    }

    @Test
    void should_be_as_good_as_the_best_of_all_orders_with_doubts_goals_and_set_ups() {
        RandomProblems random = new RandomProblems(99);
        for (int i = 0; i < 4000; i++) {
            assertBest(random.anything(2 + i % 4, 1 + i % 5), "anything " + i);
        }
    }

    private static void assertBest(TestProblem problem, String which) {
        TestSequencer.Result result = TestSequencer.solve(problem);
        EveryOrder every = new EveryOrder(problem);

        assertTrue(result.isBest(), which);
        assertEquals(every.leastCost().doubleValue(), result.cost().doubleValue(), 1e-9, which);
        assertEquals(result.cost(), every.costOf(result.tree()), which);
    }

    @Test
    void should_never_be_under_the_bound_nor_under_the_best_when_it_is_near() {
        RandomProblems random = new RandomProblems(5);
        for (int i = 0; i < 1000; i++) {
            TestProblem problem = random.anything(2 + i % 4, 1 + i % 5);

            TestSequencer.Result near = TestSequencer.solve(problem, 0);
            TestSequencer.Result best = TestSequencer.solve(problem);

            assertTrue(near.bound().doubleValue() <= best.cost().doubleValue() + 1e-9, "bound of " + i);
            assertTrue(near.cost().compareTo(best.cost()) >= 0, "near " + i);
            assertEquals(near.cost(), new EveryOrder(problem).costOf(near.tree()), "near " + i);
        }
    }

    @Test
    void should_give_a_near_order_with_its_gap_for_a_table_beyond_an_exact_search() {
        TestProblem large = new RandomProblems(3).certain(40, 60, 2);

        TestSequencer.Result result = TestSequencer.solve(large, 2000);

        assertFalse(result.isBest());
        assertTrue(result.bound().signum() > 0 && result.bound().compareTo(result.cost()) < 0);
        assertEquals(result.cost(), new EveryOrder(large).costOf(result.tree()));
    }

    @Test
    void should_answer_for_nothing_to_ask_and_nothing_to_find() {
        TestProblem none = TestProblem.certain(List.of(), List.of(), new int[0][]);
        TestProblem one = TestProblem.certain(List.of(Exact.ONE), List.of(Exact.ONE), new int[][] {{0}});

        assertEquals(new TestTree.Left(List.of()), TestSequencer.solve(none).tree());
        assertEquals(new TestTree.Left(List.of(0)), TestSequencer.solve(one).tree());
    }

    /** A costly look from outside comes before a cheap one inside: safety first, whatever it costs. */
    @Test
    void should_not_open_anything_as_long_as_a_look_from_outside_helps() {
        TestProblem certain = TestProblem.certain(exact("0.5 0.5"), exact("60 1"), new int[][] {{0, 1}, {0, 1}});
        SetUpCosts opening = new Opening();
        TestProblem problem = new TestProblem(certain.weights(), certain.goals(), certain.tests(), opening);

        assertEquals(0, ((TestTree.Ask) TestSequencer.solve(problem).tree()).test());
        assertEquals(1, ((TestTree.Ask) TestSequencer.solve(certain).tree()).test());
    }

    /** The second test needs the cover off. */
    private static final class Opening implements SetUpCosts {
        @Override
        public int start() {
            return 0;
        }

        @Override
        public Exact cost(int setUp, int test) {
            return leastCost(test);
        }

        @Override
        public Exact leastCost(int test) {
            return Exact.of(test == 0 ? 60 : 1);
        }

        @Override
        public int after(int setUp, int test, int outcome) {
            return setUp | test;
        }

        @Override
        public Exact finish(int setUp, int goal) {
            return Exact.ZERO;
        }

        @Override
        public long exposure(int setUp, int test) {
            return test & ~setUp;
        }
    }
}
