/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A product or quotient of units, read from left to right as in UCUM: {@code mV/K}, {@code N.m/A},
 * {@code A2.s}. Worked out by {@link UcumCode}.
 */
final class CompoundUnit {
    private static final Pattern FACTOR = Pattern.compile("([./]?)([A-Za-z%]+|1)(-?[1-9])?");

    private CompoundUnit() {
    }

    static Optional<Unit> read(String plain) {
        if (plain.indexOf('.') < 0 && plain.indexOf('/') < 0 && !endsInDigit(plain)) {
            return Optional.empty();
        }
        StringBuilder code = new StringBuilder();
        StringBuilder symbol = new StringBuilder();
        Matcher factor = FACTOR.matcher(plain);
        int end = 0;
        while (end < plain.length()) {
            if (!factor.find(end) || factor.start() != end || end > 0 && factor.group(1).isEmpty()
                    || end == 0 && factor.group(1).equals(".")) {
                return Optional.empty();
            }
            Optional<Unit> unit = linear(factor.group(2));
            if (unit.isEmpty()) {
                return Optional.empty();
            }
            String exponent = factor.group(3) == null ? "" : factor.group(3);
            code.append(factor.group(1)).append(inProduct(unit.get().ucum())).append(exponent);
            symbol.append(factor.group(1).equals(".") ? "·" : factor.group(1))
                    .append(UnitSpelling.printed(printed(factor.group(2), unit.get()) + exponent));
            end = factor.end();
        }
        return UcumCode.read(code.toString()).map(product -> new Unit(symbol.toString(), code.toString(),
                product.dimension(), product.factor(), Exact.ZERO, Unit.Status.KNOWN));
    }

    private static boolean endsInDigit(String plain) {
        return plain.length() > 1 && Character.isDigit(plain.charAt(plain.length() - 1));
    }

    private static Optional<Unit> linear(String spelling) {
        if (spelling.equals("degC")) {
            return Units.single("K");
        }
        return Units.single(spelling).filter(unit -> !unit.isLogarithmic() && !unit.dimension().equals(Dimension.SOUND_LEVEL) && unit.offset().equals(Exact.ZERO));
    }

    private static String printed(String spelling, Unit unit) {
        return spelling.equals("degC") ? "°C" : unit.symbol();
    }

    private static String inProduct(String code) {
        return code.indexOf('.') >= 0 || code.indexOf('/') >= 0 ? "(" + code + ")" : code;
    }
}
