/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a reading means, where it proves something: whichever way the probes are held (common practice). */
class ReadingEntryTest {
    private static Step.Measure measure(String body) {
        return (Step.Measure) procedure(body).steps().get(0);
    }

    private static Procedure procedure(String body) {
        return Texts.procedure("""
                procedure P "P"
                condition Charge { present, absent } charged when present proved at Bank
                point Bank "Bank" carries up to 400 V dc
                measure Volts "Volts" { dc voltage BODY }
                conclude Gone "Gone" { finds nothing }
                conclude Still "Still" { finds nothing }
                """.replace("BODY", body));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "at Bank at most 5 V -> Gone proves Charge absent over 5 V -> Still; -40; over 5 V",
        "at Bank at most 5 V -> Gone proves Charge absent over 5 V -> Still; -4; at most 5 V",
        "at Bank expects at most 5 V within -> Gone proves Charge absent above -> Still; -40; above",
        "at Bank expects 0 V +/- 5 V within -> Gone proves Charge absent above -> Still below -> Still; -40; below",
        "at Bank -5 V .. 5 V -> Gone proves Charge absent over 5 V -> Still under -5 V -> Still; -40; under -5 V",
        "at Bank at most 5 V -> Gone over 5 V -> Still; -40; at most 5 V"})
    void should_count_without_its_sign_what_proves_by_a_limit_upwards(String body, String volts, String outcome) {
        Step.Measure step = measure(body);
        ReadingEntry entry = ReadingEntry.of(procedure(body), step).orElseThrow();

        assertEquals(outcome, entry.judge(step, Exact.of(volts)).outcome().map(Outcome::key).orElse("none"));
    }

    @ParameterizedTest
    @CsvSource({"-40, false", "-5, true", "5, true", "5.1, false"})
    void should_do_so_in_a_table_too(String volts, boolean accepted) {
        String table = "at Bank expects at most 5 V all within -> Gone proves Charge absent any outside -> Still";
        Step.Measure row = measure(table).readings().get(0);

        assertEquals(accepted, ReadingEntry.ofRow(procedure(table), row).orElseThrow().accepts().contains(Exact.of(volts)));
    }
}
