/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is called sound, mended or asked about, and is not. */
class VerdictsTest {
    private static int found(String rule, String text) {
        return Texts.findings(rule, text).size();
    }

    private static String heat(String results, String between) {
        return """
                procedure P "P"
                point Housing "Housing"
                fault Hot "Hot" { remedy Blow }
                measure Heat "Heat" { temperature at Housing RESULTS }
                BETWEEN
                conclude Fine "Fine" { finds nothing }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("RESULTS", results).replace("BETWEEN", between);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', delimiter = ';', value = {
            "expects at most 55 degC within -> Fine above -> Fine; ``; 1",
            "expects at most 55 degC within -> Fine above -> HandOn; ``; 0",
            "expects 20 degC .. 55 degC within -> Fine outside -> Fine; ``; 1",
            "expects 20 degC .. 55 degC within -> Fine below -> Fine above -> Fine; ``; 2",
            "expects at most 55 degC within -> Fine doubtful -> Fine above -> HandOn; ``; 1",
            "expects at most 55 degC within -> Fine above -> Write; do Write \"w\" { then -> Fine }; 1",
            "expects at most 55 degC within -> Fine above -> Write; do Write \"w\" { then -> Again } do Again \"w\" { then -> Fine }; 1",
            "expects at most 55 degC within -> Fine above -> Ask; check Ask \"Covered?\" { yes -> Fine no -> HandOn }; 0",
            "expects at most 55 degC within -> Fine above -> Blow; do Blow \"Blow it out\" { then -> HandOn }; 0",
            "expects at most 55 degC within -> Fine above -> Heat at most 2 times, else Fine; ``; 1",
            "expects at most 55 degC within -> Fine above -> Heat at most 2 times, else HandOn; ``; 0",
            "good at most 55 degC normal -> Fine hot over 55 degC -> Fine; ``; 1",
            "good at most 55 degC -> Fine hot over 55 degC -> Fine; ``; 0",
            "cold under 20 degC -> Fine good 20 degC .. 55 degC normal -> Fine hot over 55 degC -> HandOn; ``; 0",
            "then -> Fine; ``; 0",
            "expects at most within -> Fine above -> Fine; ``; 0",
            "expects at most 55 degC within -> Fine above -> Nowhere; ``; 0"})
    void should_call_no_unit_sound_that_is_out_of_its_limit(String results, String between, int times) {
        assertEquals(times, found("nothing-found-wrongly", heat(results, between)));
    }

    private static String repaired(String yes, String no) {
        return """
                procedure P "P"
                fault Worn "Worn" { remedy Swap }
                check See "See" { confirms complaint bad -> Swap good -> Fine }
                do Swap "Swap" { then -> Try }
                check Try "Try" { verifies repair yes -> YES no -> NO }
                check Look "Look" { dirty -> HandOn clean -> Fine }
                do Write "Write" { then -> Fine }
                do Wipe "Wipe the pins" { then -> Try }
                conclude Fine "Fine" { finds nothing }
                conclude HandOn "Passed on" { refers to "x" }
                conclude Mended "Mended" { finds Worn }
                """.replace("YES", yes).replace("NO", no);
    }

    @ParameterizedTest
    @CsvSource({"Mended, HandOn, 0", "Mended, Fine, 1", "Fine, HandOn, 1", "Mended, Write, 1", "Mended, Look, 0"})
    void should_not_say_that_nothing_was_found_where_something_was_repaired(String yes, String no, int times) {
        assertEquals(times, found("nothing-found-wrongly", repaired(yes, no)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {"Mended; HandOn; 0", "Mended; Try at most 3 times, else HandOn; 1", "Mended; Wipe at most 3 times, else HandOn; 0",
            "Try at most 3 times, else Mended; HandOn; 0", "Mended; HandOn unsure -> Try at most 2 times, else HandOn; 0",
            "Mended; Swap at most 1 times, else HandOn; 0", "Mended; Try; 1"})
    void should_find_a_repair_that_is_tried_until_it_holds(String yes, String no, int times) {
        assertEquals(times, found("tested-until-passed", repaired(yes, no)));
    }

    private static String tested(String unsafe, String results) {
        return """
                procedure P "P"
                equipment "E" class II
                condition Supply { off, on } live when on starts off ends off
                point Pins "L and N" isolated
                fault Worn "Worn" { remedy Swap }
                routine Test "Test" { exits safe normal, unsafe
                    do Shut "Shut the lid" { tools "driver" sets Supply off then -> Insulation }
                    measure Insulation "Insulation" { resistance at Pins tests insulation RESULTS }
                    do Tag "Tag it" { sets Supply off then -> unsafe }
                }
                check See "See" { confirms complaint bad -> Swap good -> Fine }
                do Swap "Swap" { then -> Safe }
                perform Safe by Test { safe -> Mended unsafe -> UNSAFE }
                do Scrape "Scrape the paint where the clip sits" { then -> Safe }
                conclude Fine "Fine" { finds nothing }
                conclude HandOn "Passed on" { refers to "x" }
                conclude Mended "Mended" { finds Worn }
                """.replace("UNSAFE", unsafe).replace("RESULTS", results);
    }

    @ParameterizedTest
    @CsvSource({"HandOn, 0", "'Safe at most 2 times, else HandOn', 1", "'Scrape at most 2 times, else HandOn', 0"})
    void should_find_a_protective_test_that_is_made_until_it_passes(String unsafe, int times) {
        assertEquals(times, found("tested-until-passed", tested(unsafe, "passes at least 2 Mohm -> safe fails under 2 Mohm -> Tag")));
    }

    @Test
    void should_let_a_reading_be_taken_again_that_is_too_near_its_limit() {
        String results = "expects at least 2 Mohm within -> safe below -> Tag doubtful -> Insulation at most 1 times, else Tag";

        assertEquals(0, found("tested-until-passed", tested("HandOn", results)));
    }

    private static String wiped(String asked, String second) {
        return """
                procedure P "P"
                note Kept notice { covers data hazard "This wipes presets." consequence "They are gone." avoid "Copy first." }
                check Ask "ASKED" { notes Kept yes -> One no -> HandOn }
                do One "One" { erases "customer's programs" then -> Two }
                do Two "Two" { erases "SECOND" then -> HandOn }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("ASKED", asked).replace("SECOND", second);
    }

