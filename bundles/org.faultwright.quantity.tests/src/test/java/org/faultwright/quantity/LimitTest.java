/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LimitTest {
    private static Quantity quantity(String text) {
        return QuantityText.read(text).quantity();
    }

    private static Limit around(String nominal, String plus, String minus) {
        return new Limit.AroundNominal(quantity(nominal), tolerance(plus), tolerance(minus), nominal);
    }

    private static Tolerance tolerance(String text) {
        Quantity read = quantity(text);
        return read.unit().symbol().equals("%") ? new Tolerance.Percent(read.value()) : new Tolerance.Amount(read);
    }

    private static void check(Limit limit, String low, String high) {
        assertEquals(BandsTest.closed(low, high), limit.interval());
    }

    // ATX12V power supply design guide 2.0, table 2: ±5 % of 12 V is 11.40 V to 12.60 V, of 5 V 4.75 V to 5.25 V.
    @Test
    void should_take_a_percentage_of_the_nominal() {
        check(around("12 V", "5 %", "5 %"), "11.4", "12.6");
        check(around("5 V", "5 %", "5 %"), "4.75", "5.25");
        check(around("-12 V", "10 %", "5 %"), "-12.6", "-10.8");
        check(around("100 ohm", "0.5 ohm", "0.5 ohm"), "99.5", "100.5");
        check(around("20 degC", "5 %", "1 degC"), "292.15", "294.15");
    }

    @Test
    void should_measure_a_difference_from_zero_and_a_temperature_from_its_scale() {
        Limit rise = new Limit.NotAbove(quantity("10 degC"), true, "at most 10 degC");

        assertEquals(Interval.below(Bound.including(Exact.of(10))), rise.interval(QuantityKind.TEMPERATURE_DIFFERENCE));
        assertEquals(Interval.below(Bound.including(Exact.of("283.15"))), rise.interval(QuantityKind.TEMPERATURE));
    }

    @Test
    void should_fit_only_kinds_of_its_dimension() {
        Limit limit = new Limit.Between(quantity("15 mA"), true, quantity("0.09 A"), false, "15 mA .. under 0.09 A");
        assertTrue(limit.fits(QuantityKind.DC_CURRENT));
        assertFalse(limit.fits(QuantityKind.DC_VOLTAGE));
        assertEquals(Interval.from(Bound.including(Exact.of("0.015")), Bound.excluding(Exact.of("0.09"))), limit.interval());
    }
}
