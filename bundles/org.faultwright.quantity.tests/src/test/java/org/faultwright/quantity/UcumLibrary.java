/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.text.ParsePosition;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

import javax.measure.MeasurementException;
import javax.measure.UnitConverter;

import systems.uom.ucum.format.UCUMFormat;
import tech.units.indriya.function.RationalNumber;
import tech.units.indriya.unit.UnitDimension;

/** What a units library of another hand (JSR 385: indriya, with the UCUM units of systems-ucum) knows about a UCUM code. */
final class UcumLibrary {
    /** Longer codes are no unit that anybody writes; they would only make the library work. */
    static final int LONGEST_CODE = 60;

    /**
     * Units with exponents of at most two digits, numbers, brackets, annotations. Outside it the library
     * ends in an Error instead of an exception: on other letters, and on exponents of some thousands.
     */
    private static final Pattern LEXICAL = Pattern.compile("(?:[A-Za-z%'_]+(?:[+-]?[0-9]{1,2})?(?![0-9])"
            + "|\\[[A-Za-z0-9_'.:%*/]+\\](?:[+-]?[0-9]{1,2})?(?![0-9])|[0-9]{1,9}(?![0-9])|\\{[!-z|~]*\\}"
            + "|[./(]|\\)(?![0-9]))+");

    private UcumLibrary() {
    }

    /** A linear unit; absent when the code is none, or is logarithmic. The symbol is the code itself. */
    static Optional<Unit> read(String code) {
        if (code.length() > LONGEST_CODE || !LEXICAL.matcher(code).matches()) {
            return Optional.empty();
        }
        try {
            return convert(UCUMFormat.getInstance(UCUMFormat.Variant.CASE_SENSITIVE).parse(code, new ParsePosition(0)), code);
        } catch (MeasurementException | IllegalArgumentException | ArithmeticException
                | UnsupportedOperationException notACode) {
            // The library's way of saying that the code is no unit, or one that it cannot convert.
            return Optional.empty();
        }
    }

    private static Optional<Unit> convert(javax.measure.Unit<?> unit, String code) {
        UnitConverter converter = toBase(unit);
        Exact zero = exact(converter.convert(BigInteger.ZERO));
        Exact one = exact(converter.convert(BigInteger.ONE)).minus(zero);
        boolean linear = converter.isLinear() || isAffine(converter, zero, one);
        return linear && one.signum() != 0
                ? Optional.of(new Unit(code, code, dimension(unit), one, zero, Unit.Status.KNOWN))
                : Optional.empty();
    }

    private static boolean isAffine(UnitConverter converter, Exact zero, Exact one) {
        return exact(converter.convert(BigInteger.TEN)).equals(zero.plus(one.times(10)));
    }

    @SuppressWarnings({ "rawtypes", "unchecked" })
    private static UnitConverter toBase(javax.measure.Unit unit) {
        return unit.getConverterTo(unit.getSystemUnit());
    }

    private static Exact exact(Number number) {
        if (number instanceof RationalNumber rational) {
            return Exact.ratio(rational.getDividend(), rational.getDivisor());
        }
        return Exact.of(number instanceof BigDecimal decimal ? decimal : new BigDecimal(number.toString()));
    }

    private static Dimension dimension(javax.measure.Unit<?> unit) {
        javax.measure.Dimension read = unit.getDimension();
        Map<? extends javax.measure.Dimension, Integer> parts = read.getBaseDimensions();
        if (parts == null) {
            parts = Map.of(read, 1);
        }
        return new Dimension(exponent(parts, UnitDimension.LENGTH), exponent(parts, UnitDimension.MASS),
                exponent(parts, UnitDimension.TIME), exponent(parts, UnitDimension.ELECTRIC_CURRENT),
                exponent(parts, UnitDimension.TEMPERATURE), exponent(parts, UnitDimension.AMOUNT_OF_SUBSTANCE),
                exponent(parts, UnitDimension.LUMINOUS_INTENSITY));
    }

    private static int exponent(Map<? extends javax.measure.Dimension, Integer> parts, javax.measure.Dimension base) {
        Integer exponent = parts.get(base);
        return exponent == null ? 0 : exponent;
    }
}
