/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A code that the indicator can give and the step says nothing about. */
public final class CodesNotHandled implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("codes-not-handled", Severity.ERROR, Group.PATHS,
            "A step at an indicator leaves out codes of its table and does not say anything else.");

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
            for (Step step : graph.steps()) {
                if (step instanceof Step.Observe observe && !step.outcomes().isEmpty()) {
                    observe.indicator().flatMap(subject.scope()::indicator)
                            .ifPresent(indicator -> check(observe, indicator, graph, findings));
                }
            }
        }
    }

    private static void check(Step.Observe step, Indicator indicator, StepGraph graph, Findings findings) {
        List<String> handled = step.outcomes().stream().map(Outcome::key).toList();
        boolean takesTheRest = step.outcomes().stream().anyMatch(outcome -> outcome.head() instanceof Outcome.AnythingElse);
        String left = indicator.codes().stream().map(code -> code.pattern().text()).filter(code -> !handled.contains(code))
                .collect(Collectors.joining(", "));
        if (!left.isEmpty() && !takesTheRest) {
            Optional<String> escape = EscapeTarget.in(graph);
            Fix[] fixes = escape.stream().map(target -> Insertion.outcome("Let anything else lead to " + target, step,
                    "anything else -> " + target)).toArray(Fix[]::new);
            findings.report(step.name().at(), indicator.name() + " can give " + left + ", and " + step.name()
                    + " does not say where that leads.", "Add an outcome for each, or one for \"anything else\".", fixes);
        }
    }
}
