/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.faultwright.analysis.Texts;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A test, a question or a trial guards nothing where every answer goes on alike. */
class AnswersThatDecideTest {
    private static final String KETTLE = """
            procedure P "P"
            equipment "E" class II
            condition Cover { fitted, removed } ends fitted
            condition Tester { away, plugged } ends away
            fault Dead "Dead" { remedy Swap }
            do Lift "Lift the cover" { sets Cover removed then -> Swap }
            do Swap "Fit a new one" { then -> Close }
            do Close "Fit the cover" { sets Cover fitted then -> Plug }
            do Plug "Plug it into the tester" { sets Tester plugged then -> Insulation }
            TEST
            do Unplug "Unplug" { sets Tester away then -> Mended }
            do Clean "Clean it" { then -> CLEANED }
            conclude Mended "Mended" { finds Dead }
            conclude Unsafe "Not safe" { refers to "the senior technician" }
            conclude Scrap "Beyond repair" { finds Beyond }
            fault Beyond "Beyond repair"
            """;
    private static final String INSULATION = "measure Insulation \"Insulation\" { resistance tests insulation good RESULTS }"
            + " check Leakage \"Leakage\" { tests leakage yes -> Unplug no -> Unsafe }";

    private static int found(String rule, String text) {
        return Texts.findings(rule, text).size();
    }

    /** EN 50678, from memory: at least 2 Mohm in class II. */
    @ParameterizedTest
    @CsvSource({"at least 2 Mohm -> Leakage low under 2 Mohm -> Unsafe, 0", "at least 2 Mohm -> Leakage low under 2 Mohm -> Leakage, 1",
        "at least 2 Mohm -> Leakage low 1 Mohm .. under 2 Mohm -> Leakage bad under 1 Mohm -> Unsafe, 1",
        "at least 2 Mohm -> Unsafe low under 2 Mohm -> Leakage, 1", "at least 2 Mohm -> Leakage low under 2 Mohm -> Unplug, 1",
        "at least 2 Mohm -> Leakage low under 2 Mohm -> Scrap, 0", "at least 2 Mohm -> Leakage low under 2 Mohm -> Swap at most 1 times else Unsafe, 0",
        "at least 2 Mohm -> Leakage low under 2 Mohm -> Clean, 1", "at least 5 Mohm -> Leakage low 2 Mohm .. under 5 Mohm -> Leakage bad under 2 Mohm -> Unsafe, 0"})
    void should_keep_back_what_fails_a_protective_test(String results, int times) {
        assertEquals(times, found("failed-test-passed", KETTLE.replace("CLEANED", "Unplug").replace("TEST", INSULATION.replace("RESULTS", results))));
    }

    /** Where one result passes, every other one fails, whatever it is called; and a repair alone makes nothing good. */
    @ParameterizedTest
    @CsvSource({"good at least 2 Mohm -> Leakage anything else -> Leakage, 1", "good at least 2 Mohm -> Leakage anything else -> Unsafe, 0",
        "good at least 2 Mohm -> Leakage low under 2 Mohm -> Unsafe doubtful -> Leakage, 1", "good at least 2 Mohm -> Leakage anything else -> Rub, 1",
        "good at least 2 Mohm -> Leakage anything else -> Rub at most 1 times else Unsafe, 1"})
    void should_take_for_failed_whatever_does_not_pass(String results, int times) {
        String text = KETTLE.replace("CLEANED", "Unplug").replace("TEST", INSULATION.replace("good RESULTS", results) + " do Rub \"Rub the pins\" { repairs then -> Unplug }");
        assertEquals(times, found("failed-test-passed", text));
        assertEquals(0, found("failed-test-passed", text.replace("repairs then -> Unplug", "repairs then -> Insulation").replace("anything else -> Leakage", "anything else -> Unsafe")
                .replace("doubtful -> Leakage", "doubtful -> Unsafe")));
    }

    @ParameterizedTest
    @CsvSource({"all within -> Leakage any outside -> Unsafe, 0", "all within -> Leakage any outside -> Clean, 1"})
    void should_hold_a_table_alike(String results, int times) {
        String table = "point One \"One\" point Two \"Two\" measure Insulation \"Insulation\" {\n resistance tests insulation\n at One expects at least 2 Mohm\n"
                + " at Two expects at least 2 Mohm\n " + results + " } check Leakage \"Leakage\" { tests leakage yes -> Unplug no -> Unsafe }";
        assertEquals(times, found("failed-test-passed", KETTLE.replace("CLEANED", "Unplug").replace("TEST", table)));
    }

