/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.util.Optional;

/** The 24 SI prefixes (SI Brochure, 9th edition, 2022 update, table 7). */
enum Prefix {
    QUETTA("Q", 30), RONNA("R", 27), YOTTA("Y", 24), ZETTA("Z", 21), EXA("E", 18), PETA("P", 15), TERA("T", 12),
    GIGA("G", 9), MEGA("M", 6), KILO("k", 3), HECTO("h", 2), DECA("da", 1), DECI("d", -1), CENTI("c", -2),
    MILLI("m", -3), MICRO("u", -6), NANO("n", -9), PICO("p", -12), FEMTO("f", -15), ATTO("a", -18), ZEPTO("z", -21),
    YOCTO("y", -24), RONTO("r", -27), QUECTO("q", -30);

    private final String ascii;
    private final int exponent;

    Prefix(String ascii, int exponent) {
        this.ascii = ascii;
        this.exponent = exponent;
    }

    /** As the language and UCUM write it; u for micro. */
    String ascii() {
        return ascii;
    }

    /** As it is printed; µ for micro. */
    String symbol() {
        return this == MICRO ? "µ" : ascii;
    }

    Exact factor() {
        return Exact.of(BigDecimal.ONE.scaleByPowerOfTen(exponent));
    }

    static Optional<Prefix> spelled(String spelling) {
        for (Prefix prefix : values()) {
            if (prefix.ascii.equals(spelling)) {
                return Optional.of(prefix);
            }
        }
        return Optional.empty();
    }
}
