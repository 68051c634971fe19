/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.RangeChoice;

/** Which range of the instrument a measurement is read on. */
final class MeterUse {
    private MeterUse() {
    }

    /** The range that the author names, else the smallest one that shows every limit of the step. */
    static Optional<MeterRange> range(Step.Measure measure, Instrument instrument) {
        if (measure.kind().isEmpty()) {
            return Optional.empty();
        }
        QuantityKind kind = measure.kind().get().value();
        List<MeterRange> ranges = instrument.ranges().stream().map(Written::value)
                .filter(range -> measure.sensor().isEmpty() || range.sensor().equals(measure.sensor().get().value()))
                .toList();
        return measure.range().isPresent() ? RangeChoice.named(ranges, kind, measure.range().get().value()).range()
                : RangeChoice.smallest(ranges, kind, shown(measure, kind)).range();
    }

    /** From the lowest to the highest end of any limit of the step. */
    private static Interval shown(Step.Measure measure, QuantityKind kind) {
        List<Limit> limits = new ArrayList<>();
        measure.expects().ifPresent(expects -> limits.add(expects.limit().value()));
        for (Outcome outcome : measure.outcomes()) {
            if (outcome.head() instanceof Outcome.Band band) {
                limits.add(band.limit().value());
            }
        }
        return limits.stream().filter(limit -> limit.fits(kind)).map(limit -> limit.interval(kind))
                .reduce(MeterUse::hull).orElse(Interval.EVERYTHING);
    }

    private static Interval hull(Interval one, Interval other) {
        List<org.faultwright.quantity.Bound> ends = java.util.stream.Stream
                .of(one.lower(), one.upper(), other.lower(), other.upper()).flatMap(Optional::stream)
                .sorted(java.util.Comparator.comparing(org.faultwright.quantity.Bound::value)).toList();
        return ends.isEmpty() ? Interval.EVERYTHING : Interval.from(ends.get(0), ends.get(ends.size() - 1));
    }
}
