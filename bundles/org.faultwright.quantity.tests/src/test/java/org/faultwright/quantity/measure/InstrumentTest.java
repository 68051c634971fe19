/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.faultwright.quantity.measure.MeasurementSamples.accuracy;
import static org.faultwright.quantity.measure.MeasurementSamples.atLeast;
import static org.faultwright.quantity.measure.MeasurementSamples.closed;
import static org.faultwright.quantity.measure.MeasurementSamples.dcVoltage;
import static org.faultwright.quantity.measure.MeasurementSamples.from;
import static org.faultwright.quantity.measure.MeasurementSamples.quantity;
import static org.faultwright.quantity.measure.MeasurementSamples.range;
import static org.faultwright.quantity.measure.MeasurementSamples.withBurden;
import static org.faultwright.quantity.measure.MeasurementSamples.withInput;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.QuantityKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Loading, choice of range, and the box for the reading. */
class InstrumentTest {
    private static final MeterRange SIX = dcVoltage("6 V", "1 mV", "0.5", "2");
    private static final MeterRange SIXTY = dcVoltage("60 V", "10 mV", "0.5", "2");

    // Textbook problems: 12 V across 2 × 150 kohm with an 11.5 Mohm meter reads 5.96112 V (−0.648 %);
    // 5 V behind 100 kohm with a 10 Mohm meter reads 4.9505 V.
    @ParameterizedTest
    @CsvSource({ "6,75 kohm,11.5 Mohm,5.96112,-0.00648", "5,100 kohm,10 Mohm,4.9505,-0.0099" })
    void should_compute_the_loading_of_a_voltage(String volts, String source, String input, double reading, double error) {
        Loading loading = Loading.of(Exact.of(volts), quantity(source), withInput(SIXTY, input), Optional.empty()).orElseThrow();

        assertEquals(reading, loading.reading().doubleValue(), 5e-6);
        assertEquals(error, loading.relativeError().doubleValue(), 5e-6);
        assertEquals(loading.error(), loading.undisturbed().times(loading.relativeError()));
    }

    // A current falls to R/(R + Rb): 1 V behind 10 ohm is 100 mA; a burden of 2 ohm leaves 83.33 mA (Ohm's law).
    @ParameterizedTest
    @CsvSource({ "2 ohm", "0.8 V" })
    void should_compute_the_burden_of_a_current(String burden) {
        MeterRange range = withBurden(range(QuantityKind.DC_CURRENT, "400 mA", "0.1 mA", accuracy("1", "0", "2")), burden);

        Loading loading = Loading.of(Exact.of("0.1"), quantity("10 ohm"), range, Optional.empty()).orElseThrow();

        assertEquals(Exact.ratio(1, 12), loading.reading());
        assertEquals(Optional.of(Exact.ratio(1, 6)), loading.shareOf(closed("0.05", "0.15")));
        assertEquals(4, loading.explain().size());
    }

    @Test
    void should_have_no_loading_where_the_data_do_not_say() {
        MeterRange ohms = range(QuantityKind.RESISTANCE, "600 ohm", "0.1 ohm", accuracy("1", "0", "2"));
        assertEquals(Optional.empty(), Loading.of(Exact.ONE, quantity("10 ohm"), ohms, Optional.empty()));
        assertEquals(Optional.empty(), Loading.of(Exact.ONE, quantity("10 V"), SIX, Optional.empty()));
        assertEquals(Optional.empty(), Loading.of(Exact.ONE, quantity("-10 ohm"), SIX, Optional.empty()));
        assertEquals(Optional.empty(), Loading.of(Exact.ONE, quantity("0 ohm"), withInput(SIX, "0 ohm"), Optional.empty()));
        assertEquals(Optional.empty(), Loading.of(Exact.ONE, quantity("10 ohm"), SIX, Optional.empty()).orElseThrow().shareOf(atLeast("1")));
    }

    @Test
    void should_choose_the_smallest_range_that_holds_the_limits() {
        List<MeterRange> ranges = List.of(SIXTY, SIX);
        assertEquals(Optional.of(SIX), RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, closed("4.75", "5.25")).range());
        assertEquals(Optional.of(SIXTY), RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, closed("5", "7")).range());
        assertEquals(Optional.of(SIX), RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, closed("-5.25", "-4.75")).range());
        assertEquals(Optional.of(SIXTY), RangeChoice.named(ranges, QuantityKind.DC_VOLTAGE, quantity("60000 mV")).range());
        assertEquals(Optional.of(SIX), RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, Interval.EVERYTHING).range());
    }

    @Test
    void should_say_when_no_range_will_do() {
        List<MeterRange> ranges = List.of(SIXTY, SIX, dcVoltage("1000 V", "0 V", "1", "2"));
        RangeChoice tooHigh = RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, closed("50", "70"));
        assertEquals(Optional.of(SIXTY), tooHigh.range());
        assertTrue(tooHigh.problem().orElseThrow().contains("60 V"));
        assertTrue(RangeChoice.smallest(ranges, QuantityKind.RESISTANCE, closed("1", "2")).problem().isPresent());
        assertTrue(RangeChoice.named(ranges, QuantityKind.DC_VOLTAGE, quantity("7 V")).problem().isPresent());
        assertTrue(RangeChoice.named(ranges, QuantityKind.DC_VOLTAGE, quantity("60 ohm")).problem().isPresent());
    }

    @Test
    void should_choose_among_thousands_of_ranges() {
        List<MeterRange> ranges = IntStream.rangeClosed(1, 5000).mapToObj(i -> dcVoltage(i + " V", "1 mV", "0.5", "2")).toList();
        assertEquals("1234 V", RangeChoice.smallest(ranges, QuantityKind.DC_VOLTAGE, closed("0", "1233.5")).range().orElseThrow()
                .upTo().spelling());
    }

    @ParameterizedTest
    @CsvSource({ "6 V,1 mV,_._ _ _ V", "60 V,10 mV,_ _._ _ V", "600 mV,0.1 mV,_ _ _._ mV", "1000 V,1 V,_ _ _ _ V",
            "6 V,0.5 V,_._ V", "60000 V,100 V,_ _ _ 0 0 V", "10 V,10 V,_ 0 V", "0.6 V,1 mV,_._ _ _ V" })
    void should_draw_one_blank_for_each_digit(String upTo, String resolution, String pattern) {
        assertEquals(Optional.of(pattern), ReadingBox.pattern(dcVoltage(upTo, resolution, "1", "2")));
    }

    @Test
    void should_leave_room_for_a_sign_where_the_range_begins_under_zero() {
        MeterRange celsius = range(QuantityKind.TEMPERATURE, "400 degC", "0.1 degC", accuracy("1", "0", "2"));
        assertEquals(Optional.of("± _ _ _._ °C"), ReadingBox.pattern(from(celsius, "-40 degC")));
        assertEquals(Optional.of("_ _ _._ °C"), ReadingBox.pattern(celsius));
    }

    @ParameterizedTest
    @CsvSource({ "6 V,0 V", "6 V,1e-20 V", "6 V,100 V", "1e40 V,1 V", "6 ohm,1 mV" })
    void should_draw_no_box_for_what_is_no_display(String upTo, String resolution) {
        assertEquals(Optional.empty(), ReadingBox.pattern(dcVoltage(upTo, resolution, "1", "2")));
    }
}
