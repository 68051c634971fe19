/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How a unit is left, days in the future, tolerances whose sides do not fit, and calculated values in examples and faults. */
class EndingsAndToldValuesTest {
    private static final String LID = """
            procedure P "P"
            condition Supply { off, on } live when on ends off
            condition Lid { shut, lifted } ENDING
            do Start "Start" { FIRST then -> Lift }
            do Lift "Lift the lid" { WHY sets Lid lifted then -> Next }
            do Next "Next" { LAST then -> Done }
            conclude Done "Done" { finds nothing }
            """;

    private static List<Finding> lid(String ending, String first, String why, String last) {
        return Texts.findings("ending-not-said", LID.replace("ENDING", ending).replace("FIRST", first).replace("WHY", why).replace("LAST", last));
    }

    @Test
    void should_ask_how_a_unit_must_be_left_that_is_left_otherwise_than_found() {
        assertEquals(1, lid("", "", "", "").size());
        assertEquals(0, lid("", "", "", "sets Lid shut").size());
        assertEquals(0, lid("ends lifted", "", "", "").size());
        assertEquals(0, lid("starts lifted", "", "", "").size());
        assertEquals(0, Texts.findings("ending-not-said", LID.replace("condition Lid", "condition Other").replace("WHY", "").replace("FIRST", "")
                .replace("LAST", "").replace("ENDING", "")).size(), "a name that is not known is told elsewhere");
    }

