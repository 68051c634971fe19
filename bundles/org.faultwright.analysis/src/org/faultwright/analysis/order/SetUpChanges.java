/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * How a set-up is changed into another: by the acts and routines of the procedure that do nothing but
 * switch, open and close. The cheapest way in time (Dijkstra 1959).
 */
public final class SetUpChanges {
    private static final int MOST_SET_UPS = 3_000;

    /** A step that changes the set-up. @param goesOn the outcome after which the procedure goes on */
    public record ChangingStep(Step step, Outcome goesOn) {
    }

    /** A way from one set-up to another. */
    public record SetUpRoute(List<Integer> from, List<ChangingStep> movers, Exact time, List<Integer> to) {
    }

    private final SetUpSimulator bench;
    private final StepTimes times;
    private final List<ChangingStep> movers;
    private final BiPredicate<Step, List<Integer>> allowed;
    private final Map<List<Integer>, List<SetUpRoute>> known = new HashMap<>();

    /** @param movers of equally quick ones the first is taken */
    public SetUpChanges(SetUpSimulator bench, StepTimes times, List<ChangingStep> movers) {
        this(bench, times, movers, (step, setUp) -> true);
    }

    /** @param allowed whether a step may be come to in a set-up, besides what it says that it needs */
    public SetUpChanges(SetUpSimulator bench, StepTimes times, List<ChangingStep> movers, BiPredicate<Step, List<Integer>> allowed) {
        this.allowed = allowed;
        this.bench = bench;
        this.times = times;
        this.movers = movers;
    }

    /**
     * The step as one that only changes the set-up: an act with one outcome that leaves something and neither repairs
     * nor wipes, or a routine all of whose other exits hand the unit on.
     */
    static Optional<ChangingStep> mover(Step step, FaultWalks walks) {
        if (walks.judgesRepair(step) || step.frame().confirms().isPresent()) {
            return Optional.empty();
        }
        if (step instanceof Step.Do task) {
            return task.outcomes().size() == 1 && task.erases().isEmpty() && !task.frame().sets().isEmpty()
                    ? Optional.of(new ChangingStep(task, task.outcomes().get(0))) : Optional.empty();
        }
        List<Outcome> goingOn = step.outcomes().stream().filter(outcome -> step.outcomes().size() == 1
                || !walks.endsWithoutFinding(outcome)).toList();
        return step instanceof Step.Perform && goingOn.size() == 1 ? Optional.of(new ChangingStep(step, goingOn.get(0)))
                : Optional.empty();
    }

    /** The quickest way to a set-up as wanted; with no movers where it is so already. */
    public Optional<SetUpRoute> to(List<Integer> from, Predicate<List<Integer>> wanted) {
        return known.computeIfAbsent(from, this::ways).stream().filter(way -> wanted.test(way.to())).findFirst();
    }

    /** The quickest way to each set-up that can be come to, the quickest first. */
    private List<SetUpRoute> ways(List<Integer> from) {
        List<SetUpRoute> settled = new ArrayList<>();
        Set<List<Integer>> done = new HashSet<>();
        PriorityQueue<SetUpRoute> open = new PriorityQueue<>(Comparator.comparing(SetUpRoute::time)
                .thenComparingInt(way -> way.movers().size())
                .thenComparingInt(way -> way.movers().stream().mapToInt(movers::indexOf).sum()));
        open.add(new SetUpRoute(from, List.of(), Exact.ZERO, from));
        while (!open.isEmpty() && settled.size() < MOST_SET_UPS) {
            SetUpRoute way = open.remove();
            if (!done.add(way.to())) {
                continue;
            }
            settled.add(way);
            for (ChangingStep mover : movers) {
                if (!allowed.test(mover.step(), way.to())) {
                    continue;
                }
                bench.after(way.to(), mover.step(), mover.goesOn()).filter(to -> !done.contains(to)).ifPresent(to -> {
                    List<ChangingStep> longer = new ArrayList<>(way.movers());
                    longer.add(mover);
                    open.add(new SetUpRoute(from, List.copyOf(longer), way.time().plus(time(mover)), to));
                });
            }
        }
        return settled;
    }

    Exact time(ChangingStep mover) {
        return times.of(mover.step(), mover.goesOn().key()).expected();
    }
}
