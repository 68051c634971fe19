/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * What stands where on a card: which routine is printed in the box of the step that performs it and which once for all, between
 * which steps that is, and in which order the branches of the tree follow one another.
 *
 * <p>It is searched for, so that the way to a fault turns the page as seldom as can be, each fault counting as often as it is met
 * and the likeliest three above all, on as few pages as can be. The search climbs from what is simplest, one change at a time, a
 * fixed number of times and by numbers that are always the same: one procedure has one card. It climbs again while that is not good
 * enough; a card that is far longer than six pages is left as is simplest. It reckons with A4; other paper has the same arrangement, so that a step has one number everywhere.
 *
 * @param order   the steps of the procedure
 * @param inPlace the steps whose routine is printed in their box
 * @param after   for each routine of the procedure's list the step of the procedure that it follows where it is printed apart; the last where not stated
 * @param fresh   whether the steps begin on a page of their own
 */
record StepArrangement(List<Step> order, Set<Step> inPlace, Map<String, Step> after, boolean fresh) {
    /** While a likely repair still turns the page too often, or the pages are too many. */
    private static final int MOST_SEARCHES = 8;
    private static final int TRIES = 4000;
    /** Where no step performs a routine only the order of the branches can change. */
    private static final int TRIES_OF_ORDER = 500;
    /**
     * A card that is longer than this from the start is not searched for: it comes to no six pages whatever is changed, and each try costs as much as the card
     * is long. Its steps stand in the order that is simplest.
     */
    private static final double MOST_PAGES_SEARCHED = 9;
    private static final double HOT = 1;
    private static final double COLD = 0.01;
    private static final int LIKELIEST = 3;
    private static final int MOST_TURNS = 4;
    private static final double MOST_PAGES = 6;
    /** Less than six by what the reckoning may be wrong by. */
    private static final double PAGES = 5.85;
    /** What counts as much as one more page turn of every repair: so many pages (the last one as it is filled and as it is printed), a page too many, a detour of every repair, a turn too many of a likely one; below, a proof that goes on over a page. */
    private static final double PAGE = 0.5;
    private static final double PAGE_TOO_MANY = 16;
    private static final double DETOUR = 0.1;
    private static final double TURN_TOO_MANY = 3;
    /** A proof that goes on over a page. */
    private static final double PARTED = 0.6;
    /** The room of steps is reckoned, not known: an arrangement is judged by a card that turns out longer too. */
    private static final double[] LONGER = { 0.995, 1.005, 1.02 };
    private static final double[] WHATEVER = { 0.985, 0.99, 0.995, 1, 1.005, 1.01, 1.015, 1.02, 1.025 };
    private static final double NEAR = 1.01;

    /** @param inner whether the step is in the box of another itself: there it has no line of its own, so it must have nothing to say */
    boolean isInPlace(Step step, boolean inner) {
        return inPlace.contains(step) && (!inner || PageEstimate.isPlain(step));
    }

    /** The same for another state of the text; absent where that has other steps, begins with another one or performs something else. */
    Optional<StepArrangement> kept(Procedure before, Procedure now) {
        List<StepGraph> own = graphs(before);
        List<StepGraph> others = graphs(now);
        if (!shape(before, own).equals(shape(now, others)) || !now.first().map(first -> first.name().text()).equals(
                order.stream().findFirst().map(first -> first.name().text()))) {
            return Optional.empty();
        }
        Map<Step, Step> steps = new IdentityHashMap<>();
        for (int i = 0; i < own.size(); i++) {
            for (int j = 0; j < own.get(i).steps().size(); j++) {
                steps.put(own.get(i).steps().get(j), others.get(i).steps().get(j));
            }
        }
        Set<Step> within = Collections.newSetFromMap(new IdentityHashMap<>());
        inPlace.forEach(step -> within.add(steps.get(step)));
        Map<String, Step> behind = new LinkedHashMap<>();
        after.forEach((routine, step) -> behind.put(routine, steps.get(step)));
        return Optional.of(new StepArrangement(order.stream().map(steps::get).toList(), within, behind, fresh));
    }

    private static List<StepGraph> graphs(Procedure procedure) {
        return Stream.<StepGraph>concat(Stream.of(procedure), PerformedRoutines.within(procedure, procedure.scope()).values().stream()).toList();
    }

    /** The steps by name with the routines that they perform. */
    private static List<List<String>> shape(Procedure procedure, List<StepGraph> graphs) {
        return graphs.stream().map(graph -> graph.steps().stream().map(step -> step.name().text()
                + procedure.scope().performedBy(step).map(routine -> " by " + routine.name().text()).orElse("")).toList()).toList();
    }

    /** Whether every step stands where it does in another arrangement of the same steps. */
    boolean isLike(StepArrangement other) {
        return fresh == other.fresh && order.equals(other.order) && inPlace.equals(other.inPlace) && after.equals(other.after);
    }

