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
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Tolerance;

/** Five percent of nothing is nothing. */
public final class PercentageOfZero implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("percentage-of-zero", Severity.ERROR, Group.QUANTITIES,
            "A tolerance is stated in percent of a nominal value of zero, or of a sound level.");

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
        StatedLimits.of(subject).stream().filter(stated -> isOfSound(stated.limit().value()))
                .forEach(stated -> findings.report(stated.limit().at(), "A sound level has no percentage, and the limit of " + stated.of().name()
                        + " has one.", "Write the tolerance in dB, as in 70 dB(A) +/- 2 dB."));
        StatedLimits.of(subject).stream().filter(stated -> applies(stated.limit().value()))
                .forEach(stated -> findings.report(stated.limit().at(), "A percentage of " + stated.limit().value()
                .nominal().get()
                        + " is nothing, so that the limit of " + stated.of().name() + " is not what it seems.",
                        "Write the tolerance as an amount, as in 0 V +/- 20 mV."));
    }

    private static boolean isOfSound(Limit limit) {
        return limit instanceof Limit.AroundNominal around && around.written().dimension().equals(Dimension.SOUND_LEVEL)
                && (isPercentage(around.plus()) || isPercentage(around.minus()));
    }

    /** A side without a tolerance is one of no percent. */
    private static boolean isPercentage(Tolerance tolerance) {
        return tolerance instanceof Tolerance.Percent percent && percent.percent().signum() != 0;
    }

    static boolean applies(Limit limit) {
        return limit instanceof Limit.AroundNominal around && around.written().value().signum() == 0
                && (around.plus() instanceof Tolerance.Percent || around.minus() instanceof Tolerance.Percent);
    }
}
