/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;

/** A step that is said to be done sooner than it has waited. */
public final class TakesLessThanWait implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("takes-less-than-wait", Severity.WARNING, Group.QUANTITIES,
            "A step takes less time than it waits.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (Step step : DocumentSteps.of(subject)) {
            step.frame().takes().ifPresent(takes -> step.frame().waits().filter(wait -> step.frame().time().equals(java.util.Optional.of(wait))
                    && !wait.equals(takes)).ifPresent(wait -> report(step, takes, wait, findings)));
        }
    }

    private static void report(Step step, Written<Quantity> takes, Written<Quantity> wait, Findings findings) {
        findings.report(takes.at(), step.name() + " takes " + takes.value() + " and waits " + wait.value() + ".",
                "Write the whole time of the step, the wait included.",
                Fix.replacing("Write " + wait.value(), takes.at(), wait.value().spelling()));
    }
}
