/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.trace.StepWorth;

/** A step that narrows nothing down on any path. */
public final class StepTellsNothing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("step-tells-nothing", Severity.ADVICE, Group.FAULTS,
            "Whatever a step shows, the same faults remain possible.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        StepWorth.in(subject).ifPresent(worth -> worth.tellingNothing().forEach(step -> findings.report(step.name().at(),
                "Whatever " + step.name() + " shows, the same faults remain possible wherever it is asked.",
                "Leave it out, ask it where it narrows something down, or say in the table what each fault shows at it.")));
    }
}
