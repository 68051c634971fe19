/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Work on what is live, and the tests after it. */
class LiveAndProtectionRulesTest {
    private static final String REPAIR = """
            procedure P "P"
            equipment "E"CLASS
            condition Cover { fitted, removed } ends fitted
            fault Dead "Dead" { remedy Swap }
            do Lift "Lift the cover" { sets Cover removed then -> Swap }
            do Swap "Fit a new one" { then -> Close }
            do Close "Fit the cover" { sets Cover fitted then -> Mended }
            conclude Mended "Mended" { finds Dead }
            """;

    private static List<String> rules(String rule, String text) {
        return Texts.findings(rule, text).stream().map(Finding::rule).toList();
    }

    /** Classes I and II are for units on the mains, class III is not (IEC 61140). */
    @ParameterizedTest
    @CsvSource({"' class I', 1", "' class II', 1", "' class III', 0", "'', 0"})
    void should_ask_for_the_protective_tests_by_the_class_where_no_point_is_named(String written, int times) {
        assertEquals(times, rules("protection-not-tested", REPAIR.replace("CLASS", written)).size());
    }

    @Test
    void should_name_all_three_tests_of_class_I() {
        String said = Texts.findings("protection-not-tested", REPAIR.replace("CLASS", " class I")).get(0).message();

        assertTrue(said.contains("the protective conductor, the insulation and the leakage current"), said);
    }

    /** One slip, one finding: the unit, and not the test as well. */
    @ParameterizedTest
    @CsvSource({"3.5 mA, 0", "3.5, 0", "3.5 W, 0", "3.5 A, 1", "350 mA, 1"})
    void should_hold_a_limit_against_the_standard_only_where_its_unit_is_one_of_current(String most, int times) {
        String text = """
                procedure P "P"
                equipment "E" class I
                measure Leakage "Leakage" { ac current tests leakage
                    passes at most MOST -> Done
                    fails over MOST -> Done
                }
                conclude Done "Done" { finds nothing }
                """.replace("MOST", most);

        assertEquals(times, rules("protection-limit-loose", text).size());
    }

