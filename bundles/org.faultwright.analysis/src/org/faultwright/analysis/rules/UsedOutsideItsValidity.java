/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** The bench is colder or warmer than the temperatures for which an instrument states its accuracy. */
public final class UsedOutsideItsValidity implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("used-outside-its-validity", Severity.WARNING, Group.INSTRUMENTS,
            "The bench can be colder or warmer than an instrument's accuracy is stated for.");

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
        Optional<Limit> bench = subject.scope().ambient().map(Written::value).filter(UsedOutsideItsValidity::isRange);
        Set<String> told = new HashSet<>();
        bench.ifPresent(ambient -> DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument()
                .flatMap(subject.scope()::instrument)
                .filter(instrument -> instrument.validAt().map(Written::value).filter(UsedOutsideItsValidity::isRange)
                        .filter(valid -> !holds(valid.interval(), ambient.interval())).isPresent())
                .filter(instrument -> told.add(instrument.name().text()))
                .ifPresent(instrument -> report(step, instrument, ambient, findings))));
    }

    private static boolean isRange(Limit limit) {
        return limit.fits(QuantityKind.TEMPERATURE) && !limit.interval().isEmpty();
    }

    /** Ends count as reached: nobody heats a bench to a tenth of a degree. */
    private static boolean holds(Interval valid, Interval ambient) {
        return reaches(valid.lower(), ambient.lower(), 1) && reaches(valid.upper(), ambient.upper(), -1);
    }

    private static boolean reaches(Optional<Bound> valid, Optional<Bound> ambient, int side) {
        return valid.isEmpty() || ambient.isPresent()
                && ambient.get().value().compareTo(valid.get().value()) * side >= 0;
    }

    private static void report(Step.Measure step, Instrument instrument, Limit ambient, Findings findings) {
        findings.report(step.instrument().get().at(), "The bench is at " + ambient.spelling() + ", and the accuracy of "
                + instrument.name() + " is stated for " + instrument.validAt().get().value().spelling() + ".",
                "Use another instrument, keep the bench within that, or enter the accuracy with its temperature coefficient.");
    }
}
