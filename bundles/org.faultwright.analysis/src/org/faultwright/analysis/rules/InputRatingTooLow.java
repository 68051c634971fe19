/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** More voltage at a point than the instrument's terminals are rated for. */
public final class InputRatingTooLow implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("input-rating-too-low", Severity.ERROR, Group.INSTRUMENTS,
            "A point carries more voltage than the instrument is rated for.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        Steps.of(subject, Step.Measure.class).forEach(step -> step.instrument().flatMap(subject.scope()::instrument)
                .ifPresent(instrument -> rated(instrument).ifPresent(rated -> Stream.of(step.point(), step.against())
                        .flatMap(Optional::stream).flatMap(name -> subject.scope().point(name).stream())
                        .forEach(point -> check(step, instrument, rated, point, findings)))));
    }

    private static Optional<Quantity> rated(Instrument instrument) {
        return instrument.rated().map(Written::value).filter(rated -> rated.fits(QuantityKind.DC_VOLTAGE));
    }

    /** Peak values are held against the rating itself, which is the careful way: ratings are stated in dc or rms. */
    private static void check(Step.Measure step, Instrument instrument, Quantity rated, Point point, Findings findings) {
        Optional<Quantity> carried = point.carries().map(carries -> carries.upTo().value())
                .filter(voltage -> voltage.fits(QuantityKind.DC_VOLTAGE));
        if (carried.isPresent() && carried.get().base().absolute().compareTo(rated.base()) > 0) {
            findings.report(step.instrument().get().at(), point.name() + " can carry " + carried.get() + ", and "
                    + instrument.name()
                    + " is rated for " + rated + ".", "Use an instrument or a probe that its maker rates for this voltage.");
        }
    }
}
