/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/** Brings the Unicode and ASCII spellings of a unit to one form: ohm, u, degC, and a point between factors. */
final class UnitSpelling {
    private UnitSpelling() {
    }

    static String plain(String written) {
        StringBuilder plain = new StringBuilder(written.length());
        for (int i = 0; i < written.length(); i++) {
            char c = written.charAt(i);
            switch (c) {
                case 'Ω', '\u2126' -> plain.append("ohm");
                case '\u00B5', '\u03BC' -> plain.append('u');
                case '\u212A' -> plain.append('K');
                case '\u2103' -> plain.append("degC");
                case '\u2109' -> plain.append("degF");
                // The ring and the ordinal sign are often typed for the degree sign.
                case '°', '\u00BA', '\u02DA' -> plain.append("deg");
                case '·', '\u22C5', '\u2219', '*', '\u00D7' -> plain.append('.');
                case '\u2215', '\u2044', '\u00F7' -> plain.append('/');
                case '\u2212', '\u207B' -> plain.append('-');
                case '\u00B9' -> plain.append('1');
                case '\u00B2' -> plain.append('2');
                case '\u00B3' -> plain.append('3');
                case '\u2030' -> plain.append("permille");
                case '^' -> { }
                default -> plain.append(superscriptDigit(c));
            }
        }
        return plain.toString().strip();
    }

    private static char superscriptDigit(char c) {
        return c >= '\u2074' && c <= '\u2079' ? (char) ('4' + c - '\u2074') : c;
    }

    /** {@code m/s2} as it is printed: {@code m/s²}. */
    static String printed(String symbol) {
        StringBuilder printed = new StringBuilder(symbol.length());
        for (int i = 0; i < symbol.length(); i++) {
            char c = symbol.charAt(i);
            boolean exponent = i > 0 && (Character.isLetter(symbol.charAt(i - 1)) || symbol.charAt(i - 1) == '-');
            switch (c) {
                case '.' -> printed.append('·');
                case '2' -> printed.append(exponent ? '²' : c);
                case '3' -> printed.append(exponent ? '³' : c);
                case '-' -> printed.append('\u207B');
                case '1' -> printed.append(exponent ? '¹' : c);
                default -> printed.append(exponent && c >= '4' && c <= '9' ? (char) ('\u2074' + c - '4') : c);
            }
        }
        return printed.toString();
    }
}
