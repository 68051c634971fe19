/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.trace.MarkovChain;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * Expected and worst time from the beginning of an exploration to where it ends. A result whose share
 * nobody states is taken as equally likely among those from which the goal can still be reached, or among
 * all where none leads there.
 */
public final class Duration {
    private final StateGraph all;
    private final StepTimes times;
    private final BitSet towardsGoal;
    private final Predicate<StateGraph.Move> goal;

    /** @param goal the moves that reach what the time is counted to */
    public Duration(StateGraph all, StepTimes times, Predicate<StateGraph.Move> goal) {
        this.all = all;
        this.times = times;
        this.goal = goal;
        this.towardsGoal = towardsGoal();
    }

    private boolean isUsable() {
        return all.size() > 0 && all.isComplete();
    }

    /**
     * In seconds.
     *
     * @param seconds absent where it may go on for ever
     * @param assumed whether shares were taken that nobody states
     */
    record Expected(Optional<Exact> seconds, boolean assumed) {
    }

    Expected expected() {
        boolean[] assumed = new boolean[1];
        Optional<Exact> seconds = isUsable() ? expected(assumed) : Optional.empty();
        return new Expected(seconds, assumed[0]);
    }

    /** In seconds, with the longest way; the time is absent where nothing bounds it. */
    record Worst(Optional<Exact> seconds, List<PathStep> path) {
    }

    Worst worst() {
        List<PathStep> path = new ArrayList<>();
        Optional<Exact> seconds = isUsable() ? worst(path) : Optional.empty();
        return new Worst(seconds, List.copyOf(path));
    }

    private BitSet towardsGoal() {
        List<List<Integer>> back = IntStream.range(0, all.size()).<List<Integer>>mapToObj(i -> new ArrayList<>())
                .toList();
        BitSet reached = new BitSet();
        List<Integer> open = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            int from = i;
            all.moves(i).forEach(move -> move.to().ifPresent(to -> back.get(to).add(from)));
            if (all.moves(i).stream().anyMatch(goal)) {
                reached.set(i);
                open.add(i);
            }
        }
        for (int next = 0; next < open.size(); next++) {
            for (int before : back.get(open.get(next))) {
                if (!reached.get(before)) {
                    reached.set(before);
                    open.add(before);
                }
            }
        }
        return reached;
    }

    private boolean leadsOn(StateGraph.Move move) {
        return goal.test(move) || move.to().map(towardsGoal::get).orElse(false);
    }

    /** The moves of a state that count, with their shares. */
    private List<Exact> shares(int state, boolean[] shared) {
        List<StateGraph.Move> moves = all.moves(state);
        if (moves.stream().allMatch(move -> move.shown().share().isPresent())) {
            return moves.stream().map(move -> move.shown().share().orElseThrow()).toList();
        }
        List<Boolean> counts = moves.stream().map(this::leadsOn).toList();
        long some = counts.stream().filter(c -> c).count();
        long divisor = some == 0 ? moves.size() : some;
        shared[0] |= divisor > 1;
        return counts.stream().map(c -> c || some == 0 ? Exact.ratio(1, divisor) : Exact.ZERO).toList();
    }

    /** The share of each move of a state; they add up to one where there is a move. */
    List<Exact> shares(int state) {
        return shares(state, new boolean[1]);
    }

    private Optional<Exact> expected(boolean[] shared) {
        int end = all.size();
        List<List<MarkovChain.Link>> links = new ArrayList<>();
        List<Exact> worth = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            List<Exact> shares = shares(i, shared);
            List<MarkovChain.Link> own = new ArrayList<>();
            Exact time = Exact.ZERO;
            for (int m = 0; m < shares.size(); m++) {
                StateGraph.Move move = all.moves(i).get(m);
                own.add(new MarkovChain.Link(move.to().orElse(end), shares.get(m)));
                time = time.plus(shares.get(m).times(time(move).expected()));
            }
            links.add(own);
            worth.add(all.moves(i).isEmpty() ? times.of(step(i), "").expected() : time);
        }
        links.add(List.of());
        worth.add(Exact.ZERO);
        return new MarkovChain(links).expected(worth).get(0);
    }

    /** How likely one of these states is come to, by the shares that the expected time rests on. */
    public Optional<Exact> chanceOf(IntPredicate wanted) {
        List<List<MarkovChain.Link>> links = new ArrayList<>();
        List<Integer> ends = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            List<MarkovChain.Link> own = new ArrayList<>();
            if (wanted.test(i)) {
                ends.add(i);
            } else {
                List<Exact> shares = shares(i, new boolean[1]);
                for (int m = 0; m < shares.size(); m++) {
                    own.add(new MarkovChain.Link(all.moves(i).get(m).to().orElse(all.size()), shares.get(m)));
                }
            }
            links.add(own);
        }
        links.add(List.of());
        return all.size() == 0 ? Optional.empty() : new MarkovChain(links).endingIn(ends).get(0);
    }

    private StepTimes.Time time(StateGraph.Move move) {
        return times.of(step(move.from()), move.shown().arrow().key());
    }

    private Step step(int state) {
        return all.tree().step(all.state(state).step());
    }

    /** The longest way to an end that counts; to any end where no way leads to the goal. */
    private Optional<Exact> worst(List<PathStep> path) {
        boolean reachable = towardsGoal.get(0);
        int[][] next = IntStream.range(0, all.size()).mapToObj(i -> all.moves(i).stream()
                .flatMap(move -> move.to().stream()).filter(to -> !reachable || towardsGoal.get(to))
                .mapToInt(Integer::intValue).toArray()).toArray(int[][]::new);
        Exact[] longest = new Exact[all.size()];
        StateGraph.Move[] by = new StateGraph.Move[all.size()];
        for (List<Integer> component : MarkovChain.components(next)) {
            int state = component.get(0);
            if (component.size() > 1 || IntStream.of(next[state]).anyMatch(to -> to == state)) {
                return Optional.empty();
            }
            longest[state] = all.moves(state).isEmpty() ? times.of(step(state), "").expected() : Exact.ZERO;
            for (StateGraph.Move move : all.moves(state)) {
                boolean counts = !reachable || leadsOn(move);
                Optional<Exact> own = time(move).worst();
                if (counts && own.isEmpty()) {
                    return Optional.empty();
                }
                Exact whole = counts ? own.get().plus(move.to().filter(to -> longest[to] != null)
                        .map(to -> longest[to]).orElse(Exact.ZERO)) : Exact.ZERO;
                if (counts && (by[state] == null || whole.compareTo(longest[state]) > 0)) {
                    longest[state] = whole;
                    by[state] = move;
                }
            }
        }
        follow(by, path);
        return Optional.of(longest[0]);
    }

    private void follow(StateGraph.Move[] by, List<PathStep> path) {
        for (Optional<Integer> at = Optional.of(0); at.isPresent();) {
            StateGraph.Move move = by[at.get()];
            Step step = step(at.get());
            path.add(new PathStep(step.name().text(), move == null ? "" : move.shown().arrow().key(),
                    move == null ? step.name().at() : move.shown().arrow().outcome().at()));
            at = move == null ? Optional.empty() : move.to();
        }
    }
}
