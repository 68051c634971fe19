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
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;

/** A point that carries a dangerous voltage or stores a charge, and is said to be isolated whatever the set-up. */
public final class IsolationUnfounded implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("isolation-unfounded", Severity.ERROR, Group.STATE,
            "A point that carries a dangerous voltage or stores a charge is said to be always isolated.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.document().own().points().stream().filter(point -> point.isolated().filter(isolated -> isolated.when().isEmpty()).isPresent())
                .forEach(point -> check(point, DocumentSteps.of(subject, Step.Measure.class).flatMap(ExpectedVoltages::dangerous)
                        .filter(one -> one.reading().point().filter(name -> name.text().equals(point.name().text())).isPresent()).findFirst(), findings));
    }

    private static void check(Point point, Optional<ExpectedVoltages.Expected> expected, Findings findings) {
        boolean carries = point.carries().filter(carried -> carried.upTo().value().fits(carried.kind()))
                .flatMap(carried -> VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point))).filter(VoltageLimit::asksForNote).isPresent();
        if (carries || StoredCharges.dangerous(point).isPresent() || expected.isPresent()) {
            findings.report(point.isolated().orElseThrow().at(), point.name() + " is said to be always isolated, and "
                    + (carries ? "it carries up to " + point.carries().orElseThrow().upTo().value()
                    : expected.isPresent() ? expected.get().reading().name() + " expects " + expected.get().limit().value().spelling() + " there"
                            : "it stores a charge") + ".",
                    "Say when it is isolated, as in: isolated when Plug drawn. What never carries a voltage needs no \"carries\".");
        }
    }
}
