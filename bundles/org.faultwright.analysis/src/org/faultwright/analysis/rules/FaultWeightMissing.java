/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;

/** A fault without a weight beside others that have one. */
public final class FaultWeightMissing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("fault-weight-missing", Severity.ADVICE, Group.FAULTS,
            "A fault has no weight and counts as 1 beside others that have one.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        List<Fault> faults = subject.procedure().map(procedure -> procedure.faults()).orElse(List.of());
        if (faults.stream().anyMatch(fault -> fault.weight().isPresent())) {
            faults.stream().filter(fault -> fault.weight().isEmpty()).forEach(fault -> findings.report(fault.name().at(),
                    fault.name() + " has no weight and counts as 1 beside faults that have one.",
                    "Say with weight how often it is met, in the unit of the others."));
        }
    }
}
