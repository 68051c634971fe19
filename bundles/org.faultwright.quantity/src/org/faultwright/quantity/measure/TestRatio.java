/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;

/**
 * The test uncertainty ratio: tolerance width over twice the expanded uncertainty (ANSI/NCSL Z540.3, 3.11).
 * A one-sided limit has no width; for it the part of the range in use that the limit accepts stands in,
 * counted from zero where range and limit lie on both sides of it. That is this program's convention.
 */
final class TestRatio {
    private TestRatio() {
    }

    /** Absent when the limit takes in every value, has no width, leaves nothing of the range, or there is no uncertainty. */
    static Optional<Exact> of(Interval limits, MeterRange range, List<LimitUncertainty> ends) {
        Optional<Exact> largest = ends.stream().map(LimitUncertainty::expanded).reduce(Exact::max)
                .filter(expanded -> expanded.signum() > 0);
        return largest.flatMap(expanded -> width(limits, range).filter(width -> width.signum() > 0)
                .map(width -> width.dividedBy(expanded.times(2))));
    }

    static Optional<Exact> width(Interval limits, MeterRange range) {
        if (limits.lower().isPresent() == limits.upper().isPresent()) {
            return limits.width();
        }
        // The zero of degC is no zero of nature: nothing can be counted from it.
        if (range.kind() == QuantityKind.TEMPERATURE) {
            return Optional.empty();
        }
        Exact zero = range.upTo().unit().offset();
        Exact end = limits.lower().or(limits::upper).map(Bound::value).orElseThrow();
        Interval shown = range.shown();
        Exact lowest = shown.lower().map(Bound::value).orElseThrow();
        Exact highest = shown.upper().map(Bound::value).orElseThrow();
        return Optional.of(limits.upper().isPresent()
                ? end.minus(end.compareTo(zero) > 0 ? lowest.max(zero) : lowest)
                : (end.compareTo(zero) < 0 ? highest.min(zero) : highest).minus(end));
    }
}