    /** One idle step between does not make a question of what goes on alike. */
    @ParameterizedTest
    @CsvSource({"no -> Unsafe, 0, 0", "no -> Slip, 1, 1"})
    void should_look_where_answers_come_to(String no, int untested, int unverified) {
        String text = KETTLE.replace("CLEANED", "Unplug").replace("TEST", "check Insulation \"Test\" { tests insulation, leakage verifies repair yes -> Unplug " + no
                + " } do Slip \"Write it down\" { then -> Unplug }");
        assertEquals(untested, found("protection-not-tested", text));
        assertEquals(unverified, found("repair-not-verified", text));
    }

    @ParameterizedTest
    @CsvSource({"Insulation, 0", "Unplug, 1"})
    void should_let_what_was_cleaned_be_tested_again(String cleaned, int times) {
        assertEquals(times, found("failed-test-passed", KETTLE.replace("CLEANED", cleaned)
                .replace("TEST", INSULATION.replace("RESULTS", "at least 2 Mohm -> Leakage low under 2 Mohm -> Clean at most 1 times else Unsafe"))));
    }

    @ParameterizedTest
    @CsvSource({"within -> Leakage below -> Unsafe, 0", "within -> Leakage below -> Leakage, 1", "within -> Leakage outside -> Leakage, 1"})
    void should_hold_an_expected_value_alike(String results, int times) {
        assertEquals(times, found("failed-test-passed", KETTLE.replace("CLEANED", "Unplug")
                .replace("TEST", INSULATION.replace("good RESULTS", "expects at least 2 Mohm " + results))));
    }

    /** With a tester plugged in the unit is closed all the same; an act has no result that can fail. */
    @ParameterizedTest
    @CsvSource({"'check Insulation \"Test\" { tests insulation, leakage yes -> Unplug no -> Unsafe }', 0",
        "'check Insulation \"Test\" { tests insulation, leakage yes -> Unplug no -> Unplug }', 1",
        "'do Insulation \"Test\" { tests insulation, leakage then -> Unplug }', 1"})
    void should_count_as_a_test_only_what_can_fail(String test, int times) {
        assertEquals(times, found("protection-not-tested", KETTLE.replace("CLEANED", "Unplug").replace("TEST", test)));
    }

    @ParameterizedTest
    @CsvSource({"then -> Close }, 0", "then -> Insulation }, 1"})
    void should_count_as_a_test_only_what_is_made_when_it_is_closed_again(String next, int times) {
        String test = "check Insulation \"Test\" { tests insulation, leakage yes -> " + (times == 0 ? "Unplug" : "Refit") + " no -> Unsafe }"
                + " do Refit \"Fit the cover\" { sets Cover fitted then -> Unplug }";
        String text = KETTLE.replace("CLEANED", "Unplug").replace("TEST", test).replace("then -> Close }", next);

        assertEquals(times, found("protection-not-tested", text));
    }

    private static final String RECORDER = """
            procedure P "P"
            fault Stuck "Stuck" { remedy Reset }
            note Data notice { covers data }
            check Copied "Is there a copy?" { notes Data yes -> Reset no -> COPY }
            do Copy "Copy" { then -> Reset }
            do Reset "Reset" { erases "all recordings" then -> Works }
            check Works "Does it work?" { verifies repair yes -> Done no -> BAD }
            conclude Done "Done" { finds Stuck }
            conclude HandOn "Passed on" { refers to "the front desk" }
            """;

    /** Where "no" wipes the first time, nobody is asked again before the recordings are gone. */
    @ParameterizedTest
    @CsvSource({"Copy, 0", "HandOn, 0", "Reset, 1", "'Reset at most 1 times, else Reset', 1", "'Reset at most 1 times, else HandOn', 1"})
    void should_ask_about_data_only_where_the_answer_counts(String copy, int times) {
        assertEquals(times, found("erase-without-backup-check", RECORDER.replace("COPY", copy).replace("BAD", "HandOn")));
    }

    @ParameterizedTest
    @CsvSource({"HandOn, 0", "Copied, 0", "Done, 1"})
    void should_take_a_repair_as_verified_only_where_the_answer_counts(String bad, int times) {
        assertEquals(times, found("repair-not-verified", RECORDER.replace("COPY", "HandOn").replace("BAD", bad)));
    }

    @ParameterizedTest
    @CsvSource({"Done, 0", "Volts, 1"})
    void should_take_a_meter_as_tried_only_where_the_answer_counts(String mute, int times) {
        assertEquals(times, found("proof-meter-untried", """
                procedure P "P"
                condition Charge { present, absent } charged when present proved at Bulk
                instrument Meter { dc voltage up to 600 V resolution 0.1 V accuracy 1 % of reading rated 600 V category 3 }
                point Bulk "C1" carries up to 400 V dc
                check Try "Does the meter read?" { tries Meter yes -> Volts no -> MUTE }
                measure Volts "Across it" { dc voltage at Bulk using Meter at most 5 V -> Done proves Charge absent over 5 V -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("MUTE", mute)));
    }
}
