/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Finds the value of one reading at which an expression comes to a wanted result. */
public final class RootSearch {
    /** Halvings; twelve digits of the interval. */
    private static final int HALVINGS = 40;

    private RootSearch() {
    }

    /**
     * By halving: from the middle upwards first, then downwards.
     *
     * @param others the values of the other readings, in coherent SI units
     * @return absent where the result does not pass the wanted one between both ends, or cannot be computed
     */
    public static OptionalDouble of(Expression expression, Map<String, Double> others, String reading, double low, double high,
            double wanted) {
        Map<String, Double> values = new HashMap<>(others);
        double middle = low / 2 + high / 2;
        OptionalDouble found = between(expression, values, reading, middle, high, wanted);
        return found.isPresent() ? found : between(expression, values, reading, low, middle, wanted);
    }

    private static OptionalDouble between(Expression expression, Map<String, Double> values, String reading, double low,
            double high, double wanted) {
        double from = low;
        double to = high;
        double atFrom = distance(expression, values, reading, from, wanted);
        double atTo = distance(expression, values, reading, to, wanted);
        if (!(atFrom * atTo <= 0)) {
            return OptionalDouble.empty();
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = from / 2 + to / 2;
            double there = distance(expression, values, reading, middle, wanted);
            if (Double.isNaN(there)) {
                return OptionalDouble.empty();
            }
            boolean left = Math.signum(there) * Math.signum(atFrom) <= 0;
            from = left ? from : middle;
            atFrom = left ? atFrom : there;
            to = left ? middle : to;
        }
        return OptionalDouble.of(from / 2 + to / 2);
    }

    /** No number where the expression cannot be computed. */
    private static double distance(Expression expression, Map<String, Double> values, String reading, double value,
            double wanted) {
        values.put(reading, value);
        DualAlgebra algebra = new DualAlgebra(List.of(), values);
        double result = ExpressionWalk.fold(expression, algebra).value();
        return algebra.problem().isPresent() ? Double.NaN : result - wanted;
    }
}
