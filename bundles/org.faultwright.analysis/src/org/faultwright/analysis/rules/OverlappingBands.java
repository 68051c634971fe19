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
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;

/** A reading that falls into two bands. */
public final class OverlappingBands implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("overlapping-bands", Severity.ERROR, Group.QUANTITIES,
            "Two bands of a measurement take the same values.");

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
        Readings.of(subject).forEach(readings -> readings.partition().overlaps()
                .forEach(overlap -> report(readings, overlap, findings)));
    }

    private static void report(Readings readings, Bands.Overlap overlap, Findings findings) {
        Readings.Band first = readings.bands().get(overlap.first());
        Readings.Band second = readings.bands().get(overlap.second());
        Unit unit = readings.unit(overlap.second());
        findings.report(second.limit().at(), first.name() + " and " + second.name() + " of " + readings.step().name()
                + " both take "
                + IntervalText.of(overlap.values(), unit) + ".", "A reading of " + ExampleReading.in(overlap.values(), unit)
                + " leads to " + Readings.target(first.outcome()) + " and to " + Readings.target(second.outcome())
                + ": let one band end where the other begins.", apart(readings, overlap));
    }

    /** Either the lower band ends where the upper one begins, or the upper one begins where the lower one ends. */
    private static Fix[] apart(Readings readings, Bands.Overlap overlap) {
        Readings.Band one = readings.bands().get(overlap.first());
        Readings.Band other = readings.bands().get(overlap.second());
        if (one.values().contains(other.values()) || other.values().contains(one.values())) {
            return new Fix[0];
        }
        boolean inOrder = overlap.values().lower().equals(other.values().lower());
        Readings.Band low = inOrder ? one : other;
        Readings.Band high = inOrder ? other : one;
        Optional<BandEnd> start = BandEnd.lower(high, readings.kind());
        Optional<BandEnd> end = BandEnd.upper(low, readings.kind());
        Optional<Fix> shorter = start.flatMap(from -> BandEnd.rewrite(low, BandEnd.lower(low, readings.kind()),
                Optional.of(from.opposite())));
        Optional<Fix> later = end.flatMap(to -> BandEnd.rewrite(high, Optional.of(to.opposite()),
                BandEnd.upper(high, readings.kind())));
        return Stream.of(shorter, later).flatMap(Optional::stream).toArray(Fix[]::new);
    }
}
