/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashMap;
import java.util.Map;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Showing;

/** A fault that says twice what one step shows: only one of them can be meant. */
public final class StepShownTwice implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("step-shown-twice", Severity.ERROR, Group.FAULTS,
            "A fault says twice what one step shows.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> procedure.faults().forEach(fault -> check(fault, findings)));
    }

    private static void check(Fault fault, Findings findings) {
        Map<String, Showing> first = new HashMap<>();
        for (Showing showing : fault.shows()) {
            Showing before = first.putIfAbsent(showing.step().text(), showing);
            if (before != null) {
                findings.report(showing.step().at(), "The fault \"" + fault.name() + "\" says in line " + before.at().line()
                        + " already what \"" + showing.step() + "\" shows.",
                        "Keep one of the two; where both are met, write them with \"or\".");
            }
        }
    }
}