    private static String pressed(String needs, String sets) {
        return """
                procedure P "P"
                condition Supply { off, on } live when on starts off
                point Bank "Bank" carries up to 253 V ac
                do Run "Switch on" { sets Supply on then -> Press }
                check Press "Press on the board; pull the plug. Did it flicker?" { NEEDS live because "it flickers only while it runs" SETS yes -> Done no -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("NEEDS", needs).replace("SETS", sets);
    }

    @ParameterizedTest
    @CsvSource({"'needs Supply on', ''", "'needs Supply on', 'sets Supply off'", "'', 'sets Supply off'"})
    void should_ask_for_a_rated_tool_where_the_work_begins_live_though_the_step_ends_dead(String needs, String sets) {
        assertEquals(1, rules("live-tool-unfit", pressed(needs, sets)).size());
        assertEquals(0, rules("live-reason-idle", pressed(needs, sets)).size());
    }

    @Test
    void should_call_a_reason_idle_only_where_nothing_is_live_on_any_path() {
        String never = pressed("", "").replace("sets Supply on", "");

        assertEquals(0, rules("live-tool-unfit", never).size());
        assertEquals(1, rules("live-reason-idle", never).size());
    }

    /** 325 V is the peak of 230 V; 70.7 V that of the 50 V of IEC 61140. */
    @ParameterizedTest
    @CsvSource({"230 V ac, 1", "325 V ac peak, 1", "50 V ac, 0", "70 V ac peak, 0", "71 V ac peak, 1", "400 V dc, 0"})
    void should_take_mains_for_mains_by_its_peak_too(String carried, int times) {
        String text = REPAIR.replace("CLASS", "").replace("fault Dead", "point L \"L\" carries up to " + carried + "\nfault Dead");

        assertEquals(times, rules("protection-not-tested", text).size());
    }

    @Test
    void should_ask_for_a_rated_tool_in_a_routine_too() {
        String text = """
                procedure P "P"
                condition Supply { off, on } live when on starts off
                point Bank "Bank" carries up to 253 V ac
                routine Feel "Feel" { exits felt
                    check Press "Press on the board" { live because "it flickers only while it runs" yes -> felt no -> felt }
                }
                do Run "Switch on" { sets Supply on then -> Go }
                perform Go "Go" by Feel { felt -> Done }
                conclude Done "Done" { finds nothing }
                """;

        assertEquals(1, rules("live-tool-unfit", text).size());
        assertEquals(0, rules("live-reason-idle", text).size());
        assertEquals(1, rules("live-reason-idle", text.replace("sets Supply on", "")).size());
    }

    private static final String MAINS = """
            library Mains "Mains"
            condition Supply { off, on } live when on starts off
            point Inlet "Inlet" carries up to 253 V ac
            point Bank "Bank" carries up to 400 V dc stores 1000 uF
            instrument Meter "Meter" { dc voltage up to 600 V resolution 1 V accuracy 1 % of reading + 1 digits rated 600 V category 3
                resistance up to 600 ohm resolution 0.1 ohm accuracy 1 % of reading + 1 digits }
            routine Dead "Dead" { exits gone
                measure Reading "Reading" { dc voltage at Bank using Meter at most 5 V -> gone over 5 V -> gone }
            }
            """;

    private static int found(String rule, String text) {
        return Texts.findings(rule, Texts.document(text, Map.of("Mains", MAINS))).size();
    }

    /** A harmless point of its own does not hide what the procedure reads at a point of its library; what a library routine reads stands for any unit. */
    @ParameterizedTest
    @CsvSource({"'', 1", "'point Logic \"Logic\" carries up to 5 V dc', 1"})
    void should_count_the_points_that_the_procedure_reads_with_those_it_declares(String own, int times) {
        String text = """
                procedure P "P"
                uses Mains
                OWN
                do Run "Switch on" { sets Supply on then -> Press }
                check Press "Press" { live because "it flickers only while it runs" yes -> Volts no -> Volts }
                measure Volts "Volts" { ac voltage at Inlet under 200 V -> Done at least 200 V -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("OWN", own);

        assertEquals(times, found("live-tool-unfit", text));
    }

    @Test
    void should_not_count_what_only_a_routine_of_a_library_reads_where_the_unit_says_what_it_carries() {
        String text = """
                procedure P "P"
                uses Mains
                point Logic "Logic" carries up to 5 V dc
                perform Make "Make it safe" by Dead { gone -> Run }
                do Run "Switch on" { sets Supply on then -> Press }
                check Press "Press" { live because "it flickers only while it runs" yes -> Done no -> Done }
                conclude Done "Done" { finds nothing }
                """;

        assertEquals(0, found("live-tool-unfit", text));
        assertEquals(1, found("live-tool-unfit", text.replace("point Logic \"Logic\" carries up to 5 V dc", "")));
    }

    @Test
    void should_miss_the_condition_of_a_charge_at_a_point_of_a_library_too() {
        String text = """
                procedure P "P"
                uses Mains
                measure Ohms "Ohms" { resistance at Bank using Meter at most 5 ohm -> Done over 5 ohm -> Done }
                conclude Done "Done" { finds nothing }
                """;

        assertEquals(1, found("stored-charge-unsaid", text));
    }

    private static String proof(String reading, String outcomes) {
        return """
                procedure P "P"
                condition Supply { off, on } live when on starts off
                condition Charge { present, absent } charged when present becomes present when Supply on proved at Bulk starts present
                point Bulk "C1" carries up to 400 V dc
                point Rail "C2" carries up to 400 V dc
                point Minus "C1, minus" carries up to 0.1 V dc
                measure Volts "Volts" { dc voltage READING OUTCOMES }
                conclude Done "Done" { finds nothing }
                """.replace("READING", reading).replace("OUTCOMES", outcomes);
    }

    /** Between two points that are both charged a meter shows nothing. */
    @ParameterizedTest
    @CsvSource({"at Bulk, 0", "at Bulk against Minus, 0", "at Bulk against Rail, 1", "at Bulk against Bulk, 1"})
    void should_refuse_a_proof_against_a_point_that_may_be_charged_too(String reading, int times) {
        String text = proof(reading, "at most 5 V -> Done proves Charge absent over 5 V -> Done");

        assertEquals(times, rules("proof-elsewhere", text).size());
    }

    @ParameterizedTest
    @CsvSource({"-5 V .. 5 V, 0", "-400 V .. 5 V, 1", "-61 V .. 60 V, 1"})
    void should_refuse_a_proof_that_says_how_far_below_zero_it_goes_and_goes_too_far(String band, int times) {
        String text = proof("at Bulk", band + " -> Done proves Charge absent over 60 V -> Done under -61 V -> Done");

        assertEquals(times, rules("proof-band-open", text).size());
    }

    @Test
    void should_tell_of_a_lead_that_burns_before_one_that_is_held_too_short() {
        String text = """
                procedure P "P"
                condition Charge { present, absent } charged when present proved at Small starts present
                point Small "C1" carries up to 100 V dc stores 10 mF
                point Large "C2" carries up to 400 V dc stores 100 uF
                part Lead "Bleed lead" drains 400 ohm rated 10 W
                do Bleed "Bleed it" { handles Lead wait 1 s then -> Done }
                conclude Done "Done" { finds nothing }
                """;
        List<Finding> found = Texts.findings("bleed-lead-unfit", text);

        assertEquals(1, found.size(), found.toString());
        assertTrue(found.get(0).message().contains("takes 400 W at first"), found.get(0).message());
    }

    private static final String KETTLE = """
            procedure P "P"
            SUPPLY
            point Element "Element" CARRIES
            instrument Meter "Meter" { resistance up to 600 ohm resolution 0.1 ohm accuracy 1 % of reading
                ac voltage up to 600 V resolution 1 V accuracy 1 % of reading rated 300 V category 3 }
            measure Ohms "Ohms" { READING within -> Done outside -> Done }
            conclude Done "Done" { finds nothing }
            """;

    private static int kettle(String rule, String supply, String carries, String reading) {
        return rules(rule, KETTLE.replace("SUPPLY", supply).replace("CARRIES", carries).replace("READING", reading)).size();
    }

    /** IEC 62368-1, energy source class 1: up to 30 V ac or 60 V dc. */
    @ParameterizedTest
    @CsvSource({"carries up to 253 V ac, 1", "carries up to 31 V ac, 1", "carries up to 30 V ac, 0", "carries up to 61 V dc, 1", "carries up to 60 V dc, 0", "'', 0"})
    void should_ask_for_a_condition_that_is_live_where_a_dangerous_voltage_is(String carries, int times) {
        String ohms = "resistance at Element expects 20 ohm +/- 10 %";

        assertEquals(times, kettle("live-state-unsaid", "", carries, ohms));
        assertEquals(0, kettle("live-state-unsaid", "condition Supply { off, on } live when on", carries, ohms));
    }

    @Test
    void should_ask_for_it_too_where_the_point_is_a_librarys_and_never_for_one_that_is_not_read() {
        String text = """
                procedure P "P"
                uses Mains
                check Look "Look" { yes -> Volts no -> Done }
                measure Volts "Volts" { ac voltage at Inlet under 200 V -> Done at least 200 V -> Done }
                conclude Done "Done" { finds nothing }
                """;
        String house = MAINS.replace("live when on ", "");

        assertEquals(1, Texts.findings("live-state-unsaid", Texts.document(text, Map.of("Mains", house))).size());
        assertEquals(0, Texts.findings("live-state-unsaid", Texts.document(text.replace("yes -> Volts", "yes -> Done"), Map.of("Mains", house))).size());
        assertEquals(0, found("live-state-unsaid", text));
    }

    @ParameterizedTest
    @CsvSource({"carries up to 253 V ac isolated, 1", "carries up to 253 V ac isolated when Plug drawn, 0", "isolated, 0", "carries up to 12 V dc isolated, 0",
        "carries up to 400 V dc stores 100 uF isolated, 1", "carries up to 50 V dc stores 1 mF isolated, 1", "carries up to 50 V dc stores 10 nF isolated, 0"})
    void should_refuse_an_isolation_for_good_of_what_carries_a_dangerous_voltage(String carries, int times) {
        assertEquals(times, kettle("isolation-unfounded", "condition Plug { fitted, drawn } ends fitted", carries, "resistance at Element expects 20 ohm +/- 10 %"));
    }

    /** Between two phases of 230 V there are 400 V, more than the 300 V that the meter takes (230 V times the root of 3). */
    @ParameterizedTest
    @CsvSource({"400 V +/- 10 %, 1", "230 V +/- 10 %, 0", "at most 301 V, 1", "at most 300 V, 0"})
    void should_hold_a_limit_against_the_rating_of_the_meter_too(String limit, int times) {
        assertEquals(times, kettle("input-rating-too-low", "", "carries up to 253 V ac", "ac voltage at Element using Meter expects " + limit));
    }

    @ParameterizedTest
    @CsvSource({"carries up to 90 V dc, 1", "carries up to 90 V dc stores 10 nF, 0", "carries up to 90 V ac, 0", "carries up to 60 V dc, 0", "isolated, 0"})
    void should_ask_what_a_high_direct_voltage_leaves_behind_where_hands_or_ohms_come(String carries, int times) {
        String supply = "condition Supply { off, on } live when on ends off";
        String ohms = "resistance at Element expects 20 ohm +/- 10 %";

        assertEquals(times, kettle("stored-charge-unsaid", supply, carries, ohms));
        assertEquals(0, kettle("stored-charge-unsaid", supply, carries, "dc voltage at Element expects 20 V +/- 10 %"), "nobody reaches in");
        assertEquals(0, kettle("stored-charge-unsaid", supply + " condition Charge { present, absent } charged when present proved at Element", carries, ohms));
    }
}
