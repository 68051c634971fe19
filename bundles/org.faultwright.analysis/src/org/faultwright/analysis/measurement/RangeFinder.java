/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.RangeChoice;

/** Finds the range of an instrument that a step uses. */
final class RangeFinder {
    private RangeFinder() {
    }

    /** The range named, else the smallest that holds the limits; absent when the instrument reads no such kind. */
    static Optional<ChosenRange> choose(Step.Measure step, QuantityKind kind, Instrument instrument, Interval limits) {
        List<MeterRange> ranges = ranges(step, kind, instrument);
        RangeChoice smallest = RangeChoice.smallest(ranges, kind, limits);
        if (step.range().isEmpty()) {
            return smallest.range().map(range -> new ChosenRange(range, false, smallest.problem()));
        }
        RangeChoice named = RangeChoice.named(ranges, kind, step.range().get().value());
        return named.range().map(range -> new ChosenRange(range, true, named.problem()))
                .or(() -> smallest.range().map(range -> new ChosenRange(range, false, named.problem())));
    }

    /** The ranges that read this kind with the step's sensor. */
    static List<MeterRange> ranges(Step.Measure step, QuantityKind kind, Instrument instrument) {
        return instrument.ranges().stream().map(Written::value).filter(range -> range.kind() == kind)
                .filter(range -> step.sensor().isEmpty() || range.sensor().isEmpty()
                        || range.sensor().equals(step.sensor().get().value()))
                .toList();
    }
}
