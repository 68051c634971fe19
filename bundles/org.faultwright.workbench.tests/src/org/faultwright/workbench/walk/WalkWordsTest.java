/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Units;
import org.junit.jupiter.api.Test;

/** Numbers as a walk says them, and what may be typed. */
class WalkWordsTest {
    private static ReadingEntry entry(String unit, boolean difference) {
        return new ReadingEntry(Units.named(unit), difference, false, List.of(), List.of(), Optional.empty());
    }

    @Test
    void should_round_the_ends_of_a_range_as_a_display_would() {
        ReadingEntry kilograms = entry("kg", false);
        Interval endless = Interval.from(Bound.including(Exact.of("1.996307179676972449082589")), Bound.excluding(Exact.of("2.5")));

        assertEquals("1.9963 kg to 2.5 kg", WalkWords.range(endless, kilograms));
        assertEquals("over 0.000012346 kg", WalkWords.range(Interval.above(Bound.excluding(Exact.of("0.0000123456"))), kilograms));
        assertEquals("at most 123457 kg", WalkWords.range(Interval.below(Bound.including(Exact.of("123456.7"))), kilograms));
        assertEquals("any reading", WalkWords.range(Interval.EVERYTHING, kilograms));
        assertEquals("0 kg", WalkWords.shown(Exact.ZERO, kilograms));
    }

    @Test
    void should_give_a_difference_of_temperatures_no_zero_of_a_scale() {
        assertEquals("10 \u00b0C", WalkWords.shown(Exact.of(10), entry("\u00b0C", true)));
        assertEquals("10 \u00b0C", WalkWords.shown(Exact.of("283.15"), entry("\u00b0C", false)));
        assertEquals(Exact.of(10), ((TypedReading.Value) TypedReading.of("10", entry("\u00b0C", true))).reading().base().orElseThrow());
        assertEquals(Exact.of("283.15"), ((TypedReading.Value) TypedReading.of("10,0", entry("\u00b0C", false))).reading().base().orElseThrow());
    }

    @Test
    void should_say_times_as_the_bench_page_does() {
        assertEquals("45 s", WalkWords.minutes(Exact.of(45)));
        assertEquals("2 min", WalkWords.minutes(Exact.of(100)));
        assertEquals("2 h", WalkWords.minutes(Exact.of(7200)));
        assertEquals("1 h 45 min", WalkWords.minutes(Exact.of(6300)));
        assertEquals("To go 2 min or more", WalkWords.toGo(new TimeToGo.Range(Exact.of(120), Optional.empty())));
        assertEquals("To go 2 min", WalkWords.toGo(new TimeToGo.Range(Exact.of(100), Optional.of(Exact.of(120)))));
        assertEquals("over 99 %", WalkWords.percent(0.999));
        assertEquals("under 1 %", WalkWords.percent(0.001));
        assertEquals("100 %", WalkWords.percent(1));
    }
}
