/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecibelLevelsTest {
    // UCUM essence, lgTimes2: 3 dB[V] = 1.412537545 V, 10 dB[W] = 10 W; IEC 60027-3: twice the power is 3.01 dB.
    @ParameterizedTest
    @CsvSource({ "1.412537545, 20, 3", "10, 10, 10", "10, 20, 20", "0.01, 20, -40", "1, 10, 0", "2, 10, 3.010299957", "1.995262315, 10, 3" })
    void should_give_the_level_of_a_ratio(String ratio, int perDecade, double level) {
        assertEquals(level, DecibelLevels.decibel(Exact.of(ratio), perDecade).doubleValue(), 5e-9);
    }

    @Test
    void should_give_a_level_where_the_ratio_is_beyond_a_double() {
        assertEquals(Exact.of(15_000), DecibelLevels.decibel(Exact.of("1e1500"), 10));
        assertEquals(Exact.of(-15_000), DecibelLevels.decibel(Exact.of("1e-1500"), 10));
    }
}
