/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Effort without use: whatever comes of the step, the procedure goes on in the same way. */
public final class UnusedReading implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unused-reading", Severity.WARNING, Group.PATHS,
            "Every outcome of a step leads to the same place, and nothing computes with its reading.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (StepGraph graph : subject.graphs()) {
            Set<String> computed = computed(graph);
            for (Step step : graph.steps()) {
                if (decidesNothing(step, graph) && !computed.contains(step.name().text())) {
                    findings.report(step.name().at(), "Every outcome of " + step.name() + " leads to "
                            + Readings.target(step.outcomes().get(0)) + ", and nothing computes with it.",
                            "Let the outcomes lead to different steps, compute with the reading, or leave the step out.");
                }
            }
        }
    }

    private static Set<String> computed(StepGraph graph) {
        Set<String> computed = new HashSet<>();
        graph.steps().stream().filter(Step.Calculate.class::isInstance).map(Step.Calculate.class::cast)
                .flatMap(step -> FormulaWords.leaves(step).stream()).filter(FormulaWords.Leaf::isReading)
                .forEach(leaf -> computed.add(leaf.text()));
        return computed;
    }

    private static boolean decidesNothing(Step step, StepGraph graph) {
        boolean confirms = step.frame().confirms().isPresent() || step.frame().verifies().isPresent();
        boolean establishes = step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty()
                || outcome.repeat().isPresent() || outcome.target().isEmpty());
        return (step.asks() && !confirms || findsWhatever(step, graph)) && !establishes && step.outcomes().size() > 1
                && step.outcomes().stream().map(Readings::target).collect(Collectors.toSet()).size() == 1;
    }

    /** Trying the unit after a repair, or a routine, has its use by itself; concluding on a fault whatever it shows has none. */
    private static boolean findsWhatever(Step step, StepGraph graph) {
        return (step.frame().verifies().isPresent() || step instanceof Step.Perform) && step.outcomes().stream()
                .flatMap(outcome -> outcome.target().stream()).flatMap(target -> graph.step(target).stream())
                .anyMatch(next -> next instanceof Step.Conclude conclude && !conclude.finds().isEmpty());
    }
}
