/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.sequence.SetUpCosts;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * What it takes to be ready for each test of an {@link AskingPart}, and to go on from it: set-ups by number.
 * The steps that follow the part are tried out: a set-up is right for them if whatever they need holds
 * on every way and everything is put back at the end.
 */
public final class PartSetUps implements SetUpCosts {
    /** Stands, in seconds, for what cannot be done: no order that needs it is ever the best. */
    public static final Exact NEVER = Exact.of(1_000_000_000_000L);

    private final AskingPart part;
    private final LinkedSteps tree;
    private final SetUpSimulator bench;
    private final StepTimes times;
    private final SetUpChanges changes;
    private final List<Integer> entries;
    private final Set<Integer> asWritten;
    private final List<List<Integer>> setUps = new ArrayList<>();
    private final Map<List<Integer>, Integer> numbers = new HashMap<>();
    private final Map<List<Object>, Boolean> right = new HashMap<>();
    /** By set-up and test, and by these and the outcome: the search asks for the same again and again. */
    private final Map<Integer, Optional<SetUpChanges.SetUpRoute>> ready = new HashMap<>();
    private final Map<Integer, Integer> next = new HashMap<>();

    /**
     * @param entries the step that each goal goes on to
     * @param asWritten steps that are only come to in a set-up in which the author comes to them
     */
    PartSetUps(AskingPart part, LinkedSteps tree, SetUpSimulator bench, StepTimes times, SetUpChanges changes, List<Integer> entries,
            Set<Integer> asWritten) {
        this.asWritten = asWritten;
        this.part = part;
        this.tree = tree;
        this.bench = bench;
        this.times = times;
        this.changes = changes;
        this.entries = entries;
        number(part.setUp());
    }

    private int number(List<Integer> setUp) {
        return numbers.computeIfAbsent(setUp, s -> {
            setUps.add(s);
            return setUps.size() - 1;
        });
    }

    private Step step(int test) {
        return tree.step(part.tests().get(test));
    }

    /** The changes before a test; absent where it cannot be got ready. */
    Optional<SetUpChanges.SetUpRoute> before(List<Integer> setUp, int test) {
        int step = part.tests().get(test);
        return changes.to(setUp, to -> asWritten.contains(step) ? part.testSetUps(step).contains(to)
                : bench.holds(to, part.needs(step)) && bench.holds(to, step(test).frame().needs()));
    }

    private Optional<SetUpChanges.SetUpRoute> ready(int setUp, int test) {
        return ready.computeIfAbsent(setUp << 6 | test, key -> before(setUps.get(setUp), test));
    }

    /** The changes before going on to this step; absent where no set-up that can be come to is right for it. */
    Optional<SetUpChanges.SetUpRoute> goingOn(List<Integer> setUp, int entry) {
        return changes.to(setUp, to -> asWritten.contains(entry) ? part.exitSetUps(entry).contains(to) : isRight(entry, to));
    }

    @Override
    public int start() {
        return 0;
    }

    @Override
    public Exact cost(int setUp, int test) {
        return ready(setUp, test).map(way -> way.time().plus(leastCost(test))).orElse(NEVER);
    }

    @Override
    public Exact leastCost(int test) {
        return times.of(step(test), "").expected();
    }

    @Override
    public int after(int setUp, int test, int outcome) {
        return next.computeIfAbsent((setUp << 6 | test) << 6 | outcome, key -> number(after(setUps.get(setUp), test, outcome)));
    }

    List<Integer> after(List<Integer> setUp, int test, int outcome) {
        return before(setUp, test).flatMap(way -> bench.after(way.to(), step(test), step(test).outcomes().get(outcome)))
                .orElse(setUp);
    }

    @Override
    public Exact finish(int setUp, int goal) {
        return goingOn(setUps.get(setUp), entries.get(goal)).map(SetUpChanges.SetUpRoute::time).orElse(NEVER);
    }

    @Override
    public long exposure(int setUp, int test) {
        return ready(setUp, test).map(way -> bench.exposed(setUps.get(setUp), way.to())).orElse(-1L);
    }

    /** The covers that come off for a test. */
    List<Name> opening(List<Integer> setUp, int test) {
        return before(setUp, test).map(way -> bench.opened(setUp, way.to())).orElse(List.of());
    }

    /** How many covers come off for a test. */
    int opened(int setUp, int test) {
        return ready(setUp, test).map(way -> bench.opened(setUps.get(setUp), way.to()).size()).orElse(0);
    }

    /** Whether all that can follow from this step on has what it needs and is put back in the end. */
    boolean isRight(int entry, List<Integer> setUp) {
        return right.computeIfAbsent(List.of(entry, setUp), key -> tryOut(entry, setUp));
    }

    private record StepInSetUp(int step, List<Integer> setUp) {
    }

    private boolean tryOut(int entry, List<Integer> setUp) {
        Set<StepInSetUp> seen = new HashSet<>(Set.of(new StepInSetUp(entry, setUp)));
        Deque<StepInSetUp> open = new ArrayDeque<>(seen);
        while (!open.isEmpty()) {
            StepInSetUp at = open.remove();
            if (tree.isConclusion(at.step()) && !bench.isPutBack(at.setUp())) {
                return false;
            }
            // Where the way leads back to what is being put in order, the result is checked as a whole later.
            boolean asksAgain = part.tests().contains(at.step()) || at.step() == part.root();
            for (LinkedSteps.Arrow arrow : asksAgain ? List.<LinkedSteps.Arrow>of() : tree.arrows(at.step())) {
                Optional<Set<List<Integer>>> after = after(at, arrow.outcome());
                if (after.isEmpty()) {
                    return false;
                }
                LinkedSteps.targets(arrow).forEach(to -> after.get().stream().map(one -> new StepInSetUp(to, one)).filter(seen::add)
                        .forEach(open::add));
            }
        }
        return true;
    }

    private Optional<Set<List<Integer>>> after(StepInSetUp at, Outcome outcome) {
        return bench.all(at.setUp(), tree.step(at.step()), outcome);
    }
}
