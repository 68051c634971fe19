/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Charge, energy and discharge of a capacitor. */
class StoredEnergyTest {
    /** RC discharge and W = CV²/2, computed with an independent program: 470 µF at 325 V, 220 µF at 340 V, 100 µF at 400 V. */
    @ParameterizedTest
    @CsvSource({ "325, 470e-6, 1e6, 24.82, 0.1528, 794, 60", "340, 220e-6, 470e3, 12.72, 0.0748, 179.4, 60",
            "400, 100e-6, 1e6, 8.0, 0.04, 189.7, 60" })
    void should_hold_energy_and_charge_and_drain_as_published(String volts, String farads, String ohms, double joules,
            double coulombs, double seconds, String safe) {
        StoredEnergy stored = stored(volts, farads, ohms);

        assertEquals(joules, stored.energy().base().doubleValue(), 0.005);
        assertEquals(coulombs, stored.charge().base().doubleValue(), 0.00005);
        assertEquals(seconds, stored.timeTo(Exact.of(safe)).get().base().doubleValue(), 0.5);
    }

    /** 4000 µF at 400 V on 1 kohm, computed with an independent program. */
    @Test
    void should_fall_through_a_bleed_lead() {
        StoredEnergy stored = stored("400", "4000e-6", "1000");

        assertEquals(2.70, stored.after(Exact.of(20)).base().doubleValue(), 0.005);
        assertEquals(320, stored.energy().base().doubleValue());
    }

    /** 340 V to 60 V in 2 s: 0.47 µF needs at most 2.453 Mohm. RC discharge. */
    @Test
    void should_reach_the_safe_voltage_in_two_seconds_up_to_the_published_resistance() {
        assertEquals(2, stored("340", "0.47e-6", "2.453e6").timeTo(Exact.of(60)).get().base().doubleValue(), 0.001);
    }

    @Test
    void should_never_round_a_time_down() {
        StoredEnergy stored = stored("325", "470e-6", "1e6");
        Exact time = stored.timeTo(Exact.of(60)).get().base();

        assertEquals(true, stored.after(time).base().compareTo(Exact.of("60.001")) < 0);
        assertEquals(true, time.doubleValue() >= 470 * Math.log(325.0 / 60));
    }

    @Test
    void should_say_it_in_words() {
        assertEquals("24.9 J and 153 mC at 325 V; 13 min 15 s down to 60 V through 1 MΩ",
                stored("325", "470e-6", "1e6").inWords());
        assertEquals("800 µJ and 40 µC at 40 V; not above 60 V", stored("40", "1e-6", "1e3").inWords());
        assertEquals("8 J and 40 mC at 400 V; nothing is stated that drains it",
                new StoredEnergy(Exact.of(400), Exact.of("1e-4"), Optional.empty()).inWords());
        assertEquals("8 J and 40 mC at 400 V; 5 h 17 min down to 60 V through 100 MΩ", stored("400", "1e-4", "1e8").inWords());
    }

    @Test
    void should_drain_faster_with_a_lead_across_it() {
        assertEquals(Exact.of(500), stored("400", "1e-4", "1000").drainedAlsoBy(Exact.of(1000)).ohms().get());
        assertEquals(Exact.of(1000), new StoredEnergy(Exact.of(400), Exact.of("1e-4"), Optional.empty())
                .drainedAlsoBy(Exact.of(1000)).ohms().get());
    }

    @Test
    void should_refuse_what_is_no_capacitor() {
        assertThrows(IllegalArgumentException.class, () -> stored("0", "1e-6", "1"));
        assertThrows(IllegalArgumentException.class, () -> stored("1", "-1e-6", "1"));
        assertThrows(IllegalArgumentException.class, () -> stored("1", "1e-6", "0"));
        assertThrows(IllegalArgumentException.class, () -> stored("1", "1e-6", "1").timeTo(Exact.ZERO));
    }

    @Test
    void should_stay_sane_for_absurd_values() {
        StoredEnergy stored = stored("1e30", "1e30", "1e30");
        assertEquals(true, stored.inWords().contains(" down to 60 V"));
    }

    private static StoredEnergy stored(String volts, String farads, String ohms) {
        return new StoredEnergy(Exact.of(volts), Exact.of(farads), Optional.of(Exact.of(ohms)));
    }
}
