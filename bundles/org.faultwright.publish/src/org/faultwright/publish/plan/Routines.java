/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Which routines are performed. */
final class Routines {
    private Routines() {
    }

    static Optional<Routine> performedBy(Step step, Scope scope) {
        return step instanceof Step.Perform perform ? perform.routine().flatMap(scope::routine) : Optional.empty();
    }

    /** Every routine that some step of it performs, and those that they perform in turn, each once, by its name. */
    static Map<String, Routine> within(StepGraph graph, Scope scope) {
        Map<String, Routine> met = new LinkedHashMap<>();
        List<Step> steps = new ArrayList<>(graph.steps());
        for (int i = 0; i < steps.size(); i++) {
            performedBy(steps.get(i), scope).filter(routine -> met.putIfAbsent(routine.name().text(), routine) == null)
                    .ifPresent(routine -> steps.addAll(routine.steps()));
        }
        return met;
    }
}
