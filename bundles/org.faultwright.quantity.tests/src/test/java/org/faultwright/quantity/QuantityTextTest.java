/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantityTextTest {
    @ParameterizedTest
    @CsvSource({ "24 V,24,V", "24V,24,V", "4.7 kohm,4.7,kohm", "-12 V,-12,V", "\u221212 V,-12,V", "+5 %,5,%", "1e-3 A,0.001,A",
            "1E3 ohm,1000,ohm", ".5 V,0.5,V", "5. V,5,V", "3 eV,3,eV", "25 °C,25,degC", "47 K,47,K", "0.30 mm,0.3,mm" })
    void should_read_a_number_with_its_unit(String text, String value, String unit) {
        QuantityText.Reading reading = QuantityText.read(text);

        assertEquals(Optional.empty(), reading.problem());
        assertEquals(Exact.of(value), reading.quantity().value());
        assertEquals(Units.named(unit), reading.quantity().unit());
        assertEquals(text, reading.quantity().spelling());
    }

    // IEC 60062:2016, clause 4: R47, 4R7, 470R, 4K7, 47K, 47K3, 470K, 4M7 as published; capacitances by the same rule.
    // 4k7 and 3V3 are common practice on circuit diagrams.
    @ParameterizedTest
    @CsvSource({ "R47,0.47,ohm", "4R7,4.7,ohm", "470R,470,ohm", "4K7,4700,ohm", "4k7,4700,ohm", "47K,47000,ohm",
            "47K3,47300,ohm", "470K,470000,ohm", "4M7,4700000,ohm", "1G5,1.5e9,ohm", "p47,0.47e-12,F", "4p7,4.7e-12,F",
            "4n7,4.7e-9,F", "4u7,4.7e-6,F", "4\u00B57,4.7e-6,F", "4\u03BC7,4.7e-6,F", "2m2,2.2e-3,F", "100n,1e-7,F", "3V3,3.3,V",
            "-3V3,-3.3,V", "0R01,0.01,ohm" })
    void should_read_component_codes(String text, String base, String unit) {
        Quantity quantity = QuantityText.read(text).quantity();

        assertEquals(Exact.of(base), quantity.base());
        assertEquals(Units.named(unit), quantity.unit());
        assertEquals(text, quantity.spelling());
    }

    @Test
    void should_read_parts_that_a_grammar_has_told_apart() {
        assertEquals("4.7 kohm", Quantity.of("4.7", "kohm").spelling());
        assertEquals(Exact.of(4700), Quantity.of("4k7", "").base());
        assertEquals(Exact.of(4700), Quantity.of("4k7", "ohm").base());
        assertEquals(Unit.MISSING, Quantity.of("5", "").unit());
        assertEquals(Unit.unknown("foo"), Quantity.of("5", "foo").unit());
        assertTrue(QuantityText.read("4k7", "kohm").problem().orElseThrow().contains("two units"));
        assertTrue(QuantityText.read("4k7", "V").problem().isPresent());
    }

    @Test
    void should_leave_missing_and_unknown_units_to_a_rule() {
        assertEquals(Unit.Status.MISSING, QuantityText.read("5").quantity().unit().status());
        assertEquals(Unit.Status.UNKNOWN, QuantityText.read("5 foo").quantity().unit().status());
        assertEquals(Optional.empty(), QuantityText.read("5 foo").problem());
    }

    @ParameterizedTest
    @ValueSource(strings = { "", " ", "V", "-", "+", ".", "e5", "1.2.3 V", "1,5 V", "1 000 V", "- 3 V", "٣ V", "1e999999999 V",
            "1e-999999999 V", "1e61 V", "99999999999999999999999999999999999999999 V", "\u0000", "NaN", "Infinity V" })
    void should_tell_what_is_wrong_with_a_number(String text) {
        QuantityText.Reading reading = QuantityText.read(text);

        assertTrue(reading.problem().orElse("").endsWith("."), text);
        assertEquals(Exact.ZERO, reading.quantity().value());
    }

    @Test
    void should_keep_the_unit_where_only_the_number_is_wrong() {
        assertEquals(Units.named("V"), QuantityText.read("1,5 V").quantity().unit());
        assertEquals(Units.named("V"), QuantityText.read("1e999999999 V").quantity().unit());
    }

    @Test
    void should_answer_any_text_with_a_short_sentence_or_a_quantity() {
        Random random = new Random(7);
        String letters = "0123456789.+-eE,' \t\nRkKMmunpFV%ohmΩµ°/·²{}[]()\u0000😀xyz";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(12); length >= 0; length--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            QuantityText.Reading reading = QuantityText.read(text.toString());
            assertTrue(reading.problem().orElse("").length() < 200);
        }
        for (String block : new String[] { "9", "R", " ", ".", "e", "-", "4k7", "V/", "Ω" }) {
            assertTrue(QuantityText.read(block.repeat(100_000)).problem().orElse("").length() < 200);
            assertTrue(QuantityText.read("1" + block.repeat(100_000) + "1").problem().orElse("").length() < 200);
            assertTrue(QuantityText.read("1 " + block.repeat(100_000)).problem().orElse("").length() < 200);
        }
    }
}
