/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Which routines are performed. */
final class PerformedRoutines {
    private PerformedRoutines() {
    }

    /**
     * How many of the steps of a routine that is printed in the box of a step stay with what warns there: up to the one that makes the circuit live, so
     * that nobody turns the page between the warning and the deed. None where the step warns of nothing, or the routine makes nothing live.
     *
     * @param steps those of the routine, as they are printed
     */
    static int besideWarning(Step performing, List<Step> steps, Scope scope) {
        for (int i = 0; i < steps.size() && !performing.frame().notes().isEmpty() && !(steps.get(i) instanceof Step.Perform); i++) {
            if (steps.get(i).frame().sets().stream().anyMatch(set -> scope.condition(set.condition()).filter(condition -> condition.isLive(set.value())).isPresent())) {
                return i + 1;
            }
        }
        return 0;
    }

    /** Every routine that some step of it performs, and those that they perform in turn, each once, by its name. */
    static Map<String, Routine> within(StepGraph graph, Scope scope) {
        Map<String, Routine> met = new LinkedHashMap<>();
        List<Step> steps = new ArrayList<>(graph.steps());
        for (int i = 0; i < steps.size(); i++) {
            scope.performedBy(steps.get(i)).filter(routine -> met.putIfAbsent(routine.name().text(), routine) == null)
                    .ifPresent(routine -> steps.addAll(routine.steps()));
        }
        return met;
    }
}
