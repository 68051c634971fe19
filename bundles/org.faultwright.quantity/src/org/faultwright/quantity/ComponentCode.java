/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The codes of IEC 60062:2016, clause 4, in which a letter stands for the decimal point: R47, 4R7, 4k7,
 * 47K3, 4M7 for resistances and p47, 4n7, 4u7 for capacitances. 3V3 for 3.3 V is common practice.
 */
final class ComponentCode {
    private static final Pattern WITHIN = Pattern.compile("([+-]?)([0-9]{0,6})([RrkKMGTpnu\u00B5\u03BCmFV])([0-9]{1,6})");
    /**
     * A letter at the end, as in 470R and 47K. Written with a space 47 K is kelvin, which the SI Brochure (5.4.3)
     * asks for; letters that spell a unit and are rare in codes, such as m, F and T, are left to the unit.
     */
    private static final Pattern AT_END = Pattern.compile("()([0-9]{1,6})([RrkKMGpnu\u00B5\u03BC])()");

    private static final int LONGEST = 14;

    private ComponentCode() {
    }

    /** Absent when the text is not such a code. The quantity is in ohm, farad or volt. */
    static Optional<Quantity> read(String text) {
        if (text.length() > LONGEST || text.indexOf(' ') >= 0) {
            return Optional.empty();
        }
        Matcher code = WITHIN.matcher(text);
        if (!code.matches()) {
            code = AT_END.matcher(text);
            if (!code.matches()) {
                return Optional.empty();
            }
        }
        String whole = code.group(2);
        String decimals = code.group(4);
        char letter = code.group(3).charAt(0);
        Exact number = Exact.of(code.group(1) + (whole.isEmpty() ? "0" : whole) + (decimals.isEmpty() ? "" : "." + decimals));
        return Optional.of(new Quantity(number.times(Exact.of("1e" + exponent(letter))), unit(letter), text));
    }

    private static int exponent(char letter) {
        return switch (letter) {
            case 'p' -> -12;
            case 'n' -> -9;
            case 'u', '\u00B5', '\u03BC' -> -6;
            case 'm' -> -3;
            case 'k', 'K' -> 3;
            case 'M' -> 6;
            case 'G' -> 9;
            case 'T' -> 12;
            default -> 0;
        };
    }

    private static Unit unit(char letter) {
        return Units.named(switch (letter) {
            case 'R', 'r', 'k', 'K', 'M', 'G', 'T' -> "ohm";
            case 'V' -> "V";
            default -> "F";
        });
    }
}
