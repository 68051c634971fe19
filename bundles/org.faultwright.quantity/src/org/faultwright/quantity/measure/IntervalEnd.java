/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/**
 * An end of an interval that may lie at infinity.
 *
 * @param infinite −1 or 1 at an infinity, else 0
 * @param value    where it lies when finite
 * @param reached  whether it belongs to the interval
 */
record IntervalEnd(int infinite, Exact value, boolean reached) {
    private static final Comparator<IntervalEnd> PLACE = Comparator.comparingInt(IntervalEnd::infinite)
            .thenComparing(IntervalEnd::value);
    /** Of two ends at one place the one that is reached counts as further out. */
    private static final Comparator<IntervalEnd> AS_UPPER = PLACE.thenComparing(IntervalEnd::reached);
    private static final Comparator<IntervalEnd> AS_LOWER = PLACE.thenComparing(end -> !end.reached);

    static Interval product(Interval a, Interval b) {
        List<IntervalEnd> corners = List.of(lower(a).times(lower(b)), lower(a).times(upper(b)),
                upper(a).times(lower(b)), upper(a).times(upper(b)));
        return new Interval(corners.stream().min(AS_LOWER).flatMap(IntervalEnd::bound),
                corners.stream().max(AS_UPPER).flatMap(IntervalEnd::bound));
    }

    /** The values of max(x, y) for x in a and y in b. */
    static Interval maximum(Interval a, Interval b) {
        IntervalEnd high = AS_UPPER.compare(upper(a), upper(b)) >= 0 ? upper(a) : upper(b);
        // The lowest maximum is reached only if the higher of both lower ends is, and for equal ones if both are.
        IntervalEnd low = AS_LOWER.compare(lower(a), lower(b)) >= 0 ? lower(a) : lower(b);
        return new Interval(low.bound(), high.bound());
    }

    private static IntervalEnd lower(Interval interval) {
        return interval.lower().map(IntervalEnd::of).orElse(new IntervalEnd(-1, Exact.ZERO, false));
    }

    private static IntervalEnd upper(Interval interval) {
        return interval.upper().map(IntervalEnd::of).orElse(new IntervalEnd(1, Exact.ZERO, false));
    }

    private static IntervalEnd of(Bound bound) {
        return new IntervalEnd(0, bound.value(), bound.included());
    }

    private int sign() {
        return infinite != 0 ? infinite : value.signum();
    }

    /** 0 times an end without limit is approached as 0, and reached where that 0 is. */
    private IntervalEnd times(IntervalEnd other) {
        int sign = sign() * other.sign();
        if (sign == 0) {
            boolean zero = sign() == 0 && reached || other.sign() == 0 && other.reached;
            return new IntervalEnd(0, Exact.ZERO, zero);
        }
        return infinite != 0 || other.infinite != 0 ? new IntervalEnd(sign, Exact.ZERO, false)
                : new IntervalEnd(0, value.times(other.value), reached && other.reached);
    }

    private Optional<Bound> bound() {
        return infinite != 0 ? Optional.empty() : Optional.of(new Bound(value, reached));
    }
}
