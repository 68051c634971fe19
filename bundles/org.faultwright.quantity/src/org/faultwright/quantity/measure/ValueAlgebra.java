/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.Map;

import org.faultwright.quantity.DecibelLevels;
import org.faultwright.quantity.Exact;

/** Exact numbers. */
final class ValueAlgebra extends Algebra<Exact> {
    private final Map<String, Exact> readings;

    private ValueAlgebra(Map<String, Exact> readings) {
        this.readings = readings;
    }

    static Evaluation<Exact> evaluate(Expression expression, Map<String, Exact> readings) {
        ValueAlgebra algebra = new ValueAlgebra(readings);
        return Evaluation.of(ExpressionWalk.fold(expression, algebra), algebra.problem());
    }

    @Override
    Exact reading(Expression.Reading reading) {
        if (!readings.containsKey(reading.name())) {
            unknownReading(reading);
        }
        return readings.getOrDefault(reading.name(), Exact.ZERO);
    }

    @Override
    Exact constant(Expression.Constant constant) {
        return constant.quantity().base();
    }

    @Override
    Exact number(long value) {
        return Exact.of(value);
    }

    @Override
    Exact sum(Expression place, Exact a, Exact b) {
        return a.plus(b);
    }

    @Override
    Exact difference(Expression place, Exact a, Exact b) {
        return a.minus(b);
    }

    @Override
    Exact product(Expression place, Exact a, Exact b) {
        return a.times(b);
    }

    @Override
    Exact quotient(Expression place, Exact a, Exact b) {
        if (b.signum() == 0) {
            divisionByZero(place);
            return Exact.ZERO;
        }
        return a.dividedBy(b);
    }

    @Override
    Exact negation(Expression place, Exact a) {
        return a.negated();
    }

    @Override
    Exact minimum(Expression place, Exact a, Exact b) {
        return a.min(b);
    }

    @Override
    Exact maximum(Expression place, Exact a, Exact b) {
        return a.max(b);
    }

    @Override
    Exact absolute(Expression place, Exact a) {
        return a.absolute();
    }

    @Override
    Exact square(Expression place, Exact a) {
        return a.squared();
    }

    @Override
    Exact squareRoot(Expression place, Exact a) {
        if (a.signum() < 0) {
            negativeRoot(place);
            return Exact.ZERO;
        }
        return a.squareRoot(RoundingMode.FLOOR);
    }

    @Override
    Exact decibel(Expression place, Exact a, Exact b, int perDecade) {
        if (a.signum() * b.signum() <= 0) {
            levelOfNothing(place);
            return Exact.ZERO;
        }
        return DecibelLevels.decibel(a.dividedBy(b), perDecade);
    }
}
