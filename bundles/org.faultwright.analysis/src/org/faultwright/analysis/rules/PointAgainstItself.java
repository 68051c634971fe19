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

/** Both leads at one point read nothing, whatever is there. */
public final class PointAgainstItself implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("point-against-itself", Severity.ERROR, Group.INSTRUMENTS,
            "A point is measured against itself.");

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
        DocumentSteps.of(subject, Step.Measure.class).filter(step -> step.point().isPresent() && step.against().isPresent()
                && step.point().get().text().equals(step.against().get().text()))
                .forEach(step -> findings.report(step.against().get().at(), "\"" + step.name() + "\" measures \"" + step.point().get()
                        + "\" against itself and reads nothing, whatever is there.", "Name the point where the second lead is put."));
    }
}
