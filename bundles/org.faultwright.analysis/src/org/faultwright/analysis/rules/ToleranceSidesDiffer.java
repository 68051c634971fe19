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
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Tolerance;
import org.faultwright.quantity.Unit;

/** A tolerance with a percentage to one side and a quantity to the other: mostly a slip in one of the two units. */
public final class ToleranceSidesDiffer implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("tolerance-sides-differ", Severity.WARNING, Group.QUANTITIES,
            "A tolerance is a percentage to one side and a quantity to the other.");

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
        StatedLimits.of(subject).stream().filter(StatedLimits.StatedLimit::isComparable).forEach(stated -> {
            if (stated.limit().value() instanceof Limit.AroundNominal around && isZero(around.plus()) == isZero(around.minus())
                    && around.plus() instanceof Tolerance.Percent != around.minus() instanceof Tolerance.Percent) {
                Unit unit = around.written().unit();
                Interval interval = around.interval(stated.kind());
                findings.report(stated.limit().at(), "\"" + around.spelling() + "\" is a percentage to one side and not to the other; it runs "
                        + "from " + IntervalText.of(interval, unit).replaceFirst("^from ", "") + ".",
                        "Write both sides alike, or the two ends.");
            }
        });
    }

    /** Nothing is written to a side that is zero. */
    private static boolean isZero(Tolerance side) {
        return side instanceof Tolerance.Percent percent ? percent.percent().signum() == 0
                : ((Tolerance.Amount) side).amount().value().signum() == 0;
    }
}
