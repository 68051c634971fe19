/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** How a computed value is printed: with its unit, a point, and no digits that say nothing. */
public final class ValueText {
    private static final MathContext ENDLESS = new MathContext(9);

    private ValueText() {
    }

    /** A value in the coherent SI unit, printed in the unit given; exact unless its decimals never end, then to 9 digits. */
    public static String of(Exact base, Unit unit) {
        return number(unit.fromBase(base), unit);
    }

    /** A difference in the coherent SI unit, such as a half-width, printed in the unit given. */
    public static String difference(Exact base, Unit unit) {
        return number(base.dividedBy(unit.factor()), differenceUnit(unit));
    }

    /** As {@link #of}, rounded to so many places after the point in that unit. */
    public static String rounded(Exact base, Unit unit, int places, RoundingMode rounding) {
        return withUnit(unit.fromBase(base).toDecimal(places, rounding).toPlainString(), unit);
    }

    /** A difference rounded to so many significant digits, in the unit given or one of its prefixes that reads well. */
    public static String significant(Exact base, Unit unit, int digits, RoundingMode rounding) {
        Unit readable = Units.readable(base, unit);
        BigDecimal value = base.dividedBy(readable.factor()).toDecimal(new MathContext(digits, rounding));
        return withUnit(plain(value), differenceUnit(readable));
    }

    /** A number that is already in that unit. */
    static String number(Exact value, Unit unit) {
        return withUnit(value.isDecimal() ? value.toString() : plain(value.toDecimal(ENDLESS).stripTrailingZeros()),
                unit);
    }

    private static String plain(BigDecimal value) {
        return Math.abs((long) value.precision() - value.scale()) > 24 ? value.toString() : value.toPlainString();
    }

    /** Ten degrees apart are written 10 K, so that a difference is not taken for a temperature. */
    private static Unit differenceUnit(Unit unit) {
        return unit.symbol().equals("°C") ? Units.named("K") : unit;
    }

    private static String withUnit(String number, Unit unit) {
        return unit.symbol().isEmpty() || unit.symbol().equals("1") ? number
                : unit.symbol().equals("°") ? number + "°" : number + " " + unit.symbol();
    }
}
