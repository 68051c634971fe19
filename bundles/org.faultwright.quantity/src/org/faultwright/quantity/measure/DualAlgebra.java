/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;

import org.faultwright.quantity.measure.DualAlgebra.Dual;

/** Numbers with their derivatives by each reading: forward differentiation. */
final class DualAlgebra extends Algebra<Dual> {
    /** @param slopes the partial derivatives, in the order of the names */
    record Dual(double value, double[] slopes) {
    }

    private final List<String> names;
    private final Map<String, Double> values;
    private final Map<Expression.Constant, Dual> constants = new IdentityHashMap<>();

    /**
     * @param names  the readings by which to differentiate; none where only the value is wanted
     * @param values of the readings; may be changed between one use and the next
     */
    DualAlgebra(List<String> names, Map<String, Double> values) {
        this.names = names;
        this.values = values;
    }

    @Override
    Dual reading(Expression.Reading reading) {
        Double value = values.get(reading.name());
        if (value == null) {
            unknownReading(reading);
            return number(0);
        }
        double[] slopes = new double[names.size()];
        int place = names.indexOf(reading.name());
        if (place >= 0) {
            slopes[place] = 1;
        }
        return new Dual(value, slopes);
    }

    @Override
    Dual constant(Expression.Constant constant) {
        return constants.computeIfAbsent(constant,
                known -> new Dual(known.quantity().base().doubleValue(), new double[names.size()]));
    }

    @Override
    Dual number(long value) {
        return new Dual(value, new double[names.size()]);
    }

    private static Dual mix(double value, Dual a, double byA, Dual b, double byB) {
        double[] slopes = new double[a.slopes.length];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = a.slopes[i] * byA + b.slopes[i] * byB;
        }
        return new Dual(value, slopes);
    }

    private static Dual of(double value, Dual a, double slope) {
        return mix(value, a, slope, a, 0);
    }

    @Override
    Dual sum(Expression place, Dual a, Dual b) {
        return mix(a.value + b.value, a, 1, b, 1);
    }

    @Override
    Dual difference(Expression place, Dual a, Dual b) {
        return mix(a.value - b.value, a, 1, b, -1);
    }

    @Override
    Dual product(Expression place, Dual a, Dual b) {
        return mix(a.value * b.value, a, b.value, b, a.value);
    }

    @Override
    Dual quotient(Expression place, Dual a, Dual b) {
        if (b.value == 0) {
            divisionByZero(place);
            return number(0);
        }
        return mix(a.value / b.value, a, 1 / b.value, b, -a.value / (b.value * b.value));
    }

    @Override
    Dual negation(Expression place, Dual a) {
        return of(-a.value, a, -1);
    }

    @Override
    Dual minimum(Expression place, Dual a, Dual b) {
        return a.value <= b.value ? a : b;
    }

    @Override
    Dual maximum(Expression place, Dual a, Dual b) {
        return a.value >= b.value ? a : b;
    }

    @Override
    Dual absolute(Expression place, Dual a) {
        return a.value < 0 ? negation(place, a) : a;
    }

    @Override
    Dual square(Expression place, Dual a) {
        return of(a.value * a.value, a, 2 * a.value);
    }

    @Override
    Dual squareRoot(Expression place, Dual a) {
        if (a.value < 0) {
            negativeRoot(place);
            return number(0);
        }
        double root = Math.sqrt(a.value);
        if (root == 0 && !names.isEmpty() && !place.readings().isEmpty()) {
            problem(place, "In " + place + " the root is of 0, where its slope has no limit; give readings away from 0.");
        }
        return of(root, a, root == 0 ? 0 : 1 / (2 * root));
    }

    @Override
    Dual decibel(Expression place, Dual a, Dual b, int perDecade) {
        if (!(a.value * b.value > 0)) {
            levelOfNothing(place);
            return number(0);
        }
        double slope = perDecade / Math.log(10);
        return mix(perDecade * Math.log10(a.value / b.value), a, slope / a.value, b, -slope / b.value);
    }
}
