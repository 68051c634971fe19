/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Texts;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Extra-low voltage 50 V ac and 120 V dc, reduced 25 V ac and 60 V dc: IEC 61140. Energy source class 1:
 * 60 V dc, 30 V rms, 42.4 V peak: IEC 62368-1 (from memory).
 */
class VoltageLimitTest {
    @ParameterizedTest
    @CsvSource({
        // at a limit and just above it; a voltage at the limit does not exceed it
        "dc voltage, 60, ", "dc voltage, 60.001, ENERGY_CLASS_1", "dc voltage, 120, ENERGY_CLASS_1",
        "dc voltage, 120.001, EXTRA_LOW", "dc voltage, -120.001, EXTRA_LOW", "dc voltage, 0, ",
        "ac voltage rms, 25, ", "ac voltage rms, 25.001, REDUCED", "ac voltage rms, 30, REDUCED",
        "ac voltage rms, 30.001, ENERGY_CLASS_1", "ac voltage rms, 50, ENERGY_CLASS_1",
        "ac voltage rms, 50.001, EXTRA_LOW", "ac voltage rms, 230, EXTRA_LOW",
        "ac voltage peak, 42.4, ", "ac voltage peak, 42.401, ENERGY_CLASS_1", "ac voltage peak, 325, ENERGY_CLASS_1",
        "resistance, 1000, "})
    void should_name_the_highest_limit_that_a_voltage_lies_above(String kind, String volts, VoltageLimit expected) {
        assertEquals(Optional.ofNullable(expected),
                VoltageLimit.exceededBy(QuantityKind.inWords(kind).orElseThrow(), Exact.of(volts)));
    }

    @ParameterizedTest
    @CsvSource({
        "60 V dc, , ", "61 V dc, ERROR, above 60 V dc (energy source class 1 of IEC 62368-1)",
        "0.12 kV dc, ERROR, above 60 V dc (energy source class 1 of IEC 62368-1)",
        "121 V dc, ERROR, above 120 V dc (extra-low voltage after IEC 61140)",
        "25 V ac rms, , ", "26 V ac rms, ADVICE, above 25 V ac rms (the reduced extra-low voltage of IEC 61140)",
        "31 V ac rms, ERROR, above 30 V ac rms (energy source class 1 of IEC 62368-1)",
        "51 V ac rms, ERROR, above 50 V ac rms (extra-low voltage after IEC 61140)",
        "42.4 V ac peak, , ", "42.5 V ac peak, ERROR, above 42.4 V ac peak (energy source class 1 of IEC 62368-1)"})
    void should_ask_for_a_shock_note_by_what_a_point_carries(String carried, Severity severity, String reason) {
        assertAsked(severity, reason, """
                procedure P "p"
                point Rail "r" carries up to %s
                measure M "m" { temperature at Rail under 5 degC -> End at least 5 degC -> End }
                conclude End "e" { finds nothing }
                """.formatted(carried));
    }

    @ParameterizedTest
    @CsvSource({"58 V .. 60 V, , ", "58 V .. 60.1 V, ERROR, it reads 58 V .. 60.1 V dc", "-60.1 V .. 0 V, ERROR, it reads -60.1 V .. 0 V dc",
        "at most 61 V, ERROR, it reads at most 61 V dc"})
    void should_ask_for_a_shock_note_by_what_a_step_expects_to_read(String limit, Severity severity, String reason) {
        assertAsked(severity, reason, """
                procedure P "p"
                measure M "m" { dc voltage expects %s within -> End outside -> End }
                conclude End "e" { finds nothing }
                """.formatted(limit));
    }

    private static void assertAsked(Severity severity, String reason, String text) {
        List<Finding> found = Texts.findings("note-never-read", text);
        assertEquals(Optional.ofNullable(severity), found.stream().map(Finding::severity).findFirst(), found.toString());
        found.forEach(one -> assertEquals(true, one.message().contains(reason), one.message()));
    }

    @Test
    void should_not_ask_where_nothing_can_be_live() {
        String text = """
                procedure P "p"
                condition Supply { off, on } live when on starts %s
                point Rail "r" carries up to 400 V
                measure M "m" { resistance at Rail under 5 ohm -> End at least 5 ohm -> End }
                conclude End "e" { finds nothing }
                """;
        assertEquals(List.of(), Texts.findings("note-never-read", text.formatted("off")));
        assertEquals(1, Texts.findings("note-never-read", text.formatted("on")).size());
    }
}
