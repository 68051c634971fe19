/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.trace.FaultBehaviour;
import org.faultwright.analysis.trace.MarkovChain;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Exact;

/** How long it takes from each step to an end of its procedure or routine, by the times that the steps state. */
public final class TimeToGo {
    /**
     * In seconds, the step itself included.
     *
     * @param least by the shortest way
     * @param most  by the longest way with every repeat taken; absent where nothing bounds it
     */
    public record Range(Exact least, Optional<Exact> most) {
    }

    private final StepTimes times;
    private final StateGraph all;
    private final Map<Integer, Range> ranges = new HashMap<>();

    private TimeToGo(StepGraph graph, Scope scope) {
        this.times = new StepTimes(scope);
        LinkedSteps tree = new LinkedSteps(graph);
        this.all = new StateGraph(tree, FaultBehaviour.anything(tree));
        Map<Integer, Exact> least = least();
        Map<Integer, Exact> most = all.isComplete() ? most() : Map.of();
        for (int state = 0; state < all.size(); state++) {
            // Of the states at a step the first is that of the shortest way there, with the fewest repeats used up.
            if (least.containsKey(state)) {
                ranges.putIfAbsent(all.state(state).step(), new Range(least.get(state), Optional.ofNullable(most.get(state))));
            }
        }
    }

    /** @param graph the procedure, or a routine that counts to its exits */
    public static TimeToGo of(StepGraph graph, Scope scope) {
        return new TimeToGo(graph, scope);
    }

    /** Absent for a step that cannot be come to, and where no end can be reached. */
    public Optional<Range> from(Step step) {
        return all.tree().number(step.name().text()).isEmpty() ? Optional.empty()
                : Optional.ofNullable(ranges.get(all.tree().number(step.name().text()).getAsInt()));
    }

    private StepTimes.Time time(StateGraph.Move move) {
        return times.of(all.tree().step(all.state(move.from()).step()), move.shown().arrow().key());
    }

    /** Shortest ways backwards from every end, after Dijkstra. */
    private Map<Integer, Exact> least() {
        record Reached(int state, Exact seconds) {
        }
        Map<Integer, List<StateGraph.Move>> into = new HashMap<>();
        PriorityQueue<Reached> open = new PriorityQueue<>(Comparator.comparing(Reached::seconds));
        for (int state = 0; state < all.size(); state++) {
            for (StateGraph.Move move : all.moves(state)) {
                move.to().ifPresentOrElse(to -> into.computeIfAbsent(to, none -> new ArrayList<>()).add(move),
                        () -> open.add(new Reached(move.from(), time(move).expected())));
            }
            if (all.isEnding(state)) {
                open.add(new Reached(state, Exact.ZERO));
            }
        }
        Map<Integer, Exact> least = new HashMap<>();
        while (!open.isEmpty()) {
            Reached next = open.remove();
            if (least.putIfAbsent(next.state(), next.seconds()) == null) {
                into.getOrDefault(next.state(), List.of()).forEach(move ->
                        open.add(new Reached(move.from(), next.seconds().plus(time(move).expected()))));
            }
        }
        return least;
    }

    /** Longest ways, component after component; none where a way may go round for ever. */
    private Map<Integer, Exact> most() {
        int[][] next = IntStream.range(0, all.size()).mapToObj(i -> all.moves(i).stream().flatMap(move -> move.to().stream())
                .mapToInt(Integer::intValue).toArray()).toArray(int[][]::new);
        Map<Integer, Exact> most = new HashMap<>();
        for (List<Integer> component : MarkovChain.components(next)) {
            int state = component.get(0);
            boolean round = component.size() > 1 || IntStream.of(next[state]).anyMatch(to -> to == state);
            boolean bounded = !round && all.moves(state).stream().allMatch(move -> time(move).worst().isPresent()
                    && (move.to().isEmpty() || most.containsKey(move.to().get())));
            if (bounded) {
                most.put(state, all.moves(state).stream().map(move -> time(move).worst().orElseThrow()
                        .plus(move.to().map(most::get).orElse(Exact.ZERO))).reduce(Exact.ZERO, Exact::max));
            }
        }
        return most;
    }
}
