/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SensorTest {
    private static Quantity signal(String sensor, String temperature) {
        return Sensor.named(sensor).orElseThrow().signal(QuantityText.read(temperature).quantity()).value().orElseThrow();
    }

    // IEC 60751, table of Pt100; values under 0 degC from memory, confirmed by computing.
    @ParameterizedTest
    @CsvSource({ "0,100.00", "25,109.735", "100,138.505", "200,175.856", "850,390.481", "-100,60.256", "-200,18.520" })
    void should_give_the_resistance_of_a_platinum_sensor(String celsius, double ohms) {
        assertEquals(ohms, signal("Pt100", celsius + " degC").base().doubleValue(), 0.0006);
        assertEquals(10 * ohms, signal("Pt1000", celsius + " degC").base().doubleValue(), 0.006);
    }

    @Test
    void should_be_exact_for_platinum() {
        assertEquals(Exact.of("138.5055"), signal("Pt100", "100 degC").base());
        assertEquals("138.5055 Ω", signal("Pt100", "373.15 K").spelling());
    }

    // NIST ITS-90 tables (SRD 60), to 1 µV. T and K under 0 degC were read in the published tables, K above 0 degC is
    // among the project's check values; the others are from memory, confirmed by computing.
    @ParameterizedTest
    @CsvSource({ "K,25,1.000", "K,100,4.096", "K,500,20.644", "K,1000,41.276", "K,-150,-4.913", "K,-200,-5.891", "K,-240,-6.344",
            "K,-270,-6.458", "T,-50,-1.819", "T,-100,-3.379", "T,-200,-5.603", "T,-250,-6.180", "T,-270,-6.258", "T,100,4.279",
            "T,200,9.288", "T,400,20.872", "J,100,5.269", "J,500,27.393", "J,1000,57.953", "J,-100,-4.633", "E,100,6.319",
            "E,500,37.005", "E,1000,76.373", "E,-100,-5.237", "N,100,2.774", "N,500,16.748", "N,1000,36.256", "N,-100,-2.407",
            "S,100,0.646", "S,500,4.233", "S,1000,9.587", "R,100,0.647", "R,500,4.471", "R,1000,10.506", "B,500,1.242",
            "B,1000,4.834", "B,1800,13.591" })
    void should_give_the_voltage_of_a_thermocouple(String type, String celsius, double millivolts) {
        assertEquals(millivolts, signal(type, celsius + " degC").base().doubleValue() * 1000, 0.00051);
    }

    // Monograph 175 joins its polynomials so that they meet; a slip in one coefficient would part them.
    @Test
    void should_have_polynomials_that_meet() {
        int joints = 0;
        for (Thermocouple thermocouple : ThermocoupleTable.ALL) {
            for (int i = 1; i < thermocouple.pieces().size(); i++) {
                Thermocouple.Piece before = thermocouple.pieces().get(i - 1);
                Thermocouple.Piece after = thermocouple.pieces().get(i);
                assertEquals(before.to(), after.from());
                assertEquals(before.at(before.to()), after.at(after.from()), 2e-5, thermocouple.name() + " at " + before.to());
                joints++;
            }
        }
        assertEquals(10, joints);
        assertEquals(8, ThermocoupleTable.ALL.size());
    }

    @ParameterizedTest
    @ValueSource(strings = { "1000 degC", "-300 degC", "5 V", "5", "5 foo", "3 dB", "1e60 degC" })
    void should_refuse_what_the_standard_does_not_cover(String temperature) {
        Sensor.Converted converted = Sensor.named("Pt100").orElseThrow().signal(QuantityText.read(temperature).quantity());
        assertEquals(Optional.empty(), converted.value());
        assertTrue(converted.problem().orElseThrow().endsWith("."));
    }

    @Test
    void should_know_its_sensors_by_name() {
        assertEquals(11, Sensor.all().size());
        assertEquals(Optional.empty(), Sensor.named("Pt10"));
        assertEquals(Optional.empty(), Sensor.named("k"));
    }
}
