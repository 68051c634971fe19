/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sound levels measured, held against limits and computed with. */
class SoundLevelRulesTest {
    private static final Set<String> OF_QUANTITIES = Set.of("unreadable-text", "wrong-dimension", "unknown-unit", "missing-unit", "percentage-of-zero",
            "nonsense-accuracy", "wrong-formula", "instrument-cannot-decide", "instrument-lacks-function", "range-exceeded", "unknown-result");
    private static final String TEXT = """
            procedure P "p"
            instrument Meter "Sound level meter, class 2" { sound from 30 dB(A) up to 130 dB(A) resolution 0.1 dB accuracy 1.4 dB }
            point Desk "Desk"
            measure Before "b" { sound at Desk using Meter expects at most 55 dB(A) uncertainty 1 dB for "room" within -> After above -> Refer }
            measure After "a" { sound at Desk using Meter expects 70 dB(A) +/- 12 dB below -> Refer within -> Less above -> Refer }
            calculate Less "l" { value After - Before expects at most 20 dB within -> Fine above -> Refer }
            conclude Fine "f" { finds nothing }
            conclude Refer "r" { refers to "x" }
            example "e" { Before 51.2 dB(A), After 70 dBA, Less within ends at Fine }
            """;

    private static List<String> rules(String text) {
        return Texts.findings(text).stream().filter(finding -> OF_QUANTITIES.contains(finding.rule())).map(Finding::rule).distinct().sorted().toList();
    }

    @Test
    void should_find_nothing_in_levels_that_go_together() {
        assertEquals(List.of(), rules(TEXT));
        assertEquals(List.of(), Texts.findings("example-fails", TEXT));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "at most 55 dB(A) | at most 55 dB | wrong-dimension",
            "at most 55 dB(A) | at most 55 V | wrong-dimension",
            "at most 55 dB(A) | at most 55 dB(C) | unknown-unit",
            "at most 55 dB(A) | at most 55 dB(A | unreadable-text",
            "+/- 12 dB | +/- 12 % | percentage-of-zero",
            "+/- 12 dB | +/- 1 dB | instrument-cannot-decide",
            "accuracy 1.4 dB | accuracy 2 % of reading | nonsense-accuracy",
            "After - Before | After + Before | wrong-formula",
            "After - Before | After * 2 | wrong-formula",
            "After - Before | After / Before | wrong-formula",
            "at most 55 dB(A) | at most 145 dB(A) | range-exceeded"})
    void should_refuse_what_a_sound_level_cannot_be(String was, String is, String rule) {
        String text = TEXT.replace(was, is);

        List<String> found = rules(text);
        assertTrue(found.contains(rule), found + " " + Texts.findings(text).stream().map(Finding::message).toList());
    }
}
