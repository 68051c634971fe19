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
import org.faultwright.procedure.Step;

/** A conclusion that says nothing of what was found. */
public final class ConclusionWithoutFinding implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("conclusion-without-finding", Severity.WARNING,
            Group.FAULTS, "A conclusion neither finds a fault, nor finds nothing, nor refers the unit to somebody.");

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
        DocumentSteps.of(subject, Step.Conclude.class).filter(conclude -> conclude.finds().isEmpty()
                && conclude.findsNothing().isEmpty() && conclude.refersTo().isEmpty())
                .forEach(conclude -> findings.report(conclude.name().at(),
                        conclude.name() + " does not say what was found.",
                        "Say which fault it finds, that it finds nothing, or whom the unit is referred to.",
                        FrameLine.added("Say that nothing was found", conclude, "finds nothing")));
    }
}
