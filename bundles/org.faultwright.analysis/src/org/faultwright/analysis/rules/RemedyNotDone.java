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
import org.faultwright.analysis.faults.FaultWalk;
import org.faultwright.analysis.faults.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;

/** A fault is concluded although its remedy is not done on the way. */
public final class RemedyNotDone implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("remedy-not-done", Severity.WARNING, Group.FAULTS,
            "A fault comes to a conclusion that finds it without its remedy being done.");

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
        FaultWalks.in(subject).ifPresent(walks -> walks.all().stream().filter(FaultWalk::isComplete)
                .filter(walk -> hasRemedy(walk.fault(), subject.procedure().orElseThrow()))
                .forEach(walk -> check(walk, findings)));
    }

    private static boolean hasRemedy(Fault fault, Procedure procedure) {
        return !fault.remedies().isEmpty() && fault.remedies().stream().allMatch(name -> procedure.step(name).isPresent());
    }

    private static void check(FaultWalk walk, Findings findings) {
        List<FaultWalk.Ending> finding = walk.endings().stream().filter(FaultWalk.Ending::finds)
                .filter(ending -> ending.conclusion().refersTo().isEmpty()).toList();
        boolean never = finding.stream().noneMatch(FaultWalk.Ending::repaired);
        finding.stream().filter(ending -> !ending.repaired() && (never || ending.known()))
                .forEach(ending -> findings.report(walk.fault().name().at(), walk.fault().name() + " comes to "
                        + ending.conclusion().name() + " without its remedy "
                        + Listing.or(walk.fault().remedies().stream().map(Object::toString).toList()) + " being done.",
                        "Lead the way through the remedy, or hand the unit on there with refers to.", ending.path()));
    }
}
