/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;

/**
 * What repeated readings of one quantity say (JCGM 100:2008, 4.2).
 *
 * @param mean     the arithmetic mean
 * @param standard the experimental standard deviation s of one reading (4.2.2)
 * @param ofMean   that of the mean, s/√n, the standard uncertainty of the mean (4.2.3)
 */
record RepeatedReadings(double mean, double standard, double ofMean) {

    /** Absent for fewer than two readings. */
    static Optional<RepeatedReadings> of(List<Double> readings) {
        int n = readings.size();
        if (n < 2) {
            return Optional.empty();
        }
        double mean = mean(readings);
        double deviation = Math.sqrt(products(readings, readings) / (n - 1));
        return Optional.of(new RepeatedReadings(mean, deviation, deviation / Math.sqrt(n)));
    }

    /** The correlation coefficient of readings taken in pairs (5.2.3); absent for lists of unequal length or without spread. */
    static Optional<Double> correlation(List<Double> one, List<Double> other) {
        if (one.size() != other.size() || one.size() < 2) {
            return Optional.empty();
        }
        double both = Math.sqrt(products(one, one) * products(other, other));
        return both > 0 ? Optional.of(Math.max(-1, Math.min(1, products(one, other) / both))) : Optional.empty();
    }

    private static double mean(List<Double> readings) {
        return readings.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    private static double products(List<Double> one, List<Double> other) {
        double meanOne = mean(one);
        double meanOther = mean(other);
        double sum = 0;
        for (int i = 0; i < one.size(); i++) {
            sum += (one.get(i) - meanOne) * (other.get(i) - meanOther);
        }
        return sum;
    }
}
