/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.time.LocalDate;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;

/** A measurement with an instrument whose calibration has run out on the day given. */
public final class CalibrationExpired implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("calibration-expired", Severity.WARNING, Group.INSTRUMENTS,
            "An instrument in use is past the day its calibration runs out.");

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
        subject.today().ifPresent(today -> DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument()
                .flatMap(subject.scope()::instrument).filter(instrument -> expired(instrument, today))
                .ifPresent(instrument -> findings.report(step.instrument().get().at(), "The calibration of "
                + instrument.name()
                        + " ran out on " + instrument.calibrationDue().get().value() + ".",
                        "Have it calibrated and enter the new day, or use another instrument."))));
    }

    private static boolean expired(Instrument instrument, LocalDate today) {
        return instrument.calibrationDue().map(due -> due.value().isBefore(today)).orElse(false);
    }
}