    /** An act in the words of a question changes something with every outcome. */
    @ParameterizedTest
    @CsvSource({"yes -> Next proves Copy taken no -> Next, 0", "yes -> Next proves Copy taken no -> Next proves Copy taken, 1"})
    void should_leave_alone_what_was_only_found_out(String outcomes, int times) {
        assertEquals(times, Texts.findings("ending-not-said", """
                procedure P "P"
                condition Copy { none, taken } starts none
                check Kept "Is there a copy?" { OUTCOMES }
                do Next "Next" { then -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("OUTCOMES", outcomes)).size());
    }

    @Test
    void should_ask_for_it_too_where_something_is_opened_live_and_closed_again() {
        List<Finding> found = lid("", "sets Supply on", "", "sets Lid shut, Supply off");

        assertEquals(1, found.size());
        assertTrue(found.get(0).message().contains("while Supply may be on") || found.get(0).message().contains("while \"Supply\" may be"),
                found.get(0).message());
        assertEquals(0, lid("may change live", "sets Supply on", "", "sets Lid shut, Supply off").size());
        assertEquals(0, lid("", "sets Supply on", "live because \"the fault goes with the heat\"", "sets Lid shut, Supply off").size());
        assertEquals(0, lid("ends shut", "sets Supply on", "", "sets Lid shut, Supply off").size(), "told by live-work");
    }

    @ParameterizedTest
    @CsvSource({"2026-06-01, 0", "2026-06-02, 1", "2025-12-31, 0"})
    void should_find_a_day_later_than_the_day_given(String day, int times) {
        String text = """
                procedure P "P"
                revision 1 draft dated DAY
                check Look "Look" { yes -> Done no -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("DAY", day);

        assertEquals(times, Texts.findings("day-in-the-future", Texts.document(text), Optional.of(LocalDate.of(2026, 6, 1))).size());
        assertEquals(0, Texts.findings("day-in-the-future", Texts.document(text), Optional.empty()).size(), "no day was given");
    }

    private static int limit(String rule, String kind, String limit) {
        return Texts.findings(rule, """
                procedure P "P"
                instrument Meter "Meter" { resistance up to 600 ohm resolution 0.1 ohm accuracy 0.1 % of reading
                    temperature up to 400 degC resolution 1 degC accuracy 60 degC }
                measure Volts "Volts" { KIND using Meter expects LIMIT within -> Done outside -> Done }
                conclude Done "Done" { finds nothing }
                """.replace("KIND", kind).replace("LIMIT", limit)).size();
    }

    @ParameterizedTest
    @CsvSource({"24 V +10 % -5 V, 1", "24 V +1 V -5 %, 1", "24 V +10 % -5 %, 0", "24 V +1 V -500 mV, 0", "24 V +/- 5 %, 0", "24 V +5 %, 0", "24 V +1 V, 0"})
    void should_find_a_tolerance_with_a_percentage_to_one_side_only(String limit, int times) {
        assertEquals(times, limit("tolerance-sides-differ", "dc voltage", limit));
    }

    @ParameterizedTest
    @CsvSource({"dc voltage, 24 V +/- 25 V, 1", "dc voltage, 24 V +/- 24 V, 1", "dc voltage, 24 V +/- 23 V, 0", "dc voltage, 0 V +/- 50 mV, 0",
        "temperature, 5 degC +/- 10 K, 0", "resistance, 4.7 kohm +/- 5 kohm, 1", "dc voltage, -12 V +/- 13 V, 1", "dc voltage, -12 V +/- 1 V, 0"})
    void should_find_a_tolerance_as_large_as_the_nominal_value(String kind, String limit, int times) {
        assertEquals(times, limit("tolerance-beyond-nominal", kind, limit));
    }

    /** 98 degC and 102 degC on Pt100 are 137.7467... and 139.2638... ohm (IEC 60751); nobody wrote these digits. */
    @Test
    void should_not_ask_for_the_digits_of_a_limit_computed_from_a_sensor() {
        assertEquals(0, limit("finer-than-resolution", "resistance", "98 degC on Pt100 .. 102 degC on Pt100"));
        assertEquals(1, limit("finer-than-resolution", "resistance", "137.74 ohm .. 139.2 ohm"));
    }

    /** U = 2u and u = a/sqrt(3) (JCGM 100:2008, 4.3.7 and 6.2): 60 K leave nothing under 69.3 degC when the display begins at 0 degC. */
    @ParameterizedTest
    @CsvSource({"at most 60 degC, 1", "at most 80 degC, 0", "at least 340 degC, 1", "at least 320 degC, 0"})
    void should_find_a_temperature_limit_that_no_reading_can_keep_for_certain(String limit, int times) {
        assertEquals(times, limit("instrument-cannot-decide", "temperature", limit));
    }

    @Test
    void should_tell_once_that_a_tolerance_lacks_its_unit() {
        assertEquals(1, limit("missing-unit", "dc voltage", "24 V +/- 5"));
        assertEquals(1, limit("wrong-dimension", "dc voltage", "24 V +/- 5 ohm"));
    }

    private static List<Finding> told(String value, String fault, String example) {
        return Texts.findings("calculated-otherwise", """
                procedure P "P"
                fault Weak "Weak" { shows FAULT remedy Swap }
                measure Volts "Volts" { dc voltage then -> Amps }
                measure Amps "Amps" { dc current then -> Power }
                calculate Power "Power" { value VALUE within -> Done below -> Swap above -> Swap }
                do Swap "Swap" { then -> Done }
                conclude Done "Done" { finds Weak }
                example "E" { EXAMPLE }
                """.replace("VALUE", value).replace("FAULT", fault).replace("EXAMPLE", example));
    }

    /** P = U I; 24.0 V (23.95 to 24.05) and 1.65 A (1.645 to 1.655) are 39.4 W to 39.8 W, worked out by hand. */
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {"Volts 24.0 V, Amps 1.65 A, Power 39.6 W;0", "Volts 24.0 V, Amps 1.65 A, Power 40 W;0",
        "Volts 24.0 V, Amps 1.65 A, Power 39.9 W;1", "Volts 24.0 V, Amps 1.65 A, Power 45 W;1", "Volts 24.0 V, Amps 165 mA, Power 3.96 W;0",
        "Volts 24.0 V, Amps 1.65 A, Power within;0", "Volts 24.0 V, Amps 1.65 A, Power below;1", "Volts 24.0 V, Amps 1.5 A, Power within;1",
        "Volts 24.0 V, Amps 1.5 A, Power below;0", "Volts 24 V, Amps 1.5 A, Power within;1", "Volts 24 V, Power 45 W;0", "Amps OL, Volts 24 V, Power 45 W;0",
        "Volts 5 ohm, Amps 1 A, Power 45 W;0", "Volts 24.0 V, Volts 12.0 V, Amps 1 A, Power 45 W;0", "Volts 20 V, Amps 1.9 A, Power within;0"})
    void should_hold_a_calculated_value_against_its_own_readings(String shows, int times) {
        assertEquals(times, told("Volts * Amps expects 40 W +/- 5 %", "Power below", shows).size());
        assertEquals(times, told("Volts * Amps expects 40 W +/- 5 %", shows, "Power within").size(), "in a fault");
    }

    @Test
    void should_leave_alone_what_cannot_be_worked_out() {
        assertEquals(0, told("Volts / Amps expects 40 ohm +/- 5 %", "Power below", "Volts 24 V, Amps 0 A, Power 40 ohm").size());
        assertEquals(0, told("Volts * Nothing expects 40 W", "Power below", "Volts 24 V, Amps 1 A, Power 40 W").size());
        assertEquals(0, told("Power + Volts expects 40 W", "Power below", "Volts 24 V, Amps 1 A, Power 40 W").size());
    }

    @Test
    void should_say_what_it_comes_to() {
        String message = told("Volts * Amps expects 40 W +/- 5 %", "Power below", "Volts 24.0 V, Amps 1.65 A, Power 45 W").get(0).message();

        assertEquals("\"Power\" is said to be 45 W, and from \"Amps\" 1.65 A and \"Volts\" 24.0 V it is 39.6 W.", message);
    }
}
