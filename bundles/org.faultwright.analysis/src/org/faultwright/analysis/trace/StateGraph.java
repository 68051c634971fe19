/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.quantity.Exact;

/**
 * Everything one kind of unit can go through in a tree: its states (step, repairs done, repeats
 * counted) and the moves between them. Exact; the states are numbered in the order of the shortest
 * way to them.
 */
public final class StateGraph {
    /** More states than any procedure for a bench needs; a text that has more is left unfinished. */
    static final int MOST_STATES = 40_000;

    /** What a unit shows at a step. */
    interface Behaviour {
        /** The outcomes it can show there. @param done the repairs done so far, one bit each */
        List<ShownResult> at(int step, int done);

        /** The repairs done once this step is behind. */
        int doneAfter(int step, int done);
    }

    /**
     * An outcome that can show.
     *
     * @param share how often, where known
     * @param known whether the table, the only outcome or a finished repair says so; otherwise it is merely possible
     */
    public record ShownResult(LinkedSteps.Arrow arrow, Optional<Exact> share, boolean known) {
    }

    /** @param to the state it leads to; absent when the arrow leads nowhere */
    public record Move(int from, Optional<Integer> to, ShownResult shown) {
    }

    /** @param taken how often each bounded way has been taken */
    public record State(int step, int done, List<Integer> taken) {
    }

    private final LinkedSteps tree;
    private final Behaviour behaviour;
    private final List<State> states = new ArrayList<>();
    private final Map<State, Integer> numbers = new HashMap<>();
    private final List<List<Move>> moves = new ArrayList<>();
    private boolean complete = true;

    public StateGraph(LinkedSteps tree, Behaviour behaviour) {
        this.tree = tree;
        this.behaviour = behaviour;
        if (tree.begin().isPresent()) {
            number(start(tree, tree.begin().getAsInt()));
        }
        for (int i = 0; i < states.size(); i++) {
            moves.add(movesFrom(i));
        }
    }

    private List<Move> movesFrom(int from) {
        State state = states.get(from);
        List<Move> found = new ArrayList<>();
        for (ShownResult shown : behaviour.at(state.step(), state.done())) {
            Optional<State> next = next(tree, state, shown.arrow(), behaviour.doneAfter(state.step(), state.done()));
            if (next.isEmpty()) {
                found.add(new Move(from, Optional.empty(), shown));
            } else if (numbers.containsKey(next.get()) || states.size() < MOST_STATES) {
                found.add(new Move(from, Optional.of(number(next.get())), shown));
            } else {
                complete = false;
            }
        }
        return List.copyOf(found);
    }

    static State start(LinkedSteps tree, int step) {
        return new State(step, 0, Collections.nCopies(tree.counters(), 0));
    }

    /** The state after an outcome; absent when its arrow leads nowhere. */
    static Optional<State> next(LinkedSteps tree, State state, LinkedSteps.Arrow arrow, int done) {
        int to = arrow.to();
        List<Integer> taken = state.taken();
        if (arrow.counter() >= 0) {
            if (taken.get(arrow.counter()) >= arrow.atMost()) {
                to = arrow.otherwise();
            } else {
                List<Integer> counted = new ArrayList<>(taken);
                counted.set(arrow.counter(), counted.get(arrow.counter()) + 1);
                taken = List.copyOf(counted);
            }
        }
        if (to == LinkedSteps.NOWHERE) {
            return Optional.empty();
        }
        // How often the ways of a loop were taken says nothing once the loop is left.
        return Optional.of(new State(to, done, tree.together(state.step(), to) ? taken
                : Collections.nCopies(tree.counters(), 0)));
    }

    private int number(State state) {
        return numbers.computeIfAbsent(state, s -> {
            states.add(s);
            return states.size() - 1;
        });
    }

    public LinkedSteps tree() {
        return tree;
    }

    /** Whether every state was visited; otherwise what is computed from it is not to be relied on. */
    public boolean isComplete() {
        return complete;
    }

    public int size() {
        return states.size();
    }

    public State state(int number) {
        return states.get(number);
    }

    public List<Move> moves(int from) {
        return moves.get(from);
    }

    public boolean isEnding(int state) {
        return tree.isConclusion(states.get(state).step());
    }
}
