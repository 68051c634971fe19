/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

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
import org.faultwright.analysis.measurement.ComputedStudies;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.measure.Budget;

/** The house decides with guard bands, and the step does not say what to do with a doubtful reading. */
public final class DoubtfulUnhandled implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("doubtful-unhandled", Severity.ADVICE, Group.INSTRUMENTS,
            "A reading can be too near a limit to decide, and the step does not say what follows.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (LimitStudy study : LimitStudies.of(subject)) {
            study.expected().ifPresent(limit -> check(study.step(), limit.limit(), limit.budget(),
                    "for " + study.instrument().name() + " to decide", subject, findings));
        }
        for (ComputedStudy study : ComputedStudies.of(subject)) {
            study.expected().ifPresent(limit -> check(study.step(), limit.limit(), limit.budget(),
                    "to decide with the readings behind it", subject, findings));
        }
    }

    private static void check(Step step, Written<Limit> limit, Budget budget, String decided, Subject subject,
            Findings findings) {
        if (Results.byKey(step, Step.DOUBTFUL).isPresent() || step.outcomes().isEmpty() || budget.ends().isEmpty()) {
            return;
        }
        String zones = budget.shown().doubtful().stream().map((Interval zone) -> IntervalText.of(zone, budget.unit()))
                .collect(Collectors.joining(" and of "));
        if (zones.isEmpty()) {
            return;
        }
        Optional<String> target = subject.graphs().stream().filter((StepGraph graph) -> graph.steps().contains(step))
                .findFirst().flatMap(EscapeTarget::in);
        findings.report(limit.at(), (step instanceof Step.Calculate ? "A value of " : "A reading of ") + zones + " at "
                + step.name() + " is too near the limit " + decided + ".",
                "Add the outcome \"doubtful\", for instance to measure again with a finer instrument.",
                target.stream().map(to -> Insertion.outcome("Let doubtful lead to " + to, step, "doubtful -> " + to))
                .toArray(Fix[]::new));
    }
}
