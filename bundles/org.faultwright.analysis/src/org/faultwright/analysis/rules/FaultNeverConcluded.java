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
import org.faultwright.analysis.trace.FaultWalks;

/** A fault that no conclusion names. */
public final class FaultNeverConcluded implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("fault-never-concluded", Severity.WARNING, Group.FAULTS,
            "No conclusion finds a fault of the table.");

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
        FaultWalks.in(subject).ifPresent(walks -> walks.all().stream().filter(walk -> !walk.isConcluded())
                .forEach(walk -> findings.report(walk.fault().name().at(), "No conclusion finds " + walk.fault().name() + ".",
                        "Lead an arrow to it, name it in the conclusion it leads to, or take it out of the table.")));
    }
}
