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
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;

/** A limit that one value alone, or none, can keep. */
public final class ZeroWidthTolerance implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("zero-width-tolerance", Severity.ERROR, Group.QUANTITIES,
            "A limit has no width, so that no real reading keeps it.");

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
        StatedLimits.of(subject).stream().filter(StatedLimits.StatedLimit::isComparable)
                .forEach(stated -> check(stated, findings));
    }

    private static void check(StatedLimits.StatedLimit stated, Findings findings) {
        Limit limit = stated.limit().value();
        Interval interval = limit.interval(stated.kind());
        boolean noWidth = interval.width().map(Exact.ZERO::equals).orElse(false);
        if (noWidth && !PercentageOfZero.applies(limit)) {
            findings.report(stated.limit().at(), "The limit " + limit.spelling() + " of " + stated.of().name()
                    + (interval.isEmpty() ? " takes in no value." : " takes in one single value."),
                    "Write a tolerance above zero: every instrument scatters by at least its last digit.");
        }
    }
}
