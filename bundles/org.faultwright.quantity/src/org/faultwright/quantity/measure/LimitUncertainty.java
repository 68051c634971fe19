/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;
import java.util.List;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;

/**
 * How well an instrument decides one end of a limit; all in the coherent SI unit.
 *
 * @param limit     the end of the limit
 * @param halfWidth a, from the accuracy statement at that reading; exact
 * @param variance  u², the instrument and everything else together; exact
 * @param expanded  U = 2·u, rounded up at the 20th digit or later
 * @param guard     the guard band that the decision rule asks for at this end
 */
public record LimitUncertainty(Exact limit, Exact halfWidth, Exact variance, Exact expanded, Exact guard) {
    /** The coverage factor, for about 95 % of a normal distribution (JCGM 100:2008, 6.3.3). */
    public static final int COVERAGE_FACTOR = 2;

    static LimitUncertainty at(Exact limit, MeterRange range, List<UncertaintyContribution> extras) {
        Exact halfWidth = MeterAccuracy.halfWidth(range, limit);
        Exact variance = halfWidth.squared().dividedBy(Exact.of(3));
        for (UncertaintyContribution extra : extras) {
            variance = variance.plus(extra.variance());
        }
        Exact expanded = variance.squareRoot(RoundingMode.CEILING).times(COVERAGE_FACTOR);
        return new LimitUncertainty(limit, halfWidth, variance, expanded, Exact.ZERO);
    }

    /** The standard uncertainty u, rounded up at the 20th digit. */
    public Exact standard() {
        return expanded.dividedBy(Exact.of(COVERAGE_FACTOR));
    }

    LimitUncertainty guarded(Exact width) {
        return new LimitUncertainty(limit, halfWidth, variance, expanded, width);
    }
}
