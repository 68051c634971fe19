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

/** A fault that was met not once weighs nothing: no time and no order is worked out for it. */
public final class CasesOfZero implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("cases-of-zero", Severity.WARNING, Group.FAULTS,
            "A fault is said to have been met in no case, or in fewer than none.");

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
        subject.procedure().ifPresent(procedure -> procedure.faults().forEach(fault -> fault.cases()
                .filter(cases -> cases.value().signum() <= 0)
                .ifPresent(cases -> findings.report(cases.at(), "The fault \"" + fault.name() + "\" has " + cases.value()
                        + " cases, so that it counts for nothing in times, order and shares.",
                        "Write how often it was met; for one that was never met yet, write a small number such as 0.1."))));
    }
}
