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

/** A step of which the outcome is certain before it is asked. */
public final class OutcomeAlreadyKnown implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outcome-already-known", Severity.ADVICE, Group.FAULTS,
            "The outcome of a step is known before it is asked.");

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
        StepWorth.in(subject).ifPresent(worth -> worth.knownBefore().forEach((step, outcome) -> findings.report(step.name().at(),
                "Every fault still possible at " + step.name() + " shows \"" + outcome + "\" there.",
                "Leave it out, ask it earlier, or let another outcome refer the unit: it then catches what the table lacks.")));
    }
}
