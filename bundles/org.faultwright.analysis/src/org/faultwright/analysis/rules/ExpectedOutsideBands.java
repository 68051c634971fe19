/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bands;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Unit;

/** A good unit whose reading no outcome takes. */
public final class ExpectedOutsideBands implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("expected-outside-bands", Severity.ERROR, Group.QUANTITIES,
            "What a measurement expects falls into none of its bands.");

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
        for (Readings readings : Readings.of(subject)) {
            Optional<Written<Limit>> expected = StepExpectation.of(readings.step()).map(Step.Expectation::limit);
            boolean handled = readings.takesTheRest() || Results.byKey(readings.step(), Step.WITHIN).isPresent();
            if (expected.isPresent() && !handled && expected.get().value().quantities().stream()
                    .allMatch(end -> end.unit().isKnown()
                    && end.dimension().equals(readings.bands().get(0).limit().value().quantities().get(0).dimension()))) {
                check(readings, expected.get(), findings);
            }
        }
    }

    private static void check(Readings readings, Written<Limit> expected, Findings findings) {
        Interval good = expected.value().interval(readings.kind());
        List<Interval> bands = readings.bands().stream().map(Readings.Band::values).toList();
        Unit unit = expected.value().quantities().get(0).unit();
        for (Bands.Hole hole : Bands.partition(bands, good).holes()) {
            findings.report(expected.at(), readings.step().name() + " expects " + expected.value().spelling()
                    + ", and no band takes " + IntervalText.of(hole.values(), unit) + ".",
                    "Add the outcome \"within\", or a band that takes these values.");
        }
    }
}
