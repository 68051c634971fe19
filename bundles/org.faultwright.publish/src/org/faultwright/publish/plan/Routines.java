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
final class Routines {
    private Routines() {
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
