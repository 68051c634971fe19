/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;

/**
 * Levels in decibel, converted only where somebody asks for it: a limit is never compared with one.
 * A level is 10 lg of a ratio of powers and 20 lg of a ratio of voltages (IEC 60027-3). Results are
 * rounded to 15 significant digits.
 */
public final class Levels {
    private static final MathContext PRECISION = new MathContext(15);
    /** Beyond this a ratio is no measurement, and its power of ten would be a number of thousands of digits. */
    private static final Exact LARGEST = Exact.of(1000);

    private Levels() {
    }

    /** The ratio of two powers that are so many decibel apart: 3 dB is 1.995. Absent beyond ±1000 dB. */
    public static Optional<Exact> powerRatio(Exact decibel) {
        return tenToThe(decibel, 10);
    }

    /** The ratio of two voltages or currents that are so many decibel apart: 3 dB is 1.413. Absent beyond ±1000 dB. */
    public static Optional<Exact> amplitudeRatio(Exact decibel) {
        return tenToThe(decibel, 20);
    }

    /**
     * What a level with a stated reference is in its linear unit: 10 dBm is 0.01 W, 3 dBV is 1.413 V.
     * Absent for plain dB, which does not say whether powers or amplitudes are compared.
     */
    public static Optional<Quantity> linear(Quantity level) {
        Unit unit = level.unit();
        if (!unit.isLogarithmic() || unit.dimension().equals(Dimension.NONE)) {
            return Optional.empty();
        }
        return tenToThe(level.value(), perDecade(unit))
                .map(ratio -> Quantity.of(ratio.times(unit.factor()), coherent(unit.dimension())));
    }

    /** The level of a linear quantity over the reference of the level unit; absent for another dimension or a value not above zero. */
    public static Optional<Quantity> level(Quantity linear, Unit levelUnit) {
        boolean fits = levelUnit.isLogarithmic() && linear.unit().isKnown() && !linear.unit().isLogarithmic()
                && linear.dimension().equals(levelUnit.dimension())
                && !linear.dimension().equals(Dimension.NONE) && linear.base().signum() > 0;
        return fits ? Optional.of(Quantity.of(decibel(linear.base().dividedBy(levelUnit.factor()),
                perDecade(levelUnit)), levelUnit)) : Optional.empty();
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

    private static int perDecade(Unit unit) {
        return unit.dimension().equals(Dimension.POWER) ? 10 : 20;
    }

    private static Unit coherent(Dimension dimension) {
        return Units.named(dimension.equals(Dimension.POWER) ? "W" : "V");
    }

    private static Optional<Exact> tenToThe(Exact decibel, int perDecade) {
        if (decibel.absolute().compareTo(LARGEST) > 0) {
            return Optional.empty();
        }
        Exact exponent = decibel.dividedBy(Exact.of(perDecade));
        Exact whole = exponent.floor();
        // Whole decades stay exact; only the rest goes through floating point.
        double rest = Math.pow(10, exponent.minus(whole).doubleValue());
        BigDecimal mantissa = new BigDecimal(rest).round(PRECISION);
        return Optional.of(Exact.of(mantissa.scaleByPowerOfTen((int) whole.doubleValue())));
    }
}
