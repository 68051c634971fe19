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
import org.faultwright.quantity.Bands;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;

/** A reading that falls into no band. */
public final class HoleBetweenBands implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("hole-between-bands", Severity.ERROR, Group.QUANTITIES,
            "The bands of a measurement leave out values that can be read.");

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
            // Together with an expectation the words below, within and above take what the bands leave.
            if (!readings.takesTheRest() && StepExpectation.of(readings.step()).isEmpty()) {
                readings.partition().holes().forEach(hole -> report(readings, hole, findings));
            }
        }
    }

    private static void report(Readings readings, Bands.Hole hole, Findings findings) {
        int nearest = hole.below().orElseGet(() -> hole.above().orElseThrow());
        Readings.Band band = readings.bands().get(nearest);
        Unit unit = readings.unit(nearest);
        findings.report(band.limit().at(), "No band of " + readings.step().name() + " takes "
                + IntervalText.of(hole.values(), unit) + ".",
                "A reading of " + example(hole.values(), unit) + " leads nowhere: move an end, or add a band.",
                Stream.of(upwards(readings, hole), downwards(readings, hole)).flatMap(Optional::stream).toArray(Fix[]::new));
    }

    private static Optional<Fix> upwards(Readings readings, Bands.Hole hole) {
        if (hole.below().isEmpty()) {
            return Optional.empty();
        }
        Readings.Band band = readings.bands().get(hole.below().getAsInt());
        Optional<BandEnd> next = hole.above().isEmpty() ? Optional.empty()
                : BandEnd.lower(readings.bands().get(hole.above().getAsInt()), readings.kind());
        boolean known = hole.above().isEmpty() || next.isPresent();
        return known ? BandEnd.rewrite(band, BandEnd.lower(band, readings.kind()), next.map(BandEnd::opposite))
                : Optional.empty();
    }

    private static Optional<Fix> downwards(Readings readings, Bands.Hole hole) {
        if (hole.above().isEmpty()) {
            return Optional.empty();
        }
        Readings.Band band = readings.bands().get(hole.above().getAsInt());
        Optional<BandEnd> next = hole.below().isEmpty() ? Optional.empty()
                : BandEnd.upper(readings.bands().get(hole.below().getAsInt()), readings.kind());
        boolean known = hole.below().isEmpty() || next.isPresent();
        return known ? BandEnd.rewrite(band, next.map(BandEnd::opposite), BandEnd.upper(band, readings.kind()))
                : Optional.empty();
    }

    /** A value in the hole that reads well. */
    private static String example(Interval hole, Unit unit) {
        return ExampleReading.in(hole, unit);
    }
}
