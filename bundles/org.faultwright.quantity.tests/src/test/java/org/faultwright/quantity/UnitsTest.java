/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnitsTest {
    // SI Brochure, 9th edition (2019, updated 2022), table 7.
    @ParameterizedTest
    @CsvSource({ "Q,1e30", "R,1e27", "Y,1e24", "Z,1e21", "E,1e18", "P,1e15", "T,1e12", "G,1e9", "M,1e6", "k,1e3", "h,1e2",
            "da,1e1", "d,1e-1", "c,1e-2", "m,1e-3", "u,1e-6", "n,1e-9", "p,1e-12", "f,1e-15", "a,1e-18", "z,1e-21",
            "y,1e-24", "r,1e-27", "q,1e-30" })
    void should_know_the_24_prefixes(String prefix, String factor) {
        Unit unit = Units.named(prefix + "V");

        assertEquals(Exact.of(factor), unit.factor());
        assertEquals(Dimension.VOLTAGE, unit.dimension());
        assertEquals(24, Prefix.values().length);
    }

    // SI Brochure 9, 2.3.4 (Celsius) and NIST SP 811, appendix B (degF); a difference of 10 degC is 10 K.
    @ParameterizedTest
    @CsvSource({ "25,degC,298.15", "37,degC,310.15", "98.6,degF,310.15", "-40,degF,233.15", "-40,degC,233.15" })
    void should_place_temperatures_exactly(String number, String unit, String kelvin) {
        assertEquals(Exact.of(kelvin), Quantity.of(number, unit).base());
    }

    @Test
    void should_take_a_temperature_difference_without_the_zero_of_its_scale() {
        assertEquals(Exact.of(10), Quantity.of("10", "degC").base(QuantityKind.TEMPERATURE_DIFFERENCE));
        assertEquals(Exact.of("283.15"), Quantity.of("10", "degC").base(QuantityKind.TEMPERATURE));
        assertEquals(Exact.of(10), Quantity.of("18", "degF").difference());
    }

    // NIST SP 811, appendix B.8 (in, lbf, psi, ft·lbf, mmHg rounded as in UCUM); SI Brochure 9, 2.2 (eV) and table 8.
    @ParameterizedTest
    @CsvSource({ "1,in,0.0254", "1,lbf,4.4482216152605", "1,Ah,3600", "1,eV,1.602176634e-19", "1,kWh,3600000", "1,bar,100000",
            "1,mbar,100", "1,h,3600", "1,d,86400", "90,min,5400", "1,kgf,9.80665", "1,lbf.ft,1.3558179483314004",
            "250,mAh,900", "1,L,0.001", "1,%,0.01", "1,ppm,0.000001", "1,mmHg,133.322" })
    void should_convert_exactly(String number, String unit, String base) {
        assertEquals(Exact.of(base), Quantity.of(number, unit).base());
    }

    @Test
    void should_turn_revolutions_and_angles_without_rounding() {
        assertEquals(Exact.ratio(1, 60), Quantity.of("1", "rpm").base());
        assertEquals(Exact.of(3000), Units.named("rpm").fromBase(Quantity.of("50", "Hz").base()));
        assertEquals(Quantity.of("90", "deg").base(), Quantity.of("45", "°").base().times(2));
    }

    @ParameterizedTest
    @CsvSource({ "kohm,kΩ", "kohm,k\u2126", "uF,\u00B5F", "uF,\u03BCF", "degC,°C", "degC,\u2103", "degF,\u2109", "m/s2,m/s²",
            "m/s2,m/s^2", "N.m,N·m", "N.m,N\u22C5m", "A2.s,A²·s", "mm2,mm²", "K,\u212A", "deg,°", "permille,‰", "kg.m2/s3,kg·m²/s³",
            "L,l", "mL,ml" })
    void should_read_ascii_and_unicode_as_one_unit(String ascii, String unicode) {
        assertTrue(Units.named(ascii).isKnown(), ascii);
        assertEquals(Units.named(ascii), Units.named(unicode));
    }

    @Test
    void should_find_every_proposed_unit_by_both_of_its_spellings() {
        List<Unit> units = Units.all();
        for (Unit unit : units) {
            assertEquals(unit, Units.named(unit.symbol()));
            assertEquals(unit, Units.named(Units.spelling(unit)));
            assertEquals(Optional.of(unit.factor()), Units.ofUcum(unit.ucum()).map(Unit::factor), unit.ucum());
        }
        assertTrue(units.size() > 150, "only " + units.size());
        assertEquals(units.size(), units.stream().distinct().count());
    }

    @Test
    void should_write_only_ascii_in_spellings() {
        Units.all().forEach(unit -> assertTrue(Units.spelling(unit).chars().allMatch(c -> c < 128), unit.symbol()));
    }

    @ParameterizedTest
    @CsvSource({ "uV/degC,1e-6", "mV/s,1e-3", "kohm.mm,1", "V/us,1000000", "kg/m3,1", "g/cm3,1000", "W/m2,1", "1/us,1000000",
            "N/mm2,1000000", "m3/s,1" })
    void should_work_out_products_and_quotients(String spelling, String factor) {
        assertEquals(Exact.of(factor), Units.named(spelling).factor());
        assertTrue(Units.named(spelling).isKnown());
    }

    @ParameterizedTest
    @ValueSource(strings = { "foo", "v", "Mhz", "V/", "/", "//s", "V..s", "dB/m", "m/s/", "V V", "kdegC", "khr", "mmin",
            "k", "[in_i]", "V\u0000", "🔧", "mmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmmm" })
    void should_say_that_a_spelling_is_unknown(String spelling) {
        assertEquals(Unit.Status.UNKNOWN, Units.named(spelling).status());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", " ", "\t" })
    void should_tell_a_missing_unit_from_an_unknown_one(String spelling) {
        assertEquals(Unit.MISSING, Units.named(spelling));
    }

    @ParameterizedTest
    @CsvSource({ "volts,V", "khz,kHz", "mhz,MHz", "KOhm,kohm", "MOHM,Mohm", "v,V", "Ampere,A", "ohms,ohm", "uf,uF", "sec,s",
            "Vdc,V", "degc,degC", "celsius,degC", "RPM,rpm", "minutes,min", "Nm,N.m" })
    void should_propose_the_unit_that_was_meant(String written, String meant) {
        assertEquals(Optional.of(meant), "Nm".equals(written) ? Units.nearest(written, QuantityKind.TORQUE) : Units.nearest(written));
    }

    @Test
    void should_propose_nothing_for_what_resembles_no_unit() {
        assertEquals(Optional.empty(), Units.nearest("xyzzy"));
        assertEquals(Optional.empty(), Units.nearest(""));
        assertEquals(Optional.empty(), Units.nearest("q".repeat(10_000)));
    }

    @Test
    void should_offer_the_usual_unit_of_each_kind_first() {
        for (QuantityKind kind : QuantityKind.values()) {
            List<Unit> units = Units.of(kind);
            assertEquals(Units.named(kind.usualUnit()), units.get(0), kind.words());
            assertTrue(units.stream().allMatch(unit -> new Quantity(Exact.ONE, unit, "").fits(kind)), kind.words());
        }
    }

    @Test
    void should_tell_dimensions_apart_by_every_exponent() {
        Dimension one = new Dimension(1, 2, 3, 4, 5, 6, 7);
        assertEquals(one, new Dimension(1, 2, 3, 4, 5, 6, 7));
        assertEquals(one.hashCode(), new Dimension(1, 2, 3, 4, 5, 6, 7).hashCode());
        for (String base : List.of("m", "kg", "s", "A", "K", "mol", "cd")) {
            assertFalse(one.equals(one.times(Units.named(base).dimension())), base);
        }
        assertFalse(one.equals(null));
    }

    @Test
    void should_never_take_a_level_for_a_reading() {
        for (String level : List.of("dB", "dBm", "dBV", "dBuV")) {
            assertTrue(Units.named(level).isKnown());
            for (QuantityKind kind : QuantityKind.values()) {
                assertFalse(Quantity.of("3", level).fits(kind), level + " as " + kind.words());
            }
        }
    }
}
