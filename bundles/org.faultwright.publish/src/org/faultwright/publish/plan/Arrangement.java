/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/**
 * What stands where on a card: which routine is printed in the box of the step that performs it and which once for all, between
 * which steps that is, and in which order the branches of the tree follow one another.
 *
 * <p>It is searched for, so that the way to a fault turns the page as seldom as can be, each fault counting as often as it is met
 * and the likeliest three above all, on as few pages as can be. The search climbs from what is simplest, one change at a time, a
 * fixed number of times and by numbers that are always the same: one procedure has one card. It climbs more than once, and the
 * best of all is taken. It reckons with A4; other paper has the same arrangement, so that a step has one number everywhere.
 *
 * @param order   the steps of the procedure
 * @param inPlace the steps whose routine is printed in their box
 * @param pageStarts the steps, not in the box of another, that begin a page of A4
 * @param after   for each routine of the procedure's list the step of the procedure that it follows where it is printed apart; the last where not stated
 */
record Arrangement(List<Step> order, Set<Step> inPlace, Map<String, Step> after, Set<Step> pageStarts) {
    private static final int SEARCHES = 2;
    /** Where a likely repair still turns the page too often. */
    private static final int MOST_SEARCHES = 8;
    private static final int TRIES = 2000;
    private static final double HOT = 1;
    private static final double COLD = 0.01;
    private static final int LIKELIEST = 3;
    private static final int MOST_TURNS = 4;
    /** Six, but for what the reckoning may be wrong by. */
    private static final double MOST_PAGES = 5.75;
    /** What counts as much as one more page turn of every repair: so many pages, a page too many, a turn too many of a likely repair. */
    private static final double PAGE = 0.5;
    private static final double PAGE_TOO_MANY = 6;
    private static final double TURN_TOO_MANY = 1.5;
    /** The room of steps is reckoned, not known: an arrangement is judged by a card that turns out longer too. */
    private static final double[] LONGER = { 1, 1.015, 1.03 };
    private static final double[] WHATEVER = { 0.99, 0.995, 1, 1.005, 1.01, 1.015, 1.02, 1.025, 1.03, 1.035, 1.04 };
    private static final double NEAR = 1.01;

    /** @param inner whether the step is in the box of another itself: there it has no line of its own, so it must have nothing to say */
    boolean isInPlace(Step step, boolean inner) {
        return inPlace.contains(step) && (!inner || CardModel.isPlain(step));
    }

    /**
     * By simulated annealing (Kirkpatrick, Gelatt, Vecchi, Science 220, 1983, p. 671), cooled down evenly on a logarithmic scale. Of what
     * comes near the best on the way that one is taken which stays good whatever the rooms turn out to be.
     */
    static Arrangement of(Procedure procedure, Likely likely) {
        CardModel model = new CardModel(procedure, likely);
        CardModel.State best = model.simplest();
        double least = cost(model, best);
        double nearest = cost(model, best, LONGER);
        for (int search = 0; search < SEARCHES || search < MOST_SEARCHES && turnsTooOften(model, best); search++) {
            Random random = new Random(search);
            CardModel.State state = model.simplest();
            double cost = cost(model, state, LONGER);
            for (int i = 0; i < TRIES; i++) {
                double heat = HOT * Math.pow(COLD / HOT, (double) i / TRIES);
                CardModel.State next = model.changed(state, random);
                double other = next == state ? cost : cost(model, next, LONGER);
                boolean near = next != state && other < nearest * NEAR;
                nearest = Math.min(nearest, other);
                if (near) {
                    double whatever = cost(model, next);
                    best = whatever < least ? next : best;
                    least = Math.min(least, whatever);
                }
                if (other <= cost || random.nextDouble() < Math.exp((cost - other) / heat)) {
                    state = next;
                    cost = other;
                }
            }
        }
        return model.arrangement(best);
    }

    private static boolean turnsTooOften(CardModel model, CardModel.State state) {
        int[] turns = model.pages(state, 1).turns();
        return IntStream.range(0, Math.min(LIKELIEST, turns.length)).anyMatch(repair -> turns[repair] > MOST_TURNS);
    }

    /** Whatever its steps turn out to need: the less the better. */
    static double cost(CardModel model, CardModel.State state) {
        return cost(model, state, WHATEVER);
    }

    private static double cost(CardModel model, CardModel.State state, double[] lengths) {
        double cost = 0;
        for (double longer : lengths) {
            CardModel.Pages pages = model.pages(state, longer);
            cost += PAGE * pages.length() + PAGE_TOO_MANY * Math.max(0, pages.length() - MOST_PAGES);
            for (int i = 0; i < pages.turns().length; i++) {
                cost += model.weight(i) * pages.turns()[i] + (i < LIKELIEST ? TURN_TOO_MANY * Math.max(0, pages.turns()[i] - MOST_TURNS) : 0);
            }
        }
        return cost / lengths.length;
    }
}
