/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Hands where a charge may be, and proofs, tests and questions that look like some and are none. */
class HandsAndProofsTest {
    private static final String BENCH = """
            procedure P "P"
            condition Supply { off, on } live when on starts off
            condition Cover { fitted, removed } starts fitted ends fitted
            condition Charge { present, absent } charged when present becomes present when Supply on proved at Bulk at most 5 V starts present
            instrument Meter "Meter" { dc voltage up to 600 V resolution 1 V accuracy 1 % of reading rated 600 V category 3 }
            note Stored danger { covers charge, shock hazard "h" consequence "c" avoid "a" }
            note Kept notice { covers data hazard "h" consequence "c" avoid "a" }
            """;
    private static final String PROOF = """
            measure Volts "Volts" { dc voltage at Bulk using Meter notes Stored at most 5 V -> Shut proves Charge absent over 5 V -> Shut }
            do Shut "Fit the cover" { sets Cover fitted then -> Done }
            conclude Done "Done" { refers to "x" }
            """;

    private static int found(String rule, String text) {
        return Texts.findings(rule, text).size();
    }

    private static String inside(String step, String volts) {
        return BENCH + """
                point Bulk "C1" carries up to VOLTS dc hazards charge
                part Board "Board"
                part Lead "Bleed lead" drains by 1 kohm rated 50 W
                part Bank "C1, wires drawn" hazards charge isolated when Cover removed
                part Fuse "F1, drawn" isolated
                do Lift "Lift the cover" { notes Stored sets Cover removed tools "driver" then -> Work }
                STEP
                do Wait "Wait" { wait 1 min then -> Volts }
                """.replace("VOLTS", volts).replace("STEP", step) + PROOF;
    }

