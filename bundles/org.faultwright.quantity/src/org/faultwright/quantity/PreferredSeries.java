/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The series of preferred values for resistors and capacitors (IEC 60063:2015). */
public enum PreferredSeries {
    E3(3), E6(6), E12(12), E24(24), E48(48), E96(96), E192(192);

    private final List<Exact> decade;

    PreferredSeries(int perDecade) {
        decade = IntStream.range(0, perDecade)
                .mapToObj(i -> perDecade <= 24 ? twoDigits(i * 24 / perDecade) : threeDigits(i * 192 / perDecade)).toList();
    }

    /** Table 1 of the standard; eight values differ from the rounded geometric series. */
    private static Exact twoDigits(int step) {
        int[] table = { 10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91 };
        return Exact.ratio(table[step], 10);
    }

    /** Table 2: the geometric series rounded to three digits, with 9.20 in place of 9.19. */
    private static Exact threeDigits(int step) {
        return step == 185 ? Exact.of("9.2")
                : Exact.of(new BigDecimal(Math.pow(10, step / 192.0)).setScale(2, RoundingMode.HALF_UP));
    }

    /** The values from 1 to under 10, rising. */
    public List<Exact> decade() {
        return decade;
    }

    /** Whether a value is in the series, in any decade. */
    public boolean contains(Exact value) {
        return nearest(value).filter(value::equals).isPresent();
    }

    /** The value of the series, in any decade, with the least ratio to the one given; absent unless that is above zero. */
    public Optional<Exact> nearest(Exact value) {
        if (value.signum() <= 0) {
            return Optional.empty();
        }
        Exact power = powerOfTenUnder(value);
        Exact best = power.times(10);
        for (Exact candidate : decade) {
            Exact placed = candidate.times(power);
            if (ratio(placed, value).compareTo(ratio(best, value)) < 0) {
                best = placed;
            }
        }
        return Optional.of(best);
    }

    /** The series with the fewest values that holds this one; absent when none does. */
    public static Optional<PreferredSeries> coarsest(Exact value) {
        return Arrays.stream(values()).filter(series -> series.contains(value)).findFirst();
    }

    private static Exact powerOfTenUnder(Exact value) {
        BigDecimal decimal = value.toDecimal(new MathContext(3, RoundingMode.FLOOR));
        return Exact.of(BigDecimal.ONE.scaleByPowerOfTen(decimal.precision() - decimal.scale() - 1));
    }

    private static Exact ratio(Exact one, Exact other) {
        return one.max(other).dividedBy(one.min(other));
    }
}
