/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;

/**
 * A limit written to more digits than the display has. Ends that were computed are left alone: from a percentage, or from the temperature on a
 * sensor.
 */
public final class FinerThanResolution implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("finer-than-resolution", Severity.ADVICE, Group.INSTRUMENTS,
            "A limit is written to more digits than the range in use shows.");

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
        for (LimitStudy study : LimitStudies.of(subject)) {
            Exact step = study.range().resolution().difference();
            if (step.signum() > 0 && study.choice().problem().isEmpty()) {
                study.limits().forEach(limit -> check(study, limit, step, findings));
            }
        }
    }

    private static void check(LimitStudy study, StudiedLimit limit, Exact step, Findings findings) {
        Limit written = limit.limit().value();
        Optional<Quantity> finer = written.quantities().stream().filter(quantity -> !isShown(quantity, step)).findFirst();
        finer.ifPresent(quantity -> findings.report(limit.limit().at(), quantity + " lies between two readings of "
                + study.instrument().name() + ", which shows steps of " + study.range().resolution()
                + " in its range up to " + study.range().upTo() + ".",
                "Round the limit to what can be read, or use a finer range."));
    }

    /** The number as written, without the zero of its scale: 25 degC is 25 steps of 1 degC. */
    private static boolean isShown(Quantity quantity, Exact step) {
        if (quantity.spelling().contains(" on ")) {
            return true;
        }
        Exact steps = quantity.difference().dividedBy(step);
        return steps.equals(steps.floor());
    }
}