    @ParameterizedTest
    @CsvSource({"Are the programs kept?, customer's run log, 1", "Are the programs and the log kept?, customer's run log, 0", "Is everything kept?, customer's run log, 0",
            "Are the data kept?, customer's run log, 0", "Is that kept?, customer's run log, 0", "Are the programs kept?, the program names, 0",
            "Are the programs kept?, the presets, 0", "Are the programs kept?, customer's programs, 0", "Are the PROGRAMS kept?, run log, 1", "?, run log, 0", "Are the programs kept?, '', 1"})
    void should_ask_about_each_of_two_things_that_are_erased(String asked, String second, int times) {
        assertEquals(times, found("question-about-other-data", wiped(asked, second)));
    }

    @Test
    void should_let_a_second_question_ask_about_the_second_thing() {
        String text = wiped("Are the programs kept?", "customer's run log").replace("then -> Two", "then -> Log")
                + "check Log \"Is the run log printed?\" { notes Kept yes -> Two no -> HandOn }\n";

        assertEquals(0, found("question-about-other-data", text));
    }

    private static String asked(String no, String between) {
        return """
                procedure P "P"
                note Kept notice { covers data hazard "h" consequence "c" avoid "a" }
                check Ask "Kept?" { notes Kept yes -> Wipe no -> NO }
                BETWEEN
                do Save "Copy them" { then -> Wipe }
                do Wipe "Wipe" { erases "programs" then -> HandOn }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("NO", no).replace("BETWEEN", between);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', delimiter = ';', value = {
            "HandOn; ``; 0", "Wipe; ``; 1", "Save; ``; 0",
            "Here; check Here \"Here?\" { yes -> Wipe no -> Save }; 1",
            "Here; check Here \"Agrees?\" { yes -> Wipe no -> HandOn }; 0",
            "Here; check Here \"Room on the stick?\" { yes -> Save no -> HandOn }; 0",
            "Here; check Here \"Agrees?\" { notes Kept yes -> Wipe no -> HandOn }; 0",
            "Here; check Here \"Agrees?\" { notes Kept yes -> Wipe no -> Save }; 0",
            "Here; check Here \"Agrees?\" { notes Kept yes -> Wipe no -> Wipe }; 1",
            "Here; check Here \"Here?\" { yes -> Again no -> Wipe } check Again \"Sure?\" { yes -> Wipe no -> Save }; 1",
            "Here; check Here \"Here?\" { yes -> Ask no -> HandOn }; 0"})
    void should_find_a_question_after_which_all_is_erased_whatever_is_answered(String no, String between, int times) {
        assertEquals(times, found("erase-without-backup-check", asked(no, between)));
    }

    private static String dark(String code, String extra, String needs) {
        return """
                procedure P "P"
                condition Supply { off, on } live when on starts off ends off
                indicator Lamp "Lamp" { steady means "ready" 2 blinks means "overload" }
                EXTRA
                do On "Switch on" { sets Supply on then -> See }
                check See "See" { confirms complaint needs Supply on bad -> Off good -> Off }
                do Off "Switch off" { sets Supply off then -> Look }
                observe Look "Look" at Lamp { NEEDS CODE none -> HandOn anything else -> HandOn }
                do Later "Later" { then -> Done }
                conclude Done "Done" { refers to "y" }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("EXTRA", extra).replace("CODE", code).replace("NEEDS", needs);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', delimiter = ';', value = {
            "steady normal -> Later; ``; ``; 1", "steady -> Later; ``; ``; 1", "``; ``; ``; 0", "steady normal -> Later; part Cell \"Cell\" hazards battery; ``; 0",
            "steady normal -> Later; ``; sets Supply on; 0",
            "steady normal -> Later; condition Charge { present, absent } charged when present becomes present when Supply on starts present; ``; 0"})
    void should_find_a_code_that_is_looked_for_in_the_dark(String code, String extra, String needs, int times) {
        assertEquals(times, found("read-without-supply", dark(code, extra, needs)));
    }

    private static String triedDead(String cover, String supply, String seen) {
        return """
                procedure P "P"
                condition Supply { off, on } live when on starts off ends off
                condition Cover { fitted, removed } starts fitted ends fitted
                fault Worn "Worn" { remedy Swap }
                do On "Switch on" { sets Supply on then -> See }
                check See "See" { confirms complaint SEEN bad -> Lift good -> Lift }
                do Lift "Lift" { sets Supply off, Cover LIFTED then -> Swap }
                do Swap "Swap" { then -> Shut }
                do Shut "Shut" { sets Cover fitted, Supply GIVEN then -> Try }
                check Try "Try" { verifies repair yes -> Off no -> Off }
                do Off "Off" { sets Supply off then -> Mended }
                conclude Mended "Mended" { finds Worn }
                """.replace("LIFTED", cover).replace("GIVEN", supply).replace("SEEN", seen);
    }

    @ParameterizedTest
    @CsvSource({"removed, off, '', 1", "removed, on, '', 0", "fitted, off, '', 0", "removed, off, sets Supply off, 1"})
    void should_find_a_repair_inside_that_is_tried_with_the_supply_off(String cover, String supply, String seen, int times) {
        assertEquals(times, found("read-without-supply", triedDead(cover, supply, seen)));
    }

    private static String noted(String word, String carries, String reading) {
        return """
                procedure P "P"
                note Tingle WORD { covers shock hazard "h" consequence "c" avoid "a" }
                point Pins "Pins" carries up to CARRIES
                measure Read "Read" { READING notes Tingle within -> HandOn outside -> HandOn }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("WORD", word).replace("CARRIES", carries).replace("READING", reading);
    }

    /** IEC 61140: extra-low voltage ends at 120 V dc and 50 V ac rms. */
    @ParameterizedTest
    @CsvSource({"caution, 253 V ac, ac voltage at Pins expects 230 V +/- 10 %, 1", "warning, 253 V ac, ac voltage at Pins expects 230 V +/- 10 %, 0",
            "danger, 253 V ac, ac voltage at Pins expects 230 V +/- 10 %, 0", "caution, 50 V ac, ac voltage at Pins expects 40 V +/- 10 %, 0",
            "caution, 51 V ac, ac voltage at Pins expects 40 V +/- 10 %, 1", "caution, 120 V dc, dc voltage at Pins expects 40 V +/- 10 %, 0",
            "caution, 253 V ac, resistance at Pins expects 40 ohm +/- 10 %, 0", "caution, 253 ohm, ac voltage at Pins expects 40 V +/- 10 %, 0"})
    void should_not_call_a_voltage_that_kills_a_caution(String word, String carries, String reading, int times) {
        assertEquals(times, found("signal-word-fit", noted(word, carries, reading)));
    }

    @ParameterizedTest
    @CsvSource({"16 V, 380 V, 1", "16 V, 0.1 V, 0", "380 V, 0.1 V, 1", "16 V, 60 V, 0"})
    void should_hold_the_range_against_both_points_of_a_reading(String at, String against, int times) {
        String text = """
                procedure P "P"
                instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 1 % of reading rated 600 V category 3 }
                point One "One" carries up to AT dc
                point Other "Other" carries up to OTHER dc
                measure Read "Read" { dc voltage at One against Other using Meter range 60 V expects 12 V +/- 10 % within -> HandOn outside -> HandOn }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("AT", at).replace("OTHER", against);

        assertEquals(times, found("range-exceeded", text));
    }

    private static String outlet(String point, String reading, String cover) {
        return """
                procedure P "P"
                condition Supply { off, on } live when on starts off ends off
                condition Cover { fitted, removed } starts fitted ends fitted
                condition Charge { present, absent } charged when present becomes present when Supply on starts present
                note Mains danger { covers shock hazard "h" consequence "c" avoid "a" }
                note Stored danger { covers charge hazard "h" consequence "c" avoid "a" }
                point Outlet "Outlet" POINT
                do Go "Go" { sets Cover COVER then -> Read }
                measure Read "Read" { READING notes Mains within -> Warn outside -> Warn }
                do Warn "Warn" { notes Stored sets Cover fitted then -> HandOn }
                conclude HandOn "Passed on" { refers to "x" }
                """.replace("POINT", point).replace("READING", reading).replace("COVER", cover);
    }

    @ParameterizedTest
    @CsvSource({"carries up to 253 V ac, ac voltage at Outlet expects 230 V +/- 10 %, fitted, 0", "carries up to 253 V ac, ac voltage at Outlet expects 230 V +/- 10 %, removed, 1",
            "carries up to 325 V dc, dc voltage at Outlet expects 230 V +/- 10 %, fitted, 1", "carries up to 253 V ac hazards charge, ac voltage at Outlet expects 230 V +/- 10 %, fitted, 1",
            "carries up to 253 V ac stores 1 uF, ac voltage at Outlet expects 230 V +/- 10 %, fitted, 1", "carries up to 253 V ac, resistance at Outlet expects 230 ohm +/- 10 %, fitted, 1"})
    void should_ask_for_no_word_of_charge_at_an_outlet_outside_a_closed_unit(String point, String reading, String cover, int times) {
        assertEquals(times, found("note-after-need", outlet(point, reading, cover)));
    }
}
