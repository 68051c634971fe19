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
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** A fault that is found but for which nothing is done. */
public final class RemedyMissing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("remedy-missing", Severity.WARNING, Group.FAULTS,
            "A fault is found and not referred to anybody, and has no remedy.");

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
        subject.procedure().ifPresent(procedure -> procedure.faults().stream().filter(fault -> fault.remedies().isEmpty())
                .forEach(fault -> check(procedure, fault, findings)));
    }

    private static void check(Procedure procedure, Fault fault, Findings findings) {
        List<String> found = procedure.steps().stream().filter(step -> step instanceof Step.Conclude conclude
                && conclude.refersTo().isEmpty()
                && conclude.finds().stream().map(Name::text).anyMatch(fault.name().text()::equals))
                .map(step -> step.name().text()).toList();
        if (!found.isEmpty()) {
            findings.report(fault.name().at(), fault.name() + " is found at " + Listing.and(found) + " and has no remedy.",
                    "Name the step that repairs it with \"remedy\", or say there with \"refers to\" who takes over the unit.");
        }
    }
}
