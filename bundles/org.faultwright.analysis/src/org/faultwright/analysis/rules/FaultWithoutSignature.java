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

/** A fault of which the table says nothing. */
public final class FaultWithoutSignature implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("fault-without-signature", Severity.WARNING, Group.FAULTS,
            "A fault does not say what any step shows.");

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
        subject.procedure().ifPresent(procedure -> procedure.faults().stream().filter(fault -> fault.shows().isEmpty())
                .forEach(fault -> findings.report(fault.name().at(), fault.name() + " does not say what any step shows.",
                        "Add \"shows\" with the outcome of each step that " + fault.name() + " makes certain.")));
    }
}
