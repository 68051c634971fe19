/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigInteger;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Works out a code of the Unified Code for Units of Measure from the units of {@link UnitTable}: prefixes,
 * exponents, products and quotients from left to right, brackets, whole numbers, powers of ten and
 * annotations (UCUM, sections 2.1 to 2.4). Exact. Levels, and temperatures with a zero of their own, have no
 * place in a product and are no part of a code here.
 */
final class UcumCode {
    /** @param factor what one of it is in the coherent SI unit */
    record Product(Dimension dimension, Exact factor) {
        static final Product ONE = new Product(Dimension.NONE, Exact.ONE);

        private Product times(Product other) {
            return new Product(dimension.times(other.dimension), factor.times(other.factor));
        }

        private Product power(int exponent) {
            Exact size = factor.power(Math.abs(exponent));
            return new Product(dimension.power(exponent), exponent < 0 ? Exact.ONE.dividedBy(size) : size);
        }
    }

    private static final int LONGEST = 60;
    private static final int LARGEST_EXPONENT = 99;
    private static final Map<String, UnitTable.Entry> ATOMS = atoms();

    private final String code;
    private int at;
    private boolean wrong;

    private UcumCode(String code) {
        this.code = code;
    }

    private static Map<String, UnitTable.Entry> atoms() {
        Map<String, UnitTable.Entry> atoms = new LinkedHashMap<>();
        UnitTable.ENTRIES.stream().filter(entry -> !entry.unit().isLogarithmic()
                && entry.unit().offset().equals(Exact.ZERO)).forEach(entry -> atoms.putIfAbsent(entry.unit().ucum(), entry));
        atoms.put("l", atoms.get("L"));
        return atoms;
    }

    /** Absent when the text is no code, is longer than 60 characters or names a unit that is not in the table. */
    static Optional<Product> read(String code) {
        if (code.isEmpty() || code.length() > LONGEST) {
            return Optional.empty();
        }
        UcumCode reader = new UcumCode(code);
        Product product = reader.term();
        return reader.wrong || reader.at < code.length() ? Optional.empty() : Optional.of(product);
    }

    private Product term() {
        Product product = Product.ONE;
        boolean divide = take('/');
        do {
            Product component = component();
            product = product.times(divide ? component.power(-1) : component);
            divide = !wrong && peek() == '/';
        } while (!wrong && (take('.') || take('/')));
        return product;
    }

    private Product component() {
        if (take('(')) {
            Product inner = term();
            wrong |= !take(')');
            return inner;
        }
        if (peek() == '{') {
            annotation();
            return Product.ONE;
        }
        Product simple = code.startsWith("10*", at) || code.startsWith("10^", at) ? powerOfTen()
                : isDigit() ? number() : atom();
        if (peek() == '{') {
            annotation();
        }
        return simple;
    }

    private void annotation() {
        int end = code.indexOf('}', at);
        boolean printable = end > 0 && code.substring(at, end).chars().allMatch(c -> c > ' ' && c < 127);
        wrong |= !printable;
        at = printable ? end + 1 : code.length();
    }

    private Product powerOfTen() {
        at += 3;
        return new Product(Dimension.NONE, Exact.of(10)).power(exponent());
    }

    private Product number() {
        String digits = digits();
        BigInteger value = new BigInteger(digits);
        wrong |= value.signum() == 0;
        return new Product(Dimension.NONE, wrong ? Exact.ONE : Exact.ratio(value, BigInteger.ONE));
    }

    private Product atom() {
        int start = at;
        while (at < code.length() && "./(){}+-".indexOf(peek()) < 0 && !isDigit()) {
            at = peek() == '[' ? closing() : at + 1;
        }
        Optional<Product> unit = unit(code.substring(start, at));
        wrong |= unit.isEmpty();
        return wrong ? Product.ONE : unit.get().power(exponent());
    }

    private int closing() {
        int end = code.indexOf(']', at);
        wrong |= end < 0;
        return end < 0 ? code.length() : end + 1;
    }

    private int exponent() {
        int sign = take('-') ? -1 : 1;
        boolean signed = sign < 0 || take('+');
        String digits = digits();
        wrong |= signed && digits.isEmpty() || digits.length() > 2;
        return digits.isEmpty() || wrong ? 1 : sign * Math.min(LARGEST_EXPONENT, Integer.parseInt(digits));
    }

    private String digits() {
        int start = at;
        while (isDigit()) {
            at++;
        }
        return code.substring(start, at);
    }

    private static Optional<Product> unit(String atom) {
        UnitTable.Entry entry = ATOMS.get(atom);
        if (entry != null) {
            return Optional.of(product(entry.unit(), Exact.ONE));
        }
        for (int length = 1; length <= 2 && length < atom.length(); length++) {
            UnitTable.Entry stem = ATOMS.get(atom.substring(length));
            Optional<Prefix> prefix = Prefix.spelled(atom.substring(0, length));
            if (stem != null && stem.takesPrefixes() && prefix.isPresent()) {
                return Optional.of(product(stem.unit(), prefix.get().factor()));
            }
        }
        return Optional.empty();
    }

    private static Product product(Unit unit, Exact prefix) {
        return new Product(unit.dimension(), unit.factor().times(prefix));
    }

    /** The next character, or 0 at the end. */
    private char peek() {
        return at < code.length() ? code.charAt(at) : 0;
    }

    private boolean isDigit() {
        return peek() >= '0' && peek() <= '9';
    }

    private boolean take(char wanted) {
        boolean found = peek() == wanted && at < code.length();
        at += found ? 1 : 0;
        return found;
    }
}
