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
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Tolerance;

/** A minus tolerance of a hundred percent or more lets the value vanish or turn its sign. */
public final class ToleranceBeyondNominal implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("tolerance-beyond-nominal", Severity.WARNING, Group.QUANTITIES,
            "A tolerance downwards is as large as the nominal value, so that zero keeps the limit.");
    private static final Exact HUNDRED = Exact.of(100);

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (StatedLimits.Stated stated : StatedLimits.of(subject)) {
            if (stated.limit().value() instanceof Limit.AroundNominal around && around.written().value().signum() != 0
                    && around.minus() instanceof Tolerance.Percent minus && minus.percent().compareTo(HUNDRED) >= 0) {
                findings.report(stated.limit().at(), around.written() + " less " + minus.percent()
                        + " % of it leaves no voltage, current"
                        + " or resistance at all, so that zero keeps the limit of " + stated.of().name() + ".",
                        "Check the percentage, or write a one-sided limit such as: at most " + around.written() + ".");
            }
        }
    }
}
