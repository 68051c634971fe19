/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * Levels in decibel, computed only where a formula asks for one: a limit is never compared with one.
 * A level is 10 lg of a ratio of powers and 20 lg of a ratio of voltages (IEC 60027-3). Results are
 * rounded to 15 significant digits.
 */
public final class DecibelLevels {
    private static final MathContext PRECISION = new MathContext(15);

    private DecibelLevels() {
    }

    /**
     * The level of a ratio in decibel.
     *
     * @param ratio     above zero
     * @param perDecade 10 for powers, 20 for voltages and currents
     */
    public static Exact decibel(Exact ratio, int perDecade) {
        double level = perDecade * log10(ratio);
        return Exact.of(new BigDecimal(level).round(PRECISION));
    }

    /** The decimal point is moved first: a ratio may lie outside what a double can hold. */
    private static double log10(Exact ratio) {
        BigDecimal decimal = ratio.toDecimal(MathContext.DECIMAL64);
        int exponent = decimal.precision() - decimal.scale();
        return exponent + Math.log10(decimal.scaleByPowerOfTen(-exponent).doubleValue());
    }
}
