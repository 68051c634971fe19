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
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Tolerance;

/** A minus tolerance as large as the nominal value or larger lets the value vanish or turn its sign. */
public final class ToleranceBeyondNominal implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("tolerance-beyond-nominal", Severity.WARNING, Group.QUANTITIES,
            "A tolerance downwards is as large as the nominal value, so that zero keeps the limit.");
    private static final Exact HUNDRED = Exact.of(100);

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
        for (StatedLimits.StatedLimit stated : StatedLimits.of(subject)) {
            if (stated.limit().value() instanceof Limit.AroundNominal around && around.written().value().signum() != 0
                    && leavesNothing(around, stated)) {
                findings.report(stated.limit().at(), around.written() + " less " + spelled(around.minus())
                        + " leaves nothing, so that zero keeps the limit of " + stated.of().name() + ".",
                        "Check the tolerance, or write a one-sided limit such as: at most " + around.written() + ".");
            }
        }
    }

    /** A temperature in degC may well fall below zero, and so may a difference of temperatures. */
    private static boolean leavesNothing(Limit.AroundNominal around, StatedLimits.StatedLimit stated) {
        if (around.minus() instanceof Tolerance.Percent percent) {
            return percent.percent().compareTo(HUNDRED) >= 0;
        }
        return stated.isComparable() && around.written().fits(stated.kind()) && stated.kind() != QuantityKind.TEMPERATURE
                && stated.kind() != QuantityKind.TEMPERATURE_DIFFERENCE
                && around.minus().distance(around.written()).compareTo(around.written().difference().absolute()) >= 0;
    }

    private static String spelled(Tolerance tolerance) {
        return tolerance instanceof Tolerance.Percent percent ? percent.percent() + " % of it" : ((Tolerance.Amount) tolerance).amount().toString();
    }
}
