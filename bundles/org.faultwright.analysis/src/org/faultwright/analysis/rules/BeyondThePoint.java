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
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** A voltage expected or told of that is more than what is ever met at the point. */
public final class BeyondThePoint implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("beyond-the-point", Severity.ERROR, Group.QUANTITIES,
            "A voltage is expected, or told in a fault or an example, that is more than its point carries.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.expects().filter(expects -> step.kind().isPresent()
                && expects.limit().value().fits(step.kind().get().value()))
                .ifPresent(expects -> most(step, subject).filter(most -> ExpectedVoltages.nearest(expects.limit().value()
                        .interval(step.kind().get().value())).compareTo(most.base().absolute()) > 0)
                        .ifPresent(most -> report(step, "expects " + expects.limit().value().spelling(), most, expects.limit().at(), findings))));
        ToldReadings.of(subject).forEach(told -> {
            if (told.step() instanceof Step.Measure step && step.kind().isPresent() && told.reading().fits(step.kind().get().value())) {
                most(step, subject).filter(most -> told.reading().base().absolute().compareTo(most.base().absolute()) > 0)
                        .ifPresent(most -> report(step, "is said to read " + told.reading(), most, told.at(), findings));
            }
        });
    }

    private static void report(Step.Measure step, String what, Quantity most, SourceRange at, Findings findings) {
        findings.report(at, "\"" + step.name() + "\" " + what + ", and \"" + step.point().get() + "\" carries up to " + most + ".",
                "Correct the value, or say what the point carries at most, also in the case of a fault.");
    }

    /** What the point carries, where it is of the kind that is read. */
    private static Optional<Quantity> most(Step.Measure step, Subject subject) {
        Optional<QuantityKind> kind = step.kind().map(written -> written.value()).filter(QuantityKind::isVoltage);
        return kind.isEmpty() || step.against().flatMap(subject.scope()::point).flatMap(Point::carries).isPresent() ? Optional.empty()
                : step.point().flatMap(subject.scope()::point).flatMap(Point::carries).filter(carried -> carried.kind() == kind.get())
                        .map(carried -> carried.upTo().value()).filter(voltage -> voltage.fits(kind.get()));
    }
}
