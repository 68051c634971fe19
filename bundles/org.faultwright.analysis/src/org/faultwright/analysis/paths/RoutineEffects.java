/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;

/** What a routine does to one condition, for each exit it can be left by. */
public final class RoutineEffects {
    private final Routine routine;
    private final Condition condition;
    private final List<Exploration> runs;

    /** @param entering the values to enter the routine with */
    public RoutineEffects(Procedure procedure, Routine routine, Condition condition, List<Name> entering) {
        this.routine = routine;
        this.condition = condition;
        this.runs = entering.stream().map(value -> run(alone(procedure, value))).toList();
    }

    public Routine routine() {
        return routine;
    }

    /** The exits that can be come to, and then always with this value; none where the routine needs another itself. */
    public List<Name> exitsWith(Name value) {
        return routine.exits().stream().filter(exit -> {
            if (!runs.stream().allMatch(run -> run.isComplete() && isFreeOfNeeds(run))) {
                return false;
            }
            List<Name> left = runs.stream().flatMap(run -> left(run, exit).stream()).toList();
            return !left.isEmpty() && left.stream().allMatch(found -> found.text().equals(value.text()));
        }).toList();
    }

    private List<Name> left(Exploration run, Name exit) {
        Condition followed = followed(run.map());
        List<Name> values = new ArrayList<>();
        for (int state = 0; state < run.size(); state++) {
            if (run.place(state).exit().filter(back -> back.text().equals(exit.text())).isPresent()
                    && run.place(state).caller().isEmpty()) {
                values.add(run.value(state, followed));
            }
        }
        return values;
    }

    private boolean isFreeOfNeeds(Exploration run) {
        Condition followed = followed(run.map());
        return IntStream.range(0, run.size())
                .allMatch(state -> run.valueOnComing(state, followed) == run.valueWithNeedsMet(state, followed));
    }

    private Exploration run(Procedure alone) {
        StepMap map = StepMap.of(alone);
        return Exploration.of(map, StatePacking.withThoseForcing(followed(map), map.conditions()), true,
                ProcedurePaths.MOST_COUNTED, Explorer.Arrivals.NOBODY);
    }

    private Condition followed(StepMap map) {
        return map.conditions().stream().filter(one -> one.name().text().equals(condition.name().text())).findFirst()
                .orElseThrow();
    }

    /** A procedure that performs the routine and nothing else. */
    private Procedure alone(Procedure procedure, Name entering) {
        Condition entered = new Condition(condition.name(), condition.title(), condition.values(), condition.live(),
                condition.charged(), condition.becomes(), condition.proved(),
                condition.mayChangeLive(), Optional.of(entering), condition.ends(), condition.at());
        Declarations own = procedure.own();
        List<Condition> conditions = new ArrayList<>(List.of(entered));
        conditions.addAll(own.conditions());
        List<Outcome> outcomes = routine.exits().stream().map(exit -> new Outcome(new Outcome.Word(exit),
                Optional.empty(), Optional.empty(), List.of(), exit.at())).toList();
        Step perform = new Step.Perform(routine.name(), "", Optional.of(routine.name()), StepFrame.PLAIN, outcomes,
                routine.at());
        return new Procedure(procedure.source(), procedure.name(), procedure.title(), procedure.uses(),
                procedure.libraries(), procedure.equipment(), procedure.revision(), List.of(), List.of(),
                own.with(conditions, own.routines()),
                procedure.statedRule(), Optional.empty(), Optional.empty(), List.of(), Optional.empty(), List.of(perform), List.of(), List.of(),
                procedure.at());
    }
}
