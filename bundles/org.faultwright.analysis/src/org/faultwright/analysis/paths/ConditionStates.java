/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.faultwright.analysis.PathStep;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;

/** The values one condition can have at each place, with a shortest path to each. */
public final class ConditionStates {
    private static final int NEVER = -1;

    private final Condition condition;
    private final int values;
    private final Exploration states;
    private final BitSet arrivals;
    private final int[] arriving;
    private final int[] holding;

    private ConditionStates(Condition condition, Exploration states, BitSet arrivals) {
        this.condition = condition;
        this.values = condition.values().size();
        this.states = states;
        this.arrivals = arrivals;
        this.arriving = new int[states.map().places().size() * values];
        this.holding = new int[arriving.length];
        Arrays.fill(arriving, NEVER);
        Arrays.fill(holding, NEVER);
        for (int state = states.size() - 1; state >= 0; state--) {
            int row = states.place(state).index() * values;
            arriving[row + states.valueOnComing(state, condition)] = state;
            holding[row + states.valueWithNeedsMet(state, condition)] = state;
        }
    }

    /** @param condition with at least one value */
    static ConditionStates of(StepMap map, Condition condition, boolean counts, int most) {
        List<Condition> followed = StatePacking.withThoseForcing(condition, map.conditions());
        StatePacking.Field field = new StatePacking(followed, List.of()).field(condition);
        BitSet arrivals = new BitSet();
        int values = condition.values().size();
        Exploration states = Exploration.of(map, followed, counts, most,
                (from, branch, to, state) -> arrivals.set(branch * values + field.read(state)));
        return new ConditionStates(condition, states, arrivals);
    }

    public Condition condition() {
        return condition;
    }

    /** Whether every state was looked at; if not, a value not found here may be met all the same. */
    public boolean isComplete() {
        return states.isComplete();
    }

    /** Whether bounds were kept; if not, a path shown may take a bounded way too often. */
    public boolean countsRepeats() {
        return states.countsRepeats();
    }

    /** The values that the condition can have on coming to a place. */
    public List<Name> arriving(InlinedStep place) {
        return among(arriving, place);
    }

    /** The values that it can have there once the place's needs are met. */
    public List<Name> holding(InlinedStep place) {
        return among(holding, place);
    }

    private List<Name> among(int[] first, InlinedStep place) {
        return IntStream.range(0, values).filter(value -> first[place.index() * values + value] != NEVER)
                .mapToObj(condition.values()::get).toList();
    }

    /** A shortest path on which the condition comes to the place with this value. */
    public Optional<List<PathStep>> pathArriving(InlinedStep place, Name value) {
        return path(arriving, place, value);
    }

    /** A shortest path on which it has this value there once the place's needs are met. */
    public Optional<List<PathStep>> pathHolding(InlinedStep place, Name value) {
        return path(holding, place, value);
    }

    private Optional<List<PathStep>> path(int[] first, InlinedStep place, Name value) {
        return StatePacking.value(condition, value).map(which -> first[place.index() * values + which])
                .filter(state -> state != NEVER).map(states::path);
    }

    /** Whether taking this way, or where it leads otherwise, ever brings the condition along with this value. */
    public boolean brings(Transition way, boolean otherwise, Name value) {
        return StatePacking.value(condition, value)
                .map(which -> arrivals.get((2 * way.index() + (otherwise ? 1 : 0)) * values + which)).orElse(false);
    }

    /** Whether the procedure begins with this value. */
    public boolean startsWith(Name value) {
        return states.size() > 0 && states.value(0, condition).text().equals(value.text());
    }
}
