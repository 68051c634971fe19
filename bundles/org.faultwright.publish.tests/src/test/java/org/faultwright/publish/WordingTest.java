/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {
    /** Symbols of units after the SI brochure, 9th edition, 5.2 and 5.4.3: a space between number and symbol. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "88 ohm +/- 10 % | 88 \u03A9 \u00B1 10 %", "300 V .. 350 V | 300 V to 350 V", "350 degC +/- 10 degC | 350 \u00B0C \u00B1 10 \u00B0C",
        "at most 5 Mohm | at most 5 M\u03A9", "over 300 V .. under 350 V | over 300 V to under 350 V", "22 uF | 22 \u00B5F", "5 min | 5 min",
        "470 ohm + 5 % - 2 % | 470 \u03A9 + 5 % - 2 %", "-20 degC | -20 \u00B0C", "0.3 | 0.3", "5 widgets | 5 widgets", "at | at", "ohm | ohm",
    })
    void should_print_units_and_limits_as_print_has_them(String spelling, String printed) {
        assertEquals(printed, Wording.printed(spelling).replace('\u00A0', ' '));
    }
}
