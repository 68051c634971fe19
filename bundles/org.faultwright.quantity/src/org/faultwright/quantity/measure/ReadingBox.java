/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Unit;

/** The box on a card into which a reading is written: one blank for each digit that the display shows. */
public final class ReadingBox {
    private static final int MOST_DIGITS = 12;

    private ReadingBox() {
    }

    /**
     * Such as {@code _._ _ _ V} for 6 V with a last digit of 1 mV; digits that the resolution leaves at
     * zero are printed as 0, and a range stated from a negative value begins with ±.
     *
     * @return absent where resolution and upper end make no display of 1 to 12 digits
     */
    public static Optional<String> pattern(MeterRange range) {
        if (MeterAccuracy.problem(range).isPresent()) {
            return Optional.empty();
        }
        Unit unit = range.upTo().unit();
        Exact step = range.resolution().difference().dividedBy(unit.factor());
        Exact largest = range.upTo().value().absolute().max(unit.fromBase(range.shown().lower().map(Bound::value)
                .orElseThrow()).absolute());
        if (!step.isDecimal()) {
            return Optional.empty();
        }
        BigDecimal last = new BigDecimal(step.toString()).stripTrailingZeros();
        int whole = Math.max(1, largest.toDecimal(0, RoundingMode.FLOOR).precision());
        int places = Math.max(0, last.scale());
        int zeros = Math.max(0, -last.scale());
        if (whole + places > MOST_DIGITS || zeros >= whole) {
            return Optional.empty();
        }
        String sign = range.from().isPresent() && range.from().get().value().signum() < 0 ? "± " : "";
        String digits = Stream.concat(blanks(whole - zeros, "_"), blanks(zeros, "0")).collect(Collectors.joining(" "));
        String decimals = places == 0 ? "" : "." + blanks(places, "_").collect(Collectors.joining(" "));
        return Optional.of(sign + digits + decimals + (unit.symbol().isEmpty() ? "" : " " + unit.symbol()));
    }

    private static Stream<String> blanks(int count, String digit) {
        return IntStream.range(0, count).mapToObj(i -> digit);
    }
}
