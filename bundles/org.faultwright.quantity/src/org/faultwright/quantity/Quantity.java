/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number with its unit, exact, and with the author's own spelling kept for print.
 *
 * @param value    the number as written
 * @param unit     the unit as written; may be missing or unknown, which a rule reports
 * @param spelling the author's spelling, such as {@code 4k7} or {@code 4.7 kohm}
 */
public record Quantity(Exact value, Unit unit, String spelling) {
    private static final Pattern DECIMALS = Pattern.compile("[-\u2212]?\\s*\\d+\\.(\\d+)(?![\\deE.])");

    /**
     * A quantity from its two parts as a grammar finds them. What cannot be read as a number becomes
     * zero: use {@link QuantityText#read(String, String)} where the reason is to be told.
     */
    public static Quantity of(String number, String unit) {
        return QuantityText.read(number, unit).quantity();
    }

    /** A quantity that was computed rather than written; its spelling is its exact value with the unit's symbol. */
    public static Quantity of(Exact value, Unit unit) {
        return new Quantity(value, unit, ValueText.number(value, unit));
    }

    public Dimension dimension() {
        return unit.dimension();
    }

    /** The value in the coherent SI unit of its dimension; kelvin for a temperature. */
    public Exact base() {
        return unit.toBase(value);
    }

    /** The value taken as a difference: 10 degC is 10 K here, where {@link #base()} gives 283.15 K. */
    public Exact difference() {
        return value.times(unit.factor());
    }

    /** Decibels by which sound levels differ, in the unit of the levels; anything else as it is. */
    public Quantity asDifferenceOf(Unit levels) {
        boolean decibels = unit.isLogarithmic() && unit.dimension().equals(Dimension.NONE) && levels.dimension().equals(Dimension.SOUND_LEVEL);
        return decibels ? new Quantity(value, levels, spelling) : this;
    }

    /** The value in the coherent SI unit, read as that kind of quantity: a temperature difference has no zero offset. */
    public Exact base(QuantityKind kind) {
        return kind == QuantityKind.TEMPERATURE_DIFFERENCE ? difference() : base();
    }

    /**
     * What one in the last digit written is worth, in the coherent SI unit: 0.01 V for 3.30 V. Of a whole number, the last digit that is not 0
     * counts, since 1200 V may be rounded.
     */
    public Exact lastDigit() {
        Matcher written = DECIMALS.matcher(spelling);
        int places = written.lookingAt() ? written.group(1).length()
                : value.toDecimal(MathContext.DECIMAL64).stripTrailingZeros().scale();
        return Exact.of(BigDecimal.ONE.scaleByPowerOfTen(-places)).times(unit.factor());
    }

    /**
     * Whether this can be a reading or a limit of the kind given. Percent and plain counts have no
     * dimension. A level in decibels fits no kind: it is converted by {@link DecibelLevels} or not at all.
     */
    public boolean fits(QuantityKind kind) {
        return unit.isKnown() && !unit.isLogarithmic() && dimension().equals(kind.dimension());
    }

    @Override
    public String toString() {
        return spelling;
    }
}
