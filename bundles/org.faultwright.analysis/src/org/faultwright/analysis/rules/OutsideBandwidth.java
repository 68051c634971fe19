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
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** An alternating reading at a frequency for which the instrument states no accuracy. */
public final class OutsideBandwidth implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outside-bandwidth", Severity.WARNING, Group.INSTRUMENTS,
            "The frequency at the point lies outside the instrument's bandwidth.");

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
        AlternatingReading.of(subject).forEach(reading -> reading.carried().frequency()
                .filter(stated -> reading.ranges().stream().allMatch(range -> isOutside(stated, range)))
                .ifPresent(stated -> report(reading, stated, findings)));
    }

    /** A bandwidth that is not stated, or not in hertz, refuses nothing. */
    private static boolean isOutside(Point.Frequencies stated, MeterRange range) {
        return less(Optional.of(stated.lowest().value()), range.lowestFrequency())
                || less(range.highestFrequency(), Optional.of(stated.highest().value()));
    }

    private static boolean less(Optional<Quantity> one, Optional<Quantity> other) {
        return one.isPresent() && other.isPresent() && one.get().fits(QuantityKind.FREQUENCY)
                && other.get().fits(QuantityKind.FREQUENCY) && one.get().base().compareTo(other.get().base()) < 0;
    }

    private static void report(AlternatingReading reading, Point.Frequencies stated, Findings findings) {
        MeterRange range = reading.ranges().get(0);
        String bandwidth = range.lowestFrequency().map(Quantity::toString).orElse("0 Hz") + " to "
                + range.highestFrequency().map(Quantity::toString).orElse("any frequency");
        findings.report(reading.step().instrument().get().at(), reading.point().name() + " carries " + stated + ", and "
                + reading.instrument().name() + " reads " + range.kind().words() + " from " + bandwidth + " to its stated accuracy.",
                "Use an instrument whose bandwidth holds the frequency.");
    }
}
