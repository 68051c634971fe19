/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a reading expects is there, whether or not a point says so. */
class WhatReadingsTellTest {
    private static final String UNIT = """
            procedure P "P"
            SUPPLY
            condition Cover { fitted, removed } ends fitted
            point Rail "Rail" CARRIES
            do Lift "Lift the cover" { sets Cover removed then -> Volts }
            measure Volts "Volts" { READING within -> Ohms outside -> Ohms }
            AFTER
            do Close "Fit the cover" { sets Cover fitted then -> Done }
            conclude Done "Done" { finds nothing }
            """;
    private static final String OHMS = "measure Ohms \"Ohms\" { resistance at Rail expects 20 ohm +/- 10 % within -> Close outside -> Close }";
    private static final String SUPPLY = "condition Supply { off, on } live when on ends off";

    private static int found(String rule, String supply, String carries, String reading, String after) {
        return Texts.findings(rule, UNIT.replace("SUPPLY", supply).replace("CARRIES", carries).replace("READING", reading).replace("AFTER", after)).size();
    }

    /** IEC 62368-1, energy source class 1: up to 30 V ac or 60 V dc. */
    @ParameterizedTest
    @CsvSource({"ac voltage expects 230 V +/- 10 %, 1", "ac voltage at Rail expects 230 V +/- 10 %, 1", "dc voltage at Rail expects 67 V +/- 10 %, 1",
        "dc voltage at Rail expects 66 V +/- 10 %, 0", "dc voltage at Rail expects -325 V +/- 10 %, 1", "dc voltage at Rail expects at most 400 V, 0",
        "dc voltage at Rail expects at least 300 V, 1", "ac current expects 1 A +/- 10 %, 0"})
    void should_ask_for_a_condition_that_is_live_where_a_dangerous_voltage_is_read(String reading, int times) {
        assertEquals(times, found("live-state-unsaid", "", "", reading, OHMS));
        assertEquals(0, found("live-state-unsaid", SUPPLY, "", reading, OHMS));
    }

    @ParameterizedTest
    @CsvSource({"dc voltage at Rail expects 325 V +/- 10 %, 1", "dc voltage expects 325 V +/- 10 %, 1", "ac voltage at Rail expects 230 V +/- 10 %, 0",
        "dc voltage at Rail expects 24 V +/- 10 %, 0"})
    void should_ask_what_a_direct_voltage_that_is_read_leaves_behind(String reading, int times) {
        assertEquals(times, found("stored-charge-unsaid", SUPPLY, "", reading, OHMS));
        assertEquals(0, found("stored-charge-unsaid", SUPPLY, "", reading, "check Ohms \"Look\" { yes -> Close no -> Close }"), "nobody reaches in");
        assertEquals(0, found("stored-charge-unsaid", SUPPLY + " condition Charge { present, absent } charged when present", "", reading, OHMS));
    }

    /** A band that is called normal is what a sound unit shows, as an expected value is. */
    @ParameterizedTest
    @CsvSource({"good 300 V .. 340 V normal -> Ohms, 1", "good 300 V .. 340 V -> Ohms, 0", "good 3 V .. 5 V normal -> Ohms, 0"})
    void should_take_a_normal_band_for_what_is_expected(String band, int times) {
        String text = UNIT.replace("measure Volts \"Volts\" { READING within -> Ohms outside -> Ohms }",
                "measure Volts \"Volts\" { dc voltage at Rail " + band + " anything else -> Ohms }").replace("CARRIES", "").replace("AFTER", OHMS);
        assertEquals(times, Texts.findings("live-state-unsaid", text.replace("SUPPLY", "")).size());
        assertEquals(times, Texts.findings("stored-charge-unsaid", text.replace("SUPPLY", SUPPLY)).size());
    }

    /** Where nothing says what the point carries, the reading that is expected says it. */
    @ParameterizedTest
    @CsvSource({"'', 1", "rated 600 V, 0"})
    void should_ask_for_the_rating_of_a_meter_where_only_the_reading_tells(String rated, int times) {
        List<String> said = Texts.messages("input-rating-too-low", UNIT.replace("CARRIES", "").replace("AFTER", OHMS)
                .replace("SUPPLY", SUPPLY + " instrument Meter \"Meter\" { dc voltage up to 600 V resolution 0.1 V accuracy 1 % of reading " + rated + " }")
                .replace("READING", "dc voltage at Rail using Meter expects 320 V +/- 5 %"));

        assertEquals(times, said.stream().filter(one -> one.contains("nothing says what")).count(), said.toString());
    }