    static StepArrangement of(Procedure procedure, LikelyFaults likely) {
        return candidates(procedure, likely).next();
    }

    /** The best that was found, then what comes after it; each search is made when it is asked for. */
    static Iterator<StepArrangement> candidates(Procedure procedure, LikelyFaults likely) {
        PageEstimate model = new PageEstimate(procedure, likely);
        if (model.pages(model.simplest(), 1).length() > MOST_PAGES_SEARCHED) {
            return List.of(model.arrangement(model.simplest())).iterator();
        }
        return new Iterator<>() {
            private final List<Found> found = new ArrayList<>(List.of(new Found(model.simplest(), cost(model, model.simplest()))));
            private int searches;

            @Override
            public boolean hasNext() {
                return searches < MOST_SEARCHES || !found.isEmpty();
            }

            @Override
            public StepArrangement next() {
                boolean first = searches == 0;
                do {
                    PageEstimate.State from = model.simplest().with(searches % 2 == 1 && model.mayBeginFresh());
                    PageEstimate.State state = settled(model, cooled(model, new Random(searches), from));
                    found.add(new Found(state, cost(model, state)));
                    found.sort(Comparator.comparingDouble(Found::cost));
                    searches++;
                } while (first && searches < MOST_SEARCHES && isTooMuch(model, found.get(0).state()));
                return model.arrangement(found.remove(0).state());
            }
        };
    }

    private record Found(PageEstimate.State state, double cost) {
    }

    /**
     * By simulated annealing (Kirkpatrick, Gelatt, Vecchi, Science 220, 1983, p. 671), cooled down evenly on a logarithmic scale. Of what
     * comes near the best on the way that one is taken which stays good whatever the rooms turn out to be.
     */
    private static PageEstimate.State cooled(PageEstimate model, Random random, PageEstimate.State from) {
        PageEstimate.State state = from;
        double cost = cost(model, state, LONGER);
        PageEstimate.State best = state;
        double nearest = cost;
        double least = cost(model, state);
        int tries = model.performsRoutines() ? TRIES : TRIES_OF_ORDER;
        for (int i = 0; i < tries; i++) {
            double heat = HOT * Math.pow(COLD / HOT, (double) i / tries);
            PageEstimate.State next = model.changed(state, random);
            double other = next == state ? cost : cost(model, next, LONGER);
            if (next != state && other < nearest * NEAR) {
                double whatever = cost(model, next);
                best = whatever < least ? next : best;
                least = Math.min(least, whatever);
            }
            nearest = Math.min(nearest, other);
            if (other <= cost || random.nextDouble() < Math.exp((cost - other) / heat)) {
                state = next;
                cost = other;
            }
        }
        return best;
    }

    /** Changed one thing at a time for as long as that makes it better. */
    private static PageEstimate.State settled(PageEstimate model, PageEstimate.State from) {
        PageEstimate.State best = from;
        double least = cost(model, best);
        double before;
        do {
            before = least;
            for (PageEstimate.State next : (Iterable<PageEstimate.State>) model.neighbours(best)::iterator) {
                double cost = cost(model, next);
                if (cost < least) {
                    best = next;
                    least = cost;
                }
            }
        } while (least < before);
        return best;
    }

    private static boolean isTooMuch(PageEstimate model, PageEstimate.State state) {
        PageEstimate.Pages pages = model.pages(state, 1);
        int[] turns = pages.turns();
        return pages.length() > MOST_PAGES || IntStream.range(0, Math.min(LIKELIEST, turns.length)).anyMatch(repair -> turns[repair] > MOST_TURNS);
    }

    /** Whatever its steps turn out to need: the less the better. */
    static double cost(PageEstimate model, PageEstimate.State state) {
        return cost(model, state, WHATEVER);
    }

    private static double cost(PageEstimate model, PageEstimate.State state, double[] lengths) {
        PageEstimate.Setting set = model.set(state);
        double detours = 0;
        for (int i = 0; i < model.repairs(); i++) {
            detours += model.weight(i) * set.detours(i);
        }
        double cost = 0;
        for (double longer : lengths) {
            PageEstimate.Pages pages = set.pages(longer);
            cost += PAGE * (pages.length() + Math.ceil(pages.length())) / 2 + PAGE_TOO_MANY * Math.max(0, pages.length() - PAGES) + PARTED * pages.parted();
            for (int i = 0; i < pages.turns().length; i++) {
                cost += model.weight(i) * pages.turns()[i] + (i < LIKELIEST ? TURN_TOO_MANY * Math.max(0, pages.turns()[i] - MOST_TURNS) : 0);
            }
        }
        return DETOUR * detours + cost / lengths.length;
    }
}
