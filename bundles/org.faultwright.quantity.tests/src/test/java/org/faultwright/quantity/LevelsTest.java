/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.RoundingMode;
import java.util.Optional;

import org.junit.jupiter.api.Test;

class LevelsTest {
    private static double linear(String level, String unit) {
        return Levels.linear(Quantity.of(level, unit)).orElseThrow().base().doubleValue();
    }

    // UCUM essence, lgTimes2: 3 dB[V] = 1.412537545 V, 20 dB[mV] = 10 mV, 10 dB[W] = 10 W.
    @Test
    void should_convert_levels_with_a_reference() {
        assertEquals(1.412537545, linear("3", "dBV"), 5e-10);
        assertEquals(0.010, linear("20", "dBmV"), 0);
        assertEquals(10, linear("10", "dBW"), 0);
        assertEquals(0.001, linear("0", "dBm"), 0);
    }

    // 1 mW in 600 ohm = 0.774597 V (telephone practice; computed from V² = P·R).
    @Test
    void should_meet_the_reference_level_of_telephone_lines() {
        Exact volts = Levels.linear(Quantity.of("0", "dBm")).orElseThrow().base().times(600).squareRoot(RoundingMode.FLOOR);
        assertEquals(0.774597, volts.doubleValue(), 5e-7);
    }

    @Test
    void should_come_back_to_the_level() {
        for (String level : new String[] { "-137.5", "-20", "0", "3", "6.02", "400" }) {
            Quantity written = Quantity.of(level, "dBV");
            Quantity back = Levels.level(Levels.linear(written).orElseThrow(), written.unit()).orElseThrow();
            assertEquals(written.value().doubleValue(), back.value().doubleValue(), 1e-11);
        }
    }

    @Test
    void should_tell_ratios_of_powers_from_ratios_of_amplitudes() {
        assertEquals(Exact.of(100), Levels.powerRatio(Exact.of(20)).orElseThrow());
        assertEquals(Exact.of(10), Levels.amplitudeRatio(Exact.of(20)).orElseThrow());
        assertEquals(1.995262315, Levels.powerRatio(Exact.of(3)).orElseThrow().doubleValue(), 5e-10);
    }

    @Test
    void should_refuse_what_has_no_answer() {
        assertEquals(Optional.empty(), Levels.linear(Quantity.of("3", "dB")));
        assertEquals(Optional.empty(), Levels.linear(Quantity.of("3", "V")));
        assertEquals(Optional.empty(), Levels.level(Quantity.of("0", "V"), Units.named("dBV")));
        assertEquals(Optional.empty(), Levels.level(Quantity.of("1", "A"), Units.named("dBV")));
        assertEquals(Optional.empty(), Levels.powerRatio(Exact.of("1e30")));
        assertTrue(Levels.decibel(Exact.of("1e1500"), 10).equals(Exact.of(15_000)));
    }
}
