/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/**
 * A unit of measurement as the bench writes it. Conversions are exact.
 *
 * @param symbol    how it is printed, such as {@code kΩ}
 * @param ucum      its code in the Unified Code for Units of Measure, such as {@code kOhm}; empty when unknown
 * @param dimension its dimension; of the quantity behind the level for a logarithmic unit
 * @param factor    what one of it is in the coherent SI unit
 * @param offset    what its zero is in the coherent SI unit; 273.15 for degC, 0 for nearly all others
 * @param status    whether it was written, and known
 * @param scale     whether its numbers stand in proportion to what they measure, or to the logarithm of it
 */
public record Unit(String symbol, String ucum, Dimension dimension, Exact factor, Exact offset, Status status,
        Scale scale) {
    /** How far a unit was understood. */
    public enum Status { KNOWN, MISSING, UNKNOWN }

    /** How numbers in the unit relate to the quantity; decibels are levels and are converted only by {@link DecibelLevels}. */
    public enum Scale { LINEAR, LOGARITHMIC }

    /** Stands where a number was written without a unit. */
    public static final Unit MISSING = new Unit("", "1", Dimension.NONE, Exact.ONE, Exact.ZERO, Status.MISSING);

    public Unit(String symbol, String ucum, Dimension dimension, Exact factor, Exact offset, Status status) {
        this(symbol, ucum, dimension, factor, offset, status, Scale.LINEAR);
    }

    /** Stands for a spelling that no unit has. */
    public static Unit unknown(String spelling) {
        return new Unit(spelling, "", Dimension.NONE, Exact.ONE, Exact.ZERO, Status.UNKNOWN);
    }

    public boolean isKnown() {
        return status == Status.KNOWN;
    }

    /** Whether it is a level such as dB or dBm, which no limit can be compared with. */
    public boolean isLogarithmic() {
        return scale == Scale.LOGARITHMIC;
    }

    /** For a linear unit only; the caller asks {@link #isLogarithmic()} first. */
    public Exact toBase(Exact value) {
        return value.times(factor).plus(offset);
    }

    /** For a linear unit only; the caller asks {@link #isLogarithmic()} first. */
    public Exact fromBase(Exact base) {
        return base.minus(offset).dividedBy(factor);
    }
}
