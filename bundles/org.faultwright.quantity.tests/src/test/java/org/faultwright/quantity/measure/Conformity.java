/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/** The probability that a measured unit keeps its limits (JCGM 106:2012, 7.3 and 7.4). */
final class Conformity {
    private Conformity() {
    }

    /**
     * @param measured    in the unit of the limits
     * @param uncertainty the standard uncertainty u, above zero
     * @return from 0 to 1; with u of 0 or less simply whether the value keeps the limits
     */
    static double probability(Exact measured, Exact uncertainty, Interval limits) {
        if (uncertainty.signum() <= 0) {
            return limits.contains(measured) ? 1 : 0;
        }
        double low = limits.lower().map(end -> standardised(end, measured, uncertainty)).orElse(Double.NEGATIVE_INFINITY);
        double high = limits.upper().map(end -> standardised(end, measured, uncertainty)).orElse(Double.POSITIVE_INFINITY);
        return StandardNormal.between(low, high);
    }

    private static double standardised(Bound end, Exact measured, Exact uncertainty) {
        return end.value().minus(measured).dividedBy(uncertainty).doubleValue();
    }
}
