/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Where the steps of a graph lead, as it is written. */
final class ArrowTargets {
    /** Where the graph begins; no step has that name. */
    static final String BEGIN = "";
    private static final String NOWHERE = "";

    private ArrowTargets() {
    }

    /** By the name of each step the name that each of its results leads to, then the one that it leads to once its bound is used up. */
    static Map<String, List<String>> of(StepGraph graph) {
        Map<String, List<String>> arrows = new LinkedHashMap<>();
        arrows.put(BEGIN, new ArrayList<>(List.of(graph.first().map(step -> step.name().text()).orElse(NOWHERE))));
        for (Step step : graph.writtenSteps()) {
            List<String> targets = new ArrayList<>();
            for (Outcome outcome : step.outcomes()) {
                targets.add(name(outcome.target()));
                targets.add(name(outcome.repeat().map(Outcome.Repeat::otherwise)));
            }
            arrows.put(step.name().text(), targets);
        }
        return arrows;
    }

    /** The place of an arrow in the list of its step. */
    static int place(int outcome, boolean otherwise) {
        return 2 * outcome + (otherwise ? 1 : 0);
    }

    private static String name(Optional<Name> target) {
        return target.map(Name::text).map(ClosingStep::written).orElse(NOWHERE);
    }
}
