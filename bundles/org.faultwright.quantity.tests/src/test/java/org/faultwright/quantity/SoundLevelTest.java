/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.fhir.ucum.UcumEssenceService;
import org.junit.jupiter.api.Test;

/** Sound levels against the UCUM tables and the numbers of sound calibrators. */
class SoundLevelTest {
    private static final Unit UNIT = Units.named("dB(A)");

    private static Quantity level(String value) {
        return Quantity.of(value, "dB(A)");
    }

    /** UCUM, table "levels": B[SPL] is metric, so that dB[SPL] is a code, and stands for 2 lg over 2 10*-5 Pa; braces hold a remark. */
    @Test
    void should_have_the_code_of_ucum_with_its_reference_of_20_micropascal() throws Exception {
        String essence;
        try (InputStream file = UcumEssenceService.class.getResourceAsStream("/ucum-essence.xml")) {
            essence = new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
        String bel = essence.substring(essence.indexOf("<unit Code=\"B[SPL]\""));
        bel = bel.substring(0, bel.indexOf("</unit>"));

        assertTrue(bel.contains("isMetric=\"yes\"") && bel.contains("2lg(2 10*-5.Pa)"), bel);
        assertEquals("dB[SPL]{A}", UNIT.ucum());
    }

    /** IEC 60942: calibrators give 94 dB and 114 dB, which are 1 Pa and 10 Pa over 20 µPa to three digits: ten times the pressure is 20 dB. */
    @Test
    void should_count_levels_as_calibrators_do() {
        assertEquals(94, DecibelLevels.decibel(Exact.ratio(1, 1).dividedBy(Exact.of("0.00002")), 20).doubleValue(), 0.03);
        assertEquals(level("114").base().minus(level("94").base()), DecibelLevels.decibel(Exact.of(10), 20));
    }

    @Test
    void should_be_read_however_it_is_written() {
        for (String spelling : List.of("dB(A)", "dBA")) {
            assertEquals(UNIT, Units.named(spelling), spelling);
        }
        assertTrue(level("54.3").fits(QuantityKind.SOUND_LEVEL));
        assertFalse(Quantity.of("54.3", "dB").fits(QuantityKind.SOUND_LEVEL));
        assertFalse(Quantity.of("54.3", "dBm").fits(QuantityKind.SOUND_LEVEL));
        assertFalse(Units.named("dB(C)").isKnown());
        assertFalse(Units.named("dB(A)/s").isKnown());
        assertFalse(Units.named("kdB(A)").isKnown());
    }

    @Test
    void should_differ_from_another_by_decibels() {
        assertEquals(UNIT, Quantity.of("2", "dB").asDifferenceOf(UNIT).unit());
        assertEquals("dBm", Quantity.of("2", "dBm").asDifferenceOf(UNIT).unit().symbol());
        assertEquals("dB", Quantity.of("2", "dB").asDifferenceOf(Units.named("V")).unit().symbol());
        assertEquals(Exact.of(2), new Tolerance.Amount(Quantity.of("2", "dB").asDifferenceOf(UNIT)).distance(level("70")));
    }
}
