/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * Which range of an instrument is used for a limit.
 *
 * @param range   absent when the instrument has no range of that kind
 * @param problem one sentence when there is no range, or none that holds the limits
 */
public record RangeChoice(Optional<MeterRange> range, Optional<String> problem) {

    /** The smallest range that shows every finite end of the limits; of two as wide the more accurate one. */
    public static RangeChoice smallest(List<MeterRange> ranges, QuantityKind kind, Interval limits) {
        Exact place = limits.upper().or(limits::lower).map(Bound::value).orElse(Exact.ZERO);
        Comparator<MeterRange> order = Comparator.<MeterRange, Exact>comparing(range -> range.upTo().base(kind))
                .thenComparing(range -> range.shown().width().orElse(Exact.ZERO))
                .thenComparing(range -> MeterAccuracy.halfWidth(range, place));
        return best(ranges, kind, order, range -> holds(range, limits))
                .map(range -> new RangeChoice(Optional.of(range), Optional.empty()))
                .or(() -> best(ranges, kind, order.reversed(), range -> true).map(RangeChoice::tooSmall))
                .orElseGet(() -> none(kind));
    }

    /** The first in that order; the data of a range are checked only when it is about to be chosen. */
    private static Optional<MeterRange> best(List<MeterRange> ranges, QuantityKind kind, Comparator<MeterRange> order,
            Predicate<MeterRange> suits) {
        Optional<MeterRange> best = Optional.empty();
        for (MeterRange range : ranges) {
            if (range.kind() == kind && range.upTo().fits(kind) && suits.test(range)
                    && (best.isEmpty() || order.compare(range, best.get()) < 0) && MeterAccuracy.problem(range).isEmpty()) {
                best = Optional.of(range);
            }
        }
        return best;
    }

    private static boolean holds(MeterRange range, Interval limits) {
        Interval shown = range.shown();
        return limits.lower().map(end -> shown.contains(end.value())).orElse(true)
                && limits.upper().map(end -> shown.contains(end.value())).orElse(true);
    }

    /** The range that ends at the quantity named. */
    public static RangeChoice named(List<MeterRange> ranges, QuantityKind kind, Quantity upTo) {
        Optional<MeterRange> found = ranges.stream().filter(range -> range.kind() == kind && upTo.fits(kind)
                && range.upTo().fits(kind) && range.upTo().base(kind).equals(upTo.base(kind))
                && MeterAccuracy.problem(range).isEmpty()).findFirst();
        return new RangeChoice(found, found.isPresent() ? Optional.empty()
                : Optional.of("The instrument has no " + kind.words() + " range up to " + upTo + "."));
    }

    private static RangeChoice none(QuantityKind kind) {
        return new RangeChoice(Optional.empty(), Optional.of("The instrument has no usable range for " + kind.words() + "."));
    }

    private static RangeChoice tooSmall(MeterRange largest) {
        return new RangeChoice(Optional.of(largest), Optional.of("No " + largest.kind().words()
                + " range of the instrument holds the limits; the largest is the one up to " + largest.upTo() + "."));
    }
}
