/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A formula that adds volts to ohms, or calls a function with too few values. */
public final class WrongFormula implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("wrong-formula", Severity.ERROR, Group.QUANTITIES,
            "A formula combines quantities that cannot be combined, or there is none.");

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
        for (StepGraph graph : subject.graphs()) {
            FormulaTypes types = new FormulaTypes(graph);
            graph.steps().stream().filter(Step.Calculate.class::isInstance).map(Step.Calculate.class::cast)
                    .forEach(step -> check(step, types, findings));
        }
    }

    private static void check(Step.Calculate step, FormulaTypes types, Findings findings) {
        if (step.formula().isEmpty()) {
            findings.report(step.name().at(), step.name() + " computes nothing.",
                    "Say what it computes, as in \"value ratio(First, Second)\".");
        }
        types.problem(step).ifPresent(problem -> findings.report(step.formula().get().at(), problem.sentence(),
                "Combine readings of one kind, or divide one by the other first."));
    }
}
