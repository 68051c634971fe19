/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.RoundingMode;

import org.junit.jupiter.api.Test;

class IntervalTextTest {
    private static final Unit VOLT = Units.named("V");

    private static Bound at(String value, boolean included) {
        return new Bound(Exact.of(value), included);
    }

    @Test
    void should_say_of_each_end_whether_it_belongs() {
        assertEquals("5.25 V to 5.5 V", IntervalText.of(Interval.from(at("5.25", true), at("5.5", true)), VOLT));
        assertEquals("5.25 V to 5.5 V, upper end excluded", IntervalText.of(Interval.from(at("5.25", true), at("5.5", false)), VOLT));
        assertEquals("5.25 V to 5.5 V, lower end excluded", IntervalText.of(Interval.from(at("5.25", false), at("5.5", true)), VOLT));
        assertEquals("5.25 V to 5.5 V, both ends excluded", IntervalText.of(Interval.from(at("5.25", false), at("5.5", false)), VOLT));
        assertEquals("at least 3 V", IntervalText.of(Interval.above(at("3", true)), VOLT));
        assertEquals("over 3 V", IntervalText.of(Interval.above(at("3", false)), VOLT));
        assertEquals("at most 3 V", IntervalText.of(Interval.below(at("3", true)), VOLT));
        assertEquals("under 3 V", IntervalText.of(Interval.below(at("3", false)), VOLT));
        assertEquals("exactly 3 V", IntervalText.of(Interval.from(at("3", true), at("3", true)), VOLT));
        assertEquals("no value", IntervalText.of(Interval.from(at("3", true), at("3", false)), VOLT));
        assertEquals("every value", IntervalText.of(Interval.EVERYTHING, VOLT));
    }

    @Test
    void should_print_in_the_unit_asked_for() {
        assertEquals("20 °C to 30 °C", IntervalText.of(Interval.from(at("293.15", true), at("303.15", true)), Units.named("degC")));
        assertEquals("15 mA to 90 mA", IntervalText.of(Interval.from(at("0.015", true), at("0.09", true)), Units.named("mA")));
        assertEquals("5 %", ValueText.of(Exact.of("0.05"), Units.named("%")));
        assertEquals("90°", ValueText.number(Exact.of(90), Units.named("deg")));
        assertEquals("10 K", ValueText.difference(Exact.of(10), Units.named("degC")));
        assertEquals("0.333333333 V", ValueText.of(Exact.ratio(1, 3), VOLT));
        assertEquals("134 mV", ValueText.significant(Exact.of("0.1333"), VOLT, 3, RoundingMode.UP));
        assertEquals("23.46 V", ValueText.rounded(Exact.of("23.456"), VOLT, 2, RoundingMode.HALF_UP));
    }
}
