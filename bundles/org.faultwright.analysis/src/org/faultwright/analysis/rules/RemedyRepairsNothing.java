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
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** A remedy is something done, not something asked. */
public final class RemedyRepairsNothing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("remedy-repairs-nothing", Severity.ERROR, Group.FAULTS,
            "A remedy names a step in which nothing is done.");

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
        subject.procedure().ifPresent(procedure -> procedure.faults().forEach(fault -> fault.remedies()
                .forEach(remedy -> procedure.step(remedy).ifPresent(step -> check(fault, remedy, step, findings)))));
    }

    private static void check(Fault fault, Name remedy, Step step, Findings findings) {
        if (!(step instanceof Step.Do) && !(step instanceof Step.Perform)) {
            findings.report(remedy.at(), remedy + ", the remedy of " + fault.name() + ", repairs nothing: it only asks or concludes.",
                    "Name the step that repairs " + fault.name() + ".");
        }
    }
}
