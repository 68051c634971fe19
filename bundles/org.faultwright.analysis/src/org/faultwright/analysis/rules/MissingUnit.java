/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;

/** A number alone where a quantity is meant. */
public final class MissingUnit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("missing-unit", Severity.ERROR, Group.QUANTITIES,
            "A number stands without a unit where a quantity is meant.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        StatedQuantities.of(subject).stream().filter(stated -> stated.wanted().lacksUnit(stated.quantity()))
                .forEach(stated -> report(stated, findings));
    }

    private static void report(StatedQuantity stated, Findings findings) {
        String unit = stated.proposedUnit();
        boolean fixable = !unit.isEmpty() && stated.place().get().isPresent();
        Fix[] fixes = fixable ? new Fix[] {Fix.replacing("Add the unit " + unit, stated.at(),
                stated.at().text() + " " + unit)} : new Fix[0];
        findings.report(stated.at(), stated.quantity().spelling() + " has no unit, and " + stated.wanted().what()
                + " needs one.",
                unit.isEmpty() ? "Write the unit behind the number." : "Write the unit behind the number, as in "
                        + stated.quantity().spelling() + " " + unit + ".", fixes);
    }
}