    @ParameterizedTest
    @CsvSource({"tools \"scraper\", 1", "takes 1 min, 0"})
    void should_ask_what_is_left_behind_where_tools_go_in(String with, int times) {
        assertEquals(times, found("stored-charge-unsaid", SUPPLY, "carries up to 400 V dc", "dc voltage at Rail expects 325 V +/- 10 %",
                "do Ohms \"Scrape the track\" { " + with + " then -> Close }"));
    }

    /** One of two capacitors is proved; a house that proves at the largest of any unit is taken at its word. */
    @ParameterizedTest
    @CsvSource({"stores 470 uF, 1", "stores 10 nF, 0", "'', 0"})
    void should_not_take_one_capacitor_as_proved_by_the_other(String stores, int times) {
        String supply = SUPPLY + " condition Charge { present, absent } charged when present proved at Main point Main \"C1\" carries up to 400 V dc stores 100 uF";

        assertEquals(times, found("stored-charge-unsaid", supply, "carries up to 400 V dc " + stores, "dc voltage at Rail expects 325 V +/- 10 %", OHMS));
        assertEquals(0, found("stored-charge-unsaid", supply + " condition Other { present, absent } charged when present proved at Rail",
                "carries up to 400 V dc " + stores, "dc voltage at Rail expects 325 V +/- 10 %", OHMS));
    }

    @ParameterizedTest
    @CsvSource({"ac voltage at Rail expects 230 V +/- 10 %, 1", "ac voltage at Rail expects at most 30 V, 0", "resistance at Rail expects 20 ohm +/- 10 %, 0",
        "ac voltage expects 230 V +/- 10 %, 0"})
    void should_refuse_an_isolation_for_good_where_a_dangerous_voltage_is_expected(String reading, int times) {
        assertEquals(times, found("isolation-unfounded", SUPPLY, "isolated", reading, OHMS));
    }

    /** ISO 13732-1, from memory: bare metal burns in one second from 65 degC on. */
    @ParameterizedTest
    @CsvSource({"temperature expects 180 degC +/- 10 degC, 1", "temperature expects 66 degC +/- 1 K, 1", "temperature expects at most 65 degC, 0",
        "temperature expects 20 degC .. 40 degC, 0", "temperature difference expects at most 80 K, 0", "temperature expects at most 150 degF, 1",
        "speed expects 3000 rpm +/- 5 %, 1", "pressure expects 8 bar +/- 5 %, 1", "pressure expects 1.2 bar +/- 5 %, 1", "pressure expects 1013 mbar +/- 10 %, 0", "pressure expects 0.4 bar +/- 10 %, 0",
        "pressure expects at most 8 bar, 1", "pressure expects 0.9 bar .. 8 bar, 1", "pressure expects at least 1 bar, 1", "pressure expects 900 mbar .. 1100 mbar, 0"})
    void should_ask_for_a_note_about_what_is_hot_turns_or_is_under_pressure(String reading, int times) {
        assertEquals(times, found("note-never-read", SUPPLY, "", reading, OHMS));
    }

    @ParameterizedTest
    @CsvSource({"takes 1 min, 0", "sets Cover removed, 1"})
    void should_fear_what_turns_only_in_the_open_unit(String lift, int times) {
        assertEquals(times, Texts.findings("note-never-read", UNIT.replace("SUPPLY", SUPPLY).replace("CARRIES", "").replace("sets Cover removed", lift)
                .replace("READING", "speed expects 3000 rpm +/- 5 %").replace("AFTER", OHMS)).size());
    }

    @ParameterizedTest
    @CsvSource({"carries up to 400 V dc, '', 1", "carries up to 400 V dc, rated 600 V, 0", "carries up to 60 V dc, '', 0", "'', '', 0"})
    void should_ask_for_the_rating_of_a_meter_at_a_dangerous_voltage(String carries, String rated, int times) {
        List<String> said = Texts.messages("input-rating-too-low", UNIT.replace("CARRIES", carries).replace("AFTER", OHMS)
                .replace("SUPPLY", SUPPLY + " instrument Meter \"Meter\" { dc voltage up to 600 V resolution 0.1 V accuracy 1 % of reading " + rated + " }")
                .replace("READING", "dc voltage at Rail using Meter expects at most 400 V"));

        assertEquals(times, said.stream().filter(one -> one.contains("nothing says what")).count(), said.toString());
    }
}
