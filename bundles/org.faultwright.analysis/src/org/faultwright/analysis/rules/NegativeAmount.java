/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;

/** A time, resistance, rating, allowance or spread below zero. */
public final class NegativeAmount implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("negative-amount", Severity.ERROR, Group.QUANTITIES,
            "An amount that cannot be negative is.");

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
        for (Point point : subject.document().own().points()) {
            amount(point.sourceResistance(), "The source resistance of " + point.name(), findings);
            amount(point.stores(), "The capacitance at " + point.name(), findings);
            amount(point.drainedBy(), "The resistance that drains " + point.name(), findings);
            amount(point.carries().map(Point.Carried::upTo), "The highest voltage at " + point.name(), findings);
        }
        for (Instrument instrument : subject.document().own().instruments()) {
            amount(instrument.rated(), "The rated voltage of " + instrument.name(), findings);
            amount(instrument.calibrationEvery(), "The calibration interval of " + instrument.name(), findings);
        }
        for (Step step : DocumentSteps.of(subject)) {
            amount(step.frame().takes(), "The time of " + step.name(), findings);
            amount(step.frame().waits(), "The wait of " + step.name(), findings);
            if (step instanceof Step.Measure measure) {
                measure.uncertainties().forEach(share -> amount(Optional.of(share.halfWidth()), "The allowance of "
                        + step.name(), findings));
                amount(measure.unitDeviation(), "The deviation of good units at " + step.name(), findings);
            }
        }
        subject.procedure().ifPresent(procedure -> procedure.examples().forEach(example -> amount(example.within(),
                "The time of the example " + example.called(), findings)));
    }

    private static void amount(Optional<Written<Quantity>> amount, String what, Findings findings) {
        amount.filter(written -> written.value().value().signum() < 0).ifPresent(written -> {
            String without = written.at().text().replaceFirst("^-\\s*", "");
            findings.report(written.at(), what + " is negative: " + written.value() + ".",
                    "Write an amount of zero or more.", Fix.replacing("Write " + without, written.at(), without));
        });
    }
}
