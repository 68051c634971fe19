/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;

/** A fault without a weight beside others that have one. */
public final class CasesMissing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("cases-missing", Severity.ADVICE, Group.FAULTS,
            "A fault has no cases and counts as 1 beside others that have them.");

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
        List<Fault> faults = subject.procedure().map(procedure -> procedure.faults()).orElse(List.of());
        if (faults.stream().anyMatch(fault -> fault.cases().isPresent())) {
            faults.stream().filter(fault -> fault.cases().isEmpty()).forEach(fault -> findings.report(fault.name().at(),
                    fault.name() + " has no cases and counts as 1 beside faults that have them.",
                    "Say with \"cases\" how often it was met, counted as for the others."));
        }
    }
}
