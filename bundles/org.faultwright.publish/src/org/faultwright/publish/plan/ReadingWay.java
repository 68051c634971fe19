/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;

/**
 * The places on a card that a reader looks at on the way to a fault, one after the other: the steps of every routine on the way
 * too, and the step that was left for a routine again when its end sends the reader back.
 */
public final class ReadingWay {
    private final Plan plan;
    private final List<Placed> read = new ArrayList<>();

    private ReadingWay(Plan plan) {
        this.plan = plan;
    }

    /** Empty where no step finds the fault. Through a routine it is the shortest way to the end that the path leaves it by. */
    public static List<Placed> of(Plan plan, Likely.Case one) {
        ReadingWay way = new ReadingWay(plan);
        List<Placed> own = plan.sections().get(0).steps();
        one.path().forEach(on -> own.stream().filter(placed -> placed.step().name().text().equals(on.step())).findFirst()
                .ifPresent(placed -> way.read(placed, placed.step().outcomes().stream()
                        .filter(outcome -> outcome.key().equals(on.outcome())).findFirst(), 0)));
        return List.copyOf(way.read);
    }

    private void read(Placed placed, Optional<Outcome> taken, int depth) {
        read.add(placed);
        List<Placed> inside = plan.inside(placed);
        Optional<Name> target = taken.flatMap(Outcome::target);
        if (!inside.isEmpty()) {
            target.map(placed.run()::target).ifPresent(goal -> shortest(inside, goal)
                    .forEach(on -> read(on.placed(), Optional.of(on.by()), depth + 1)));
        } else if (plan.section(placed).isPresent() && taken.isPresent() && depth < 8) {
            shortest(plan.section(placed).get().steps(), new Run.Back(taken.get().key()))
                    .forEach(on -> read(on.placed(), Optional.of(on.by()), depth + 1));
            read.add(placed);
        }
    }

    private record On(Placed placed, Outcome by) {
    }

    /** From the first of the steps to the outcome of one that leads to the goal. */
    private static List<On> shortest(List<Placed> steps, Run.Target goal) {
        Map<Placed, On> before = new IdentityHashMap<>();
        Deque<Placed> open = new ArrayDeque<>(steps.stream().limit(1).toList());
        Set<Placed> met = java.util.Collections.newSetFromMap(new IdentityHashMap<>());
        met.addAll(open);
        while (!open.isEmpty()) {
            Placed from = open.remove();
            for (Outcome outcome : from.step().outcomes()) {
                Optional<Run.Target> to = outcome.target().map(from.run()::target);
                if (to.filter(target -> isSame(target, goal)).isPresent()) {
                    List<On> way = new ArrayList<>(List.of(new On(from, outcome)));
                    Stream.iterate(before.get(from), on -> on != null, on -> before.get(on.placed())).forEach(on -> way.add(0, on));
                    return way;
                }
                if (to.orElse(null) instanceof Run.To next && steps.contains(next.step()) && met.add(next.step())) {
                    before.put(next.step(), new On(from, outcome));
                    open.add(next.step());
                }
            }
        }
        return List.of();
    }

    private static boolean isSame(Run.Target target, Run.Target goal) {
        return target instanceof Run.To to && goal instanceof Run.To other ? to.step() == other.step() : target.equals(goal);
    }
}
