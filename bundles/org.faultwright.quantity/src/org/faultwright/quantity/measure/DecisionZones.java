/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/**
 * Where a reading is accepted, where it leaves doubt and where it is rejected. The intervals split the line.
 *
 * @param accept   may be empty when the guard bands meet
 * @param doubtful none under the simple rule
 * @param reject   none for a limit that takes in every value
 */
public record DecisionZones(Interval accept, List<Interval> doubtful, List<Interval> reject) {
    /** Where nothing could be computed every value leaves doubt. */
    static final DecisionZones UNKNOWN = new DecisionZones(Interval.from(Bound.excluding(Exact.ZERO), Bound.excluding(Exact.ZERO)),
            List.of(Interval.EVERYTHING), List.of());

    /** @param guards the guard band at each end of the limits, in the coherent SI unit, not negative */
    static DecisionZones of(Interval limits, Exact lowerGuard, Exact upperGuard) {
        Optional<Bound> low = limits.lower().map(end -> end(end, lowerGuard, lowerGuard));
        Optional<Bound> high = limits.upper().map(end -> end(end, upperGuard.negated(), upperGuard));
        Optional<Interval> under = limits.lower().map(end -> Interval.below(
                lowerGuard.signum() == 0 ? end.opposite() : Bound.excluding(end.value().minus(lowerGuard))));
        Optional<Interval> over = limits.upper().map(end -> Interval.above(
                upperGuard.signum() == 0 ? end.opposite() : Bound.excluding(end.value().plus(upperGuard))));
        Interval accept = new Interval(low, high);
        return new DecisionZones(accept, doubtful(accept, under, over), Stream.of(under, over).flatMap(Optional::stream).toList());
    }

    private static Bound end(Bound limit, Exact shift, Exact guard) {
        return guard.signum() == 0 ? limit : Bound.including(limit.value().plus(shift));
    }

    private static List<Interval> doubtful(Interval accept, Optional<Interval> under, Optional<Interval> over) {
        Optional<Bound> begin = under.flatMap(Interval::upper).map(Bound::opposite);
        Optional<Bound> end = over.flatMap(Interval::lower).map(Bound::opposite);
        if (accept.isEmpty()) {
            return Stream.of(new Interval(begin, end)).filter(zone -> !zone.isEmpty()).toList();
        }
        Stream<Interval> low = begin.stream().map(from -> Interval.from(from, accept.lower().orElseThrow().opposite()));
        Stream<Interval> high = end.stream().map(to -> Interval.from(accept.upper().orElseThrow().opposite(), to));
        return Stream.concat(low, high).filter(zone -> !zone.isEmpty()).toList();
    }

    /**
     * The same zones told by the first and last value that a display with that last digit can show in
     * each, for print. Rounding is inward, so that no value changes its zone and none grows.
     *
     * @param step   the value of the last digit, above zero
     * @param origin where the display shows zero, in the coherent SI unit; 273.15 for degC, else 0
     */
    public DecisionZones shown(Exact step, Exact origin) {
        return new DecisionZones(inward(accept, step, origin),
                doubtful.stream().map(zone -> inward(zone, step, origin)).filter(zone -> !zone.isEmpty()).toList(),
                reject.stream().map(zone -> inward(zone, step, origin)).toList());
    }

    private static Interval inward(Interval zone, Exact step, Exact origin) {
        return new Interval(zone.lower().map(end -> Bound.including(above(end, step, origin))),
                zone.upper().map(end -> Bound.including(below(end, step, origin))));
    }

    private static Exact above(Bound end, Exact step, Exact origin) {
        Exact steps = end.value().minus(origin).dividedBy(step);
        Exact first = steps.ceiling();
        return (first.equals(steps) && !end.included() ? first.plus(Exact.ONE) : first).times(step).plus(origin);
    }

    private static Exact below(Bound end, Exact step, Exact origin) {
        Exact steps = end.value().minus(origin).dividedBy(step);
        Exact last = steps.floor();
        return (last.equals(steps) && !end.included() ? last.minus(Exact.ONE) : last).times(step).plus(origin);
    }
}
