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
 * A one-sided limit has no width; for it the limit itself stands in, counted from zero, so that the figure depends on the
 * uncertainty alone and never gains from a coarser instrument with a larger range. That is this program's convention; what
 * decides is the guard band of JCGM 106:2012, 8.3.
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
        return range.kind() == QuantityKind.TEMPERATURE ? Optional.empty()
                : limits.lower().or(limits::upper).map(Bound::value).map(Exact::absolute);
    }
}
