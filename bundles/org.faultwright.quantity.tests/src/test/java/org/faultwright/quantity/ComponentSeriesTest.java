/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComponentSeriesTest {
    private static List<Exact> values(String text) {
        return Arrays.stream(text.split(" ")).map(Exact::of).toList();
    }

    // IEC 60063:2015, table 1.
    @Test
    void should_list_the_coarse_series() {
        assertEquals(values("1.0 1.1 1.2 1.3 1.5 1.6 1.8 2.0 2.2 2.4 2.7 3.0 3.3 3.6 3.9 4.3 4.7 5.1 5.6 6.2 6.8 7.5 8.2 9.1"),
                PreferredSeries.E24.decade());
        assertEquals(values("1.0 1.2 1.5 1.8 2.2 2.7 3.3 3.9 4.7 5.6 6.8 8.2"), PreferredSeries.E12.decade());
        assertEquals(values("1.0 1.5 2.2 3.3 4.7 6.8"), PreferredSeries.E6.decade());
        assertEquals(values("1.0 2.2 4.7"), PreferredSeries.E3.decade());
    }

    // IEC 60063:2015, table 2; the E48 column, and the exception 9.20 of E192. From memory, confirmed by computing.
    @Test
    void should_list_the_fine_series() {
        assertEquals(values("1.00 1.05 1.10 1.15 1.21 1.27 1.33 1.40 1.47 1.54 1.62 1.69 1.78 1.87 1.96 2.05 2.15 2.26 2.37 2.49 "
                + "2.61 2.74 2.87 3.01 3.16 3.32 3.48 3.65 3.83 4.02 4.22 4.42 4.64 4.87 5.11 5.36 5.62 5.90 6.19 6.49 6.81 7.15 "
                + "7.50 7.87 8.25 8.66 9.09 9.53"), PreferredSeries.E48.decade());
        assertTrue(PreferredSeries.E192.decade().contains(Exact.of("9.20")));
        assertTrue(PreferredSeries.E96.decade().containsAll(PreferredSeries.E48.decade()));
        assertTrue(PreferredSeries.E192.decade().containsAll(PreferredSeries.E96.decade()));
        assertEquals(List.of(3, 6, 12, 24, 48, 96, 192), Arrays.stream(PreferredSeries.values()).map(s -> s.decade().size()).toList());
    }

    @ParameterizedTest
    @CsvSource({ "E24,4650,4700", "E12,5000,4700", "E6,9000,10000", "E96,4700,4750", "E24,0.00102,0.001", "E3,95,100" })
    void should_find_the_nearest_value(PreferredSeries series, String wanted, String nearest) {
        assertEquals(Optional.of(Exact.of(nearest)), series.nearest(Exact.of(wanted)));
    }

    @Test
    void should_answer_only_values_above_zero() {
        assertEquals(Optional.empty(), PreferredSeries.E24.nearest(Exact.ZERO));
        assertEquals(Optional.empty(), PreferredSeries.E24.nearest(Exact.of(-5)));
        assertEquals(Optional.of(PreferredSeries.E3), PreferredSeries.coarsest(Exact.of(4700)));
        assertEquals(Optional.of(PreferredSeries.E48), PreferredSeries.coarsest(Exact.of("4.87")));
        assertEquals(Optional.empty(), PreferredSeries.coarsest(Exact.of("4.123")));
    }

    // IEC 60062:2016, clause 5.
    @ParameterizedTest
    @CsvSource({ "F,1,1", "G,2,2", "J,5,5", "K,10,10", "M,20,20", "N,30,30", "Z,80,20", "S,50,20", "B,0.1,0.1", "C,0.25,0.25",
            "D,0.5,0.5" })
    void should_read_tolerance_letters(char letter, String plus, String minus) {
        ToleranceLetter known = ToleranceLetter.of(letter).orElseThrow();
        assertEquals(Exact.of(plus), known.plus());
        assertEquals(Exact.of(minus), known.minus());
    }

    // IEC 60062:2016, clause 5: under 10 pF the letters B, C and D are ±0.1, ±0.25 and ±0.5 pF.
    @Test
    void should_read_letters_of_small_capacitances_in_picofarad() {
        Interval limits = ToleranceLetter.of('C', QuantityText.read("4p7").quantity()).orElseThrow().interval();
        assertEquals(BandsTest.closed("4.45e-12", "4.95e-12"), limits);
        assertEquals(BandsTest.closed("4465", "4935"), ToleranceLetter.of('J', QuantityText.read("4k7").quantity()).orElseThrow().interval());
        assertEquals(Optional.empty(), ToleranceLetter.of('J', QuantityText.read("4p7").quantity()));
        assertEquals(Optional.empty(), ToleranceLetter.of('x', QuantityText.read("4k7").quantity()));
    }
}