    /** 60 V dc is where IEC 62368-1 ends its energy source class 1. */
    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {
            "`do Work \"w\" { notes Stored handles Board then -> Wait }`, 1, 0",
            "`do Work \"w\" { notes Stored tools \"pliers\" then -> Wait }`, 1, 0",
            "`do Work \"w\" { notes Stored tools \"bleed resistor\" then -> Volts }`, 0, 0",
            "`do Work \"w\" { notes Stored handles Board then -> Volts }`, 0, 0",
            "`do Work \"w\" { notes Stored repairs then -> Volts }`, 1, 0",
            "`do Work \"w\" { tools \"pliers\" then -> Volts }`, 1, 0",
            "`do Work \"w\" { notes Stored repairs then -> Wait }`, 1, 0",
            "`check Work \"w\" { tools \"pliers\" yes -> Wait no -> Shut }`, 1, 0",
            "`check Work \"w\" { notes Stored tools \"torch\" yes -> Wait no -> Shut }`, 0, 0",
            "`do Work \"w\" { notes Stored hazards charge tools \"bleed resistor\" then -> Wait }`, 0, 0",
            "`do Work \"w\" { hazards charge tools \"bleed resistor\" then -> Wait }`, 1, 0",
            "`do Work \"w\" { notes Stored handles Bank then -> Wait }`, 1, 1",
            "`do Work \"w\" { notes Stored handles Lead tools \"goggles\" then -> Wait }`, 0, 0",
            "`do Work \"w\" { handles Fuse then -> Wait }`, 0, 0",
            "`check Work \"w\" { tries Meter notes Stored tools \"9 V block\" yes -> Wait no -> Shut }`, 0, 0",
            "`check Work \"w\" { yes -> Wait no -> Shut }`, 0, 0",
            "`do Work \"w\" { notes Stored handles Board sets Cover fitted then -> Done }`, 0, 0"})
    void should_keep_hands_out_of_an_open_unit_until_a_dangerous_charge_is_proved_gone(String step, int dangerous, int harmless) {
        assertEquals(dangerous, found("charge-not-proved-absent", inside(step, "380 V")));
        assertEquals(harmless, found("charge-not-proved-absent", inside(step, "60 V")));
    }

    @Test
    void should_let_hands_in_behind_the_proof() {
        String text = inside("do Work \"w\" { notes Stored handles Board tools \"pliers\" then -> Shut }", "380 V")
                .replace("then -> Work }\n", "then -> Volts }\n").replace("5 V -> Shut proves", "5 V -> Work proves");

        assertEquals(0, found("charge-not-proved-absent", text));
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {
            "`point A \"A\" carries up to 380 V dc isolated when Supply off`, 1",
            "`point A \"A\" carries up to 380 V dc isolated when Supply off, Cover removed`, 0",
            "`point A \"A\" carries up to 380 V dc isolated when Cover removed`, 0",
            "`point A \"A\" carries up to 24 V dc isolated when Supply off`, 0",
            "`point A \"A\" hazards charge isolated when Supply off`, 1",
            "`point A \"A\" carries up to 253 V ac isolated when Supply off`, 0",
            "`part A \"A\" hazards charge isolated`, 1",
            "`part A \"A\" hazards shock isolated`, 1",
            "`part A \"A\" hazards charge isolated when Supply off`, 1",
            "`part A \"A\" hazards heat isolated`, 0",
            "`part A \"A\" isolated when Supply off`, 0",
            "`part A \"A\" isolated when Nothing at`, 0"})
    void should_not_take_a_supply_that_is_off_for_what_keeps_a_charge_away(String declared, int times) {
        assertEquals(times, found("isolation-unfounded", BENCH + "point Bulk \"C1\" carries up to 380 V dc\n" + declared
                + "\nconclude Done \"Done\" { refers to \"x\" }\n"));
    }

    @ParameterizedTest
    @CsvSource({"20 V dc, 380 V dc, 1", "20 V dc, 60 V dc, 0", "200 V dc, 650 V dc, 0", "20 V dc, 380 V dc isolated, 0", "20 V dc, 380 V dc stores 10 nF, 0",
            "20 V dc, 253 V ac, 0", "20 V dc stores 4700 uF, 380 V dc, 0"})
    void should_find_the_charge_proved_at_a_harmless_point_where_another_may_hold_a_dangerous_one(String proved, String other, int times) {
        String text = BENCH + "point Bulk \"C12\" carries up to " + proved + "\npoint Large \"C3\" carries up to " + other + "\n"
                + "do Lift \"Lift\" { sets Cover removed then -> Volts }\n" + PROOF;

        assertEquals(times, found("stored-charge-unsaid", text));
    }

    private static String mains(String needs, String reading) {
        return BENCH + """
                point Bulk "C1" carries up to 380 V dc
                point Inlet "Inlet" carries up to 253 V ac at 50 Hz .. 60 Hz
                point Rail "Rail" carries up to 16 V dc
                EXTRA
                measure Read "Read" { READING within -> Done outside -> Done }
                conclude Done "Done" { refers to "x" }
                """.replace("READING", reading + " " + needs);
    }

    @ParameterizedTest
    @CsvSource({"'', ac voltage at Inlet expects 230 V +/- 10 %, 1", "sets Supply on, ac voltage at Inlet expects 230 V +/- 10 %, 0",
            "'', ac voltage at Inlet expects at most 5 V, 0", "'', ac current expects 1 A +/- 10 %, 0", "'', ac voltage at Rail expects 2 V +/- 10 %, 0", "'', resistance at Inlet expects 20 ohm +/- 10 %, 0",
            "'', dc voltage at Rail expects 12 V +/- 5 %, 0", "needs Charge absent, dc voltage at Rail expects 12 V +/- 5 %, 1",
            "needs Charge absent, dc voltage at Rail expects -12 V +/- 5 %, 1", "needs Charge absent, dc voltage at Rail expects -1 V .. 1 V, 0",
            "needs Supply on, ac voltage at Inlet expects 230 V +/- 10 %, 0", "'', ac voltage at Inlet expects 230 ohm +/- 10 %, 0",
            "'', ac voltage at Inlet expects, 0"})
    void should_find_a_voltage_that_no_unit_shows_with_its_supply_off(String needs, String reading, int times) {
        assertEquals(times, found("read-without-supply", mains(needs, reading).replace("EXTRA", "")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"part Cell \"Coin cell\" hazards battery", "point Cell \"Cell\" hazards battery"})
    void should_be_silent_about_direct_voltage_where_a_cell_may_give_it(String cell) {
        String text = mains("needs Charge absent", "dc voltage at Rail expects 3 V +/- 5 %").replace("EXTRA", cell);

        assertEquals(0, found("read-without-supply", text));
    }

    @Test
    void should_be_silent_where_a_bench_supply_is_set() {
        String text = mains("needs Charge absent", "dc voltage at Rail expects 12 V +/- 5 %").replace("EXTRA",
                "begin at Feed\ndo Feed \"Bench supply to the rail\" { adjust dc voltage of \"bench supply\" to 12 V +/- 1 % then -> Read }");

        assertEquals(0, found("read-without-supply", text));
        assertEquals(1, found("read-without-supply", text.replace("adjust dc voltage of \"bench supply\" to 12 V +/- 1 %", "")));
    }

    private static String repaired(String verify) {
        return """
                procedure P "P"
                fault Dead "Dead" { remedy Swap }
                measure Ohms "Ohms" { resistance then -> Swap }
                do Swap "Fit a new one" { then -> Try }
                VERIFY
                conclude Mended "Mended" { finds Dead }
                conclude Else "Else" { refers to "x" }
                """.replace("VERIFY", verify);
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {
            "`check Try \"Runs?\" { verifies repair yes -> Mended no -> Else }`, 0",
            "`do Try \"Let it run\" { verifies repair then -> Mended }`, 1",
            "`measure Try \"Speed\" { speed verifies repair then -> Mended }`, 1",
            "`measure Try \"Speed\" { speed verifies repair over 5 rpm -> Mended at most 5 rpm -> Else }`, 0",
            "`calculate Try \"Twice\" { value Ohms * 2 verifies repair over 5 ohm -> Mended at most 5 ohm -> Else }`, 1",
            "`measure Again \"Ohms\" { resistance then -> Twice } calculate Twice \"Sum\" { value Ohms + Again verifies repair over 5 ohm -> Mended at most 5 ohm -> Else }`, 0"})
    void should_take_a_repair_as_verified_only_by_what_can_fail_and_was_read_after_it(String verify, int times) {
        String text = repaired(verify);

        assertEquals(times, found("repair-not-verified", verify.startsWith("measure Again") ? text.replace("-> Try }", "-> Again }") : text));
    }

    private static String lead(String point, String lead) {
        return BENCH + "point Bulk \"C1\" carries up to " + point + "\npart Lead \"Lead\" drains by " + lead + "\n"
                + "do Lift \"Lift\" { sets Cover removed then -> Bleed }\ndo Bleed \"Bleed\" { notes Stored handles Lead then -> Volts }\n" + PROOF;
    }

    /** V²/R at first: 380 V give 144.4 W in 1 kohm, 14,440 W in 10 ohm. */
    @ParameterizedTest
    @CsvSource({"380 V dc, 1 kohm rated 50 W, 0", "380 V dc, 10 ohm rated 5 W, 1", "380 V dc, 1 kohm rated 28 W, 1", "380 V dc, 1 kohm rated 29 W, 0",
            "380 V dc, 0.1 ohm, 1", "380 V dc, 1 kohm, 0", "380 V dc, 0 ohm, 0", "50 V dc, 0.1 ohm, 0"})
    void should_reckon_what_a_lead_takes_from_the_voltage_alone(String point, String lead, int times) {
        assertEquals(times, found("bleed-lead-unfit", lead(point, lead)));
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {"`none -> Done proves Supply off lit -> Done`, 1", "`none -> Done lit -> Done proves Supply on`, 0",
            "`none -> Done proves Supply gone lit -> Done`, 0"})
    void should_not_let_a_dark_lamp_prove_that_nothing_is_live(String outcomes, int times) {
        String text = BENCH + "point Bulk \"C1\"\nindicator Lamp \"Lamp\" { lit means \"Mains\" source \"x\" }\nobserve Look \"Look\" at Lamp { " + outcomes
                + " }\nconclude Done \"Done\" { refers to \"x\" }\n";

        assertEquals(times, found("proof-not-measured", text));
    }

    private static String tried(String mute) {
        return BENCH + """
                point Bulk "C1" carries up to 380 V dc
                begin at Lift
                do Lift "Lift" { notes Stored sets Cover removed then -> Try }
                check Try "Reads?" { tries Meter reads -> Volts MUTE }
                do Change "Fit a new battery" { then -> Try }
                do Rub "Rub the tips" { then -> Volts }
                """.replace("MUTE", mute) + PROOF;
    }

    @ParameterizedTest
    @CsvSource({"'mute -> Shut', 0", "'mute -> Change at most 1 times, else Shut', 0", "'mute -> Change at most 1 times, else Volts', 1", "'mute -> Rub', 1",
            "'mute -> Volts', 1"})
    void should_not_take_a_meter_as_tried_that_comes_to_the_proof_whatever_it_shows(String mute, int times) {
        assertEquals(times, found("proof-meter-untried", tried(mute)));
    }

    private static String wiped(String ask, String wipe) {
        return BENCH + "point Bulk \"C1\"\npart Card \"Card\" hazards data\nbegin at Ask\ncheck Ask \"Kept?\" { notes Kept " + ask + " }\n"
                + "do Ring \"Ring\" { then -> Ask }\ncheck Save \"Saved?\" { yes -> Wipe no -> Done }\ndo Wipe \"Wipe\" { " + wipe
                + " then -> Done }\nconclude Done \"Done\" { refers to \"x\" }\n";
    }

    @ParameterizedTest
    @CsvSource({"yes -> Wipe no -> Done, 0", "yes -> Wipe no -> Save, 0", "'yes -> Wipe no -> Ring at most 2 times, else Wipe', 1",
            "'yes -> Wipe no -> Ring at most 2 times, else Done', 0", "yes -> Wipe no -> Wipe, 1"})
    void should_take_data_as_asked_about_only_where_an_answer_keeps_them(String ask, int times) {
        assertEquals(times, found("erase-without-backup-check", wiped(ask, "erases \"programs\"")));
    }

    @ParameterizedTest
    @CsvSource({"handles Card repairs, 1", "handles Card, 0", "repairs, 0"})
    void should_ask_about_data_before_the_part_that_holds_them_is_replaced(String wipe, int times) {
        assertEquals(times, found("erase-without-backup-check", wiped("yes -> Wipe no -> Done", wipe).replace("notes Kept", "")));
        assertEquals(0, found("erase-without-backup-check", wiped("yes -> Wipe no -> Done", wipe)));
    }

    @ParameterizedTest
    @CsvSource({"motion isolated, 1", "heat isolated, 0", "motion isolated when Cover removed, 0"})
    void should_keep_hands_off_what_turns_in_an_open_unit_that_runs(String belt, int times) {
        String text = BENCH + """
                point Bulk "C1"
                part Belt "Belt" hazards BELT
                do Lift "Lift" { sets Cover removed then -> Run }
                do Run "Switch on" { sets Supply on then -> Feel }
                check Feel "Feel the belt" { handles Belt yes -> Off no -> Off }
                do Off "Off" { sets Supply off then -> Done }
                conclude Done "Done" { refers to "x" }
                """.replace("BELT", belt);

        assertEquals(times, found("live-work", text));
        assertEquals(0, found("live-work", text.replace("handles Belt", "handles Belt live because \"it slips only while it runs\"")));
    }

    @ParameterizedTest
    @CsvSource({"h, 0", "' ', 1", "?, 1", "..., 1", "230 V, 0", "Ж, 0"})
    void should_ask_for_words_where_a_note_was_to_be_written_later(String words, int times) {
        assertEquals(times, found("incomplete-note", BENCH.replace("consequence \"c\" avoid \"a\" }\nnote", "consequence \"" + words + "\" avoid \"a\" }\nnote")
                + "conclude Done \"Done\" { refers to \"x\" }\n"));
    }

    private static final String TESTS = """
            library Tests "Tests"
            condition Supply { off, on } live when on starts off ends off
            condition Cover { fitted, removed } starts fitted ends fitted
            routine ForClassI "Tests, class I" { exits safe normal, unsafe
                measure Conductor "Conductor" { resistance tests conductor at most 0.3 ohm -> Insulation over 0.3 ohm -> unsafe }
                measure Insulation "Insulation" { resistance tests insulation at least 1 Mohm -> On under 1 Mohm -> unsafe }
                do On "On" { sets Supply on then -> Leakage }
                measure Leakage "Leakage" { ac current sets Supply off tests leakage at most 3.5 mA -> safe over 3.5 mA -> unsafe }
            }
            """;

    private static String tested(String protection, String after, String unsafe) {
        return """
                procedure P "P"
                uses Tests
                equipment "E" class CLASS
                point Inlet "Inlet" carries up to 253 V ac category 2
                fault Dead "Dead" { remedy Swap }
                do Lift "Lift" { sets Cover removed then -> Swap }
                do Swap "Fit a new one" { then -> Close }
                do Close "Close" { sets Cover fitted then -> Test }
                perform Test "Test" by ForClassI { safe -> PASSED unsafe -> FAILED }
                do Again "Lift" { sets Cover removed then -> Work }
                do Work "Dress the wires" { WORK then -> Shut }
                do Shut "Shut" { sets Cover fitted then -> Mended }
                do On "Switch on" { sets Supply on then -> Off }
                do Off "Switch off" { sets Supply off then -> Else }
                conclude Mended "Mended" { finds Dead }
                conclude Else "Else" { refers to "x" }
                """.replace("CLASS", protection).replace("PASSED", after.isEmpty() ? "Mended" : "Again").replace("FAILED", unsafe).replace("WORK", after);
    }

    private static int foundIn(String rule, String text) {
        return Texts.findings(rule, Texts.document(text, Map.of("Tests", TESTS))).size();
    }

    /** EN 50678, from memory: class II asks for 2 Mohm and 0.5 mA, class I for 1 Mohm and 3.5 mA. */
    @ParameterizedTest
    @CsvSource({"I, 0", "II, 1", "III, 1"})
    void should_hold_the_tests_of_a_library_against_the_class_of_the_unit(String protection, int times) {
        assertEquals(times, foundIn("protection-limit-loose", tested(protection, "", "Else")));
    }

    @ParameterizedTest
    @CsvSource(quoteCharacter = '`', value = {"``, 0", "`tools \"pliers\"`, 1", "`hint \"look\"`, 0"})
    void should_not_count_a_test_after_which_tools_go_in_again(String work, int times) {
        assertEquals(times, foundIn("protection-not-tested", tested("I", work, "Else")));
    }

    @Test
    void should_not_believe_class_III_of_a_unit_with_mains_inside() {
        String text = tested("III", "", "Else");

        assertTrue(Texts.findings("protection-not-tested", Texts.document(text, Map.of("Tests", TESTS))).stream()
                .anyMatch(finding -> finding.message().contains("class III")));
        assertEquals(0, foundIn("protection-not-tested", text.replace("253 V ac category 2", "400 V dc")));
        assertEquals(0, foundIn("protection-not-tested", text.replace("253 V ac category 2", "800 V ac at 20 kHz .. 50 kHz")));
    }

    @ParameterizedTest
    @CsvSource({"Else, 0", "On, 3"})
    void should_not_let_a_unit_that_failed_be_switched_on_again_unrepaired(String unsafe, int times) {
        assertEquals(times, foundIn("failed-test-passed", tested("I", "", unsafe)));
    }
}
