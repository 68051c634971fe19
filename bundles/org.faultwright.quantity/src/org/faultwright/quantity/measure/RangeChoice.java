/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

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
        List<MeterRange> usable = usable(ranges, kind);
        if (usable.isEmpty()) {
            return none(kind);
        }
        List<Exact> ends = ends(limits);
        Exact place = ends.isEmpty() ? Exact.ZERO : ends.get(ends.size() - 1);
        Comparator<MeterRange> order = Comparator.<MeterRange, Exact>comparing(range -> range.upTo().base(kind))
                .thenComparing(range -> range.shown().width().orElse(Exact.ZERO))
                .thenComparing(range -> MeterAccuracy.halfWidth(range, place));
        return usable.stream().filter(range -> ends.stream().allMatch(range.shown()::contains)).min(order)
                .map(range -> new RangeChoice(Optional.of(range), Optional.empty()))
                .orElseGet(() -> tooSmall(usable.stream().max(order).orElseThrow()));
    }

    /** The range that ends at the quantity named. */
    public static RangeChoice named(List<MeterRange> ranges, QuantityKind kind, Quantity upTo) {
        Optional<MeterRange> found = usable(ranges, kind).stream().filter(range -> upTo.fits(kind)
                && range.upTo().base(kind).equals(upTo.base(kind))).findFirst();
        return new RangeChoice(found, found.isPresent() ? Optional.empty()
                : Optional.of("The instrument has no " + kind.words() + " range up to " + upTo + "."));
    }

    private static List<MeterRange> usable(List<MeterRange> ranges, QuantityKind kind) {
        return ranges.stream().filter(range -> range.kind() == kind && MeterAccuracy.problem(range).isEmpty()).toList();
    }

    private static RangeChoice none(QuantityKind kind) {
        return new RangeChoice(Optional.empty(), Optional.of("The instrument has no usable range for " + kind.words() + "."));
    }

    private static RangeChoice tooSmall(MeterRange largest) {
        return new RangeChoice(Optional.of(largest), Optional.of("No " + largest.kind().words()
                + " range of the instrument holds the limits; the largest is the one up to " + largest.upTo() + "."));
    }

    private static List<Exact> ends(Interval limits) {
        return Stream.of(limits.lower(), limits.upper()).flatMap(Optional::stream).map(Bound::value).toList();
    }
}
