/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

/** The exact chain against LU decomposition in Apache Commons Math, and against the gambler's ruin. */
class MarkovChainTest {
    private static List<List<MarkovChain.Link>> random(Random random, int states) {
        List<List<MarkovChain.Link>> links = new ArrayList<>();
        for (int i = 0; i < states; i++) {
            int one = random.nextInt(states + 1);
            int other = random.nextInt(states + 1);
            Exact share = Exact.ratio(1 + random.nextInt(3), 5);
            // Every state leaves for the end now and then, so that no loop traps the chain.
            Exact ending = Exact.ratio(1, 10);
            links.add(List.of(new MarkovChain.Link(one, share.times(Exact.ratio(9, 10))),
                    new MarkovChain.Link(other, Exact.ONE.minus(share).times(Exact.ratio(9, 10))), new MarkovChain.Link(states, ending)));
        }
        links.add(List.of());
        return links;
    }

    @Test
    void should_expect_what_a_decomposed_matrix_gives() {
        Random random = new Random(8);
        for (int trial = 0; trial < 200; trial++) {
            int states = 1 + trial % 12;
            List<List<MarkovChain.Link>> links = random(random, states);
            List<Exact> worth = new ArrayList<>();
            for (int i = 0; i <= states; i++) {
                worth.add(i == states ? Exact.ZERO : Exact.of(random.nextInt(10)));
            }

            List<Optional<Exact>> expected = new MarkovChain(links).expected(worth);

            double[] solved = solved(links, worth, states);
            for (int i = 0; i < states; i++) {
                assertEquals(solved[i], expected.get(i).orElseThrow().doubleValue(), 1e-8, "trial " + trial);
            }
        }
    }

    private static double[] solved(List<List<MarkovChain.Link>> links, List<Exact> worth, int states) {
        RealMatrix matrix = new Array2DRowRealMatrix(states, states);
        double[] right = new double[states];
        for (int i = 0; i < states; i++) {
            matrix.addToEntry(i, i, 1);
            right[i] = worth.get(i).doubleValue();
            for (MarkovChain.Link link : links.get(i)) {
                if (link.to() < states) {
                    matrix.addToEntry(i, link.to(), -link.share().doubleValue());
                }
            }
        }
        return new LUDecomposition(matrix).getSolver().solve(new ArrayRealVector(right)).toArray();
    }

    /** Gambler's ruin: with a fair coin and 3 of 10 coins, ruin is 7/10 likely after 21 throws on average (Feller, vol. I, XIV). */
    @Test
    void should_ruin_the_gambler_as_the_textbook_says() {
        List<List<MarkovChain.Link>> links = new ArrayList<>();
        List<Exact> worth = new ArrayList<>();
        for (int coins = 0; coins <= 10; coins++) {
            links.add(coins == 0 || coins == 10 ? List.of() : List.of(new MarkovChain.Link(coins - 1, Exact.ratio(1, 2)),
                    new MarkovChain.Link(coins + 1, Exact.ratio(1, 2))));
            worth.add(coins == 0 || coins == 10 ? Exact.ZERO : Exact.ONE);
        }

        assertEquals(Optional.of(Exact.of("0.7")), new MarkovChain(links).endingIn(List.of(0)).get(3));
        assertEquals(Optional.of(Exact.of(21)), new MarkovChain(links).expected(worth).get(3));
    }

    @Test
    void should_have_no_expected_time_where_it_may_go_round_for_ever() {
        List<List<MarkovChain.Link>> links = List.of(List.of(new MarkovChain.Link(1, Exact.ratio(1, 2)), new MarkovChain.Link(2, Exact.ratio(1, 2))),
                List.of(new MarkovChain.Link(1, Exact.ONE)), List.of());

        assertEquals(Optional.empty(), new MarkovChain(links).expected(List.of(Exact.ONE, Exact.ONE, Exact.ZERO)).get(0));
        assertEquals(Optional.of(Exact.ratio(1, 2)), new MarkovChain(links).endingIn(List.of(2)).get(0));
    }

    /** Of a broken text: an outcome that stands there twice has its share twice. */
    @Test
    void should_know_nothing_of_a_loop_whose_shares_add_up_to_more_than_one() {
        List<List<MarkovChain.Link>> links = List.of(List.of(new MarkovChain.Link(1, Exact.ONE), new MarkovChain.Link(2, Exact.ONE)),
                List.of(new MarkovChain.Link(0, Exact.ONE)), List.of());

        assertEquals(Optional.empty(), new MarkovChain(links).expected(List.of(Exact.ONE, Exact.ONE, Exact.ZERO)).get(0));
        assertEquals(Optional.empty(), new MarkovChain(links).endingIn(List.of(2)).get(1));
    }
}
