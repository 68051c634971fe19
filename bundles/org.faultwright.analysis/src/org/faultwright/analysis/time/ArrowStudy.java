/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Procedure;

/**
 * How often each arrow of a procedure is taken, over all its faults by their weights, and how long it takes until then. A result whose
 * share nobody states is taken as likely as {@link TimeStudy} takes it. Both are for reading on a chart: they are rounded, and decide nothing.
 */
public final class ArrowStudy {
    /** Mass that is left on its way below this share of a unit is not followed any more. */
    private static final double REST = 1e-9;
    /** A unit that still goes round after so many steps goes round for ever, as far as anybody at a bench is concerned. */
    private static final int MOST_STEPS = 5_000;

    /**
     * @param share   how often a unit comes this way, on average; more than 1 only where units come again and again
     * @param seconds from the beginning to the end of the step that the arrow leads away from, on the average of those that come this way
     */
    public record Figure(double share, double seconds) {
    }

    private record Place(String step, int outcome, boolean otherwise) {
    }

    private final Map<Place, double[]> sums = new HashMap<>();

    private ArrowStudy(Procedure procedure) {
        FaultWalks walks = FaultWalks.of(procedure);
        StepTimes times = new StepTimes(procedure.scope());
        for (int i = 0; i < walks.all().size(); i++) {
            FaultWalk walk = walks.all().get(i);
            if (walk.isComplete() && walk.states().size() > 0) {
                follow(walk, times, walks.table().weight(i).doubleValue());
            }
        }
    }

    public static ArrowStudy of(Procedure procedure) {
        return new ArrowStudy(procedure);
    }

    /** Of an arrow by which no fault of the table goes, or that there is not: nothing. */
    public Optional<Figure> of(String step, int outcome, boolean otherwise) {
        return Optional.ofNullable(sums.get(new Place(step, outcome, otherwise))).map(sum -> new Figure(sum[0], sum[1] / sum[0]));
    }

    /** Whether there is a fault to reckon with at all. */
    public boolean isEmpty() {
        return sums.isEmpty();
    }

    /** Sends one unit of the fault through its states, in parts: of each part its size, and its size times the time it has taken. */
    private void follow(FaultWalk walk, StepTimes times, double weight) {
        StateGraph all = walk.states();
        Duration shares = new Duration(all, times, move -> move.to().filter(walk::findsAt).isPresent());
        Map<Integer, double[]> on = new HashMap<>(Map.of(0, new double[] {weight, 0}));
        for (int steps = 0; steps < MOST_STEPS && !on.isEmpty(); steps++) {
            Map<Integer, double[]> next = new HashMap<>();
            on.forEach((state, part) -> {
                var chances = shares.shares(state);
                for (int m = 0; m < chances.size(); m++) {
                    StateGraph.Move move = all.moves(state).get(m);
                    double share = chances.get(m).doubleValue();
                    double size = part[0] * share;
                    if (size < REST) {
                        continue;
                    }
                    double time = part[1] * share + size * times.of(all.tree().step(all.state(state).step()), move.shown().arrow().key())
                            .expected().doubleValue();
                    add(sums, place(all, move), size, time);
                    move.to().ifPresent(to -> add(next, to, size, time));
                }
            });
            on = next;
        }
    }

    private static <K> void add(Map<K, double[]> to, K key, double size, double time) {
        double[] sum = to.computeIfAbsent(key, none -> new double[2]);
        sum[0] += size;
        sum[1] += time;
    }

    private static Place place(StateGraph all, StateGraph.Move move) {
        LinkedSteps.Arrow arrow = move.shown().arrow();
        boolean used = arrow.counter() >= 0 && all.state(move.from()).taken().get(arrow.counter()) >= arrow.atMost();
        var step = all.tree().step(arrow.from());
        return new Place(step.name().text(), step.outcomes().indexOf(arrow.outcome()), used);
    }
}
