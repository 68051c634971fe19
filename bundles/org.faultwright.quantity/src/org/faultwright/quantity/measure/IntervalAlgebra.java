/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.Map;
import java.util.Optional;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.DecibelLevels;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/** Intervals, exact; each end knows whether it is reached. Roots and levels are rounded outward. */
final class IntervalAlgebra extends Algebra<Interval> {
    private static final Exact LEVEL_ROUNDING = Exact.of("1e-9");

    private final Map<String, Interval> readings;

    private IntervalAlgebra(Map<String, Interval> readings) {
        this.readings = readings;
    }

    static Evaluation<Interval> evaluate(Expression expression, Map<String, Interval> readings) {
        IntervalAlgebra algebra = new IntervalAlgebra(readings);
        return Evaluation.of(ExpressionWalk.fold(expression, algebra), algebra.problem());
    }

    @Override
    Interval reading(Expression.Reading reading) {
        Interval values = readings.get(reading.name());
        if (values == null) {
            unknownReading(reading);
            return Interval.EVERYTHING;
        }
        if (values.isEmpty()) {
            problem(reading, "No value is left for the reading " + reading.name() + "; check its limits.");
            return Interval.EVERYTHING;
        }
        return values;
    }

    @Override
    Interval constant(Expression.Constant constant) {
        return only(constant.quantity().base());
    }

    @Override
    Interval number(long value) {
        return only(Exact.of(value));
    }

    private static Interval only(Exact value) {
        return Interval.from(Bound.including(value), Bound.including(value));
    }

    @Override
    Interval sum(Expression place, Interval a, Interval b) {
        return new Interval(plus(a.lower(), b.lower()), plus(a.upper(), b.upper()));
    }

    private static Optional<Bound> plus(Optional<Bound> a, Optional<Bound> b) {
        return a.flatMap(x -> b.map(y -> new Bound(x.value().plus(y.value()), x.included() && y.included())));
    }

    @Override
    Interval difference(Expression place, Interval a, Interval b) {
        return sum(place, a, negation(place, b));
    }

    @Override
    Interval negation(Expression place, Interval a) {
        return new Interval(a.upper().map(IntervalAlgebra::negated), a.lower().map(IntervalAlgebra::negated));
    }

    private static Bound negated(Bound end) {
        return new Bound(end.value().negated(), end.included());
    }

    @Override
    Interval product(Expression place, Interval a, Interval b) {
        return IntervalEnd.product(a, b);
    }

    @Override
    Interval quotient(Expression place, Interval a, Interval b) {
        if (b.contains(Exact.ZERO)) {
            divisionByZero(place);
            return Interval.EVERYTHING;
        }
        return IntervalEnd.product(a, reciprocal(b));
    }

    /** Of an interval without 0. Its end nearer to 0 becomes the far one, without end if it is 0 itself. */
    private static Interval reciprocal(Interval b) {
        boolean positive = b.lower().isPresent() && b.lower().get().value().signum() >= 0;
        Bound zero = Bound.excluding(Exact.ZERO);
        return new Interval(positive || b.upper().isPresent() && b.upper().get().value().signum() != 0
                ? Optional.of(b.upper().map(IntervalAlgebra::inverse).orElse(zero)) : Optional.empty(),
                !positive || b.lower().get().value().signum() != 0
                        ? Optional.of(b.lower().map(IntervalAlgebra::inverse).orElse(zero)) : Optional.empty());
    }

    private static Bound inverse(Bound end) {
        return new Bound(Exact.ONE.dividedBy(end.value()), end.included());
    }

    @Override
    Interval minimum(Expression place, Interval a, Interval b) {
        return negation(place, maximum(place, negation(place, a), negation(place, b)));
    }

    @Override
    Interval maximum(Expression place, Interval a, Interval b) {
        return IntervalEnd.maximum(a, b);
    }

    @Override
    Interval absolute(Expression place, Interval a) {
        if (a.lower().isPresent() && a.lower().get().value().signum() >= 0) {
            return a;
        }
        Interval turned = negation(place, a);
        if (turned.lower().isPresent() && turned.lower().get().value().signum() >= 0) {
            return turned;
        }
        return new Interval(Optional.of(Bound.including(Exact.ZERO)), IntervalEnd.maximum(a, turned).upper());
    }

    @Override
    Interval square(Expression place, Interval a) {
        Interval size = absolute(place, a);
        return new Interval(size.lower().map(IntervalAlgebra::squared), size.upper().map(IntervalAlgebra::squared));
    }

    private static Bound squared(Bound end) {
        return new Bound(end.value().squared(), end.included());
    }

    @Override
    Interval squareRoot(Expression place, Interval a) {
        if (a.lower().isEmpty() || a.lower().get().value().signum() < 0) {
            negativeRoot(place);
            return Interval.EVERYTHING;
        }
        return new Interval(a.lower().map(end -> new Bound(end.value().squareRoot(RoundingMode.FLOOR), end.included())),
                a.upper().map(end -> new Bound(end.value().squareRoot(RoundingMode.CEILING), end.included())));
    }

    @Override
    Interval decibel(Expression place, Interval a, Interval b, int perDecade) {
        Interval ratio = quotient(place, a, b);
        if (ratio.lower().isEmpty() || ratio.lower().get().value().signum() < 0
                || ratio.lower().get().value().signum() == 0 && ratio.lower().get().included()) {
            levelOfNothing(place);
            return Interval.EVERYTHING;
        }
        return new Interval(ratio.lower().filter(end -> end.value().signum() > 0).map(end -> new Bound(
                DecibelLevels.decibel(end.value(), perDecade).minus(LEVEL_ROUNDING), end.included())),
                ratio.upper().map(end -> new Bound(DecibelLevels.decibel(end.value(), perDecade).plus(LEVEL_ROUNDING),
                        end.included())));
    }
}
