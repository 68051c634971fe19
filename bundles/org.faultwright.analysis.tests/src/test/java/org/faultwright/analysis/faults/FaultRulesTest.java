/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** More than the pages show: what the rules about faults say of each case, and where they keep silent. */
class FaultRulesTest {
    private static final String TIMER = """
            procedure Timer "Timer does not switch off"
            fault Relay "Relay stuck" { cases 3 shows See runs, Click no remedy Change }
            fault Sensor "Sensor open" { cases 1 shows See runs, Click yes, Warm no }
            fault Cold "Sensor slow" { cases 1 shows See runs, Click yes, Warm yes }
            check See "Runs on?" { confirms complaint takes 1 min runs -> Click stops -> Fine }
            check Click "Click?" { takes 1 min yes -> Warm no -> Change }
            check Warm "Warm?" { takes 1 min yes -> SensorBad no -> SensorBad }
            do Change "Change" { takes 5 min then -> Try }
            check Try "Off?" { verifies repair takes 1 min yes -> Changed no -> Passed }
            conclude Changed "Changed" { finds Relay }
            conclude SensorBad "Sensor" { finds Sensor, Cold refers to "x" }
            conclude Passed "Passed" { refers to "x" }
            conclude Fine "Fine" { finds nothing }
            """;

    /** An empty message stands for no finding at all. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            fault-misses-conclusion | Click no remedy | Click no 90 % or yes 10 %, Warm no remedy | In 10 % of its cases "Relay" ends at "SensorBad", which does not find it, by outcomes that the table gives it.
            fault-misses-conclusion | Click no remedy | Click no or yes, Warm no remedy | In some of its cases "Relay" ends at "SensorBad", which does not find it, by outcomes that the table gives it.
            fault-misses-conclusion | Click no remedy | Click yes remedy | "Relay" never comes to "Changed": it shows "yes" at "Click", which leads to "Warm".
            fault-misses-conclusion | See runs, Click no remedy | See runs remedy | ``
            fault-misses-conclusion | no -> Change }  | no -> Chagne } | "Relay" never comes to "Changed": no path leads there.
            fault-misses-conclusion | finds Relay | refers to "y" | ``
            fault-never-concluded   | finds Relay | refers to "y" | No conclusion finds \"Relay\".
            remedy-missing          | Click no remedy Change | Click no | "Relay" is found at "Changed" and has no remedy.
            remedy-missing          | finds Relay | finds Relay refers to "x" | ``
            remedy-not-done         | no -> Change }  | no -> Changed } | "Relay" comes to "Changed" without its remedy "Change" being done.
            remedy-not-done         | no -> Change }  | no -> Ask } check Ask "Hot?" { takes 1 min yes -> Changed no -> Changed } | \"Relay\" comes to \"Changed\" without its remedy \"Change\" being done.
            remedy-not-done         | stops -> Fine } | stops -> Changed } | A path comes to "Changed", which finds "Relay", without "Change" being done.
            remedy-not-done         | stops -> Fine } | stops -> SensorBad } | ``
            fault-misses-conclusion | Click no remedy | Click no, Try no remedy | "Relay" never comes to "Changed": it shows "no" at "Try", which leads to "Passed".
            remedy-repairs-nothing       | remedy Change } | remedy Change, Try } | "Try", the remedy of "Relay", repairs nothing: it only asks or concludes.
            complaint-not-confirmed | remedy Change }  | remedy See } | ``
            unused-reading          | no -> Passed }\\nyes -> SensorBad no -> SensorBad | no -> Changed }\\nyes -> SensorBad no -> Passed | Every outcome of "Try" leads to "Changed", and nothing computes with it.
            cases-missing    | cases 1 shows See runs, Click yes, Warm no | shows See runs, Click yes, Warm no | "Sensor" has no cases and counts as 1 beside faults that have them.
            signature-shares-not-100 | Click no remedy | Click no 60 % or yes 40 % remedy | ``
            signature-shares-not-100 | Click no remedy | Click no 100 % or yes remedy | The shares given for "Click" of "Relay" come to 100 % and leave nothing for the outcome without one.
            ambiguity-group         | Warm yes }      | Warm no } | ``
            ambiguity-group         | Warm yes }\\nSensor, Cold refers | Warm no }\\nSensor refers | No step that is asked tells "Sensor" and "Cold" apart.
            outcome-no-fault-explains | no -> Change } | no -> Change twice -> Change } | No fault that comes to "Click" shows "twice" there, and yet it leads on to "Change".
            outcome-no-fault-explains | no -> Change } | no -> Change twice -> Passed } | ``
            outcome-no-fault-explains | no -> Change } | no -> Change twice -> Change } fault Odd "Odd" { cases 1 } | ``
            outcome-already-known   | Warm yes }      | Warm no } | Every fault still possible at "Warm" shows "no" there.
            outcome-already-known   | Warm yes }\\nyes -> SensorBad no | Warm no }\\nyes -> Passed no | ``
            outcome-no-fault-explains | Warm yes }    | Warm no } | ``
            outcome-already-known   | yes -> Warm no  | yes -> SensorBad no | ``
            step-tells-nothing      | Warm no }\\nWarm yes } | Warm no or yes }\\nWarm yes or no } | Whatever "Warm" shows, the same faults remain possible wherever it is asked.
            step-tells-nothing      | Warm no }\\nWarm yes } | Warm no or yes }\\nWarm yes } | ``
            missing-time            | takes 5 min     | | One step states no time: "Change".
            missing-time            | finds nothing } | finds nothing takes 1 min } | ``
            """)
    void should_say_of_each_case(String rule, String written, String instead, String message) {
        String text = TIMER;
        String[] old = written.split("\\\\n");
        String[] changed = (instead == null ? "" : instead).split("\\\\n");
        for (int i = 0; i < old.length; i++) {
            text = text.replace(old[i], changed[i]);
        }

        assertEquals(message.isEmpty() ? List.of() : List.of(message), Texts.messages(rule, text));
    }

    @Test
    void should_name_the_step_that_would_tell_a_group_apart() {
        String text = TIMER.replace("yes -> Warm no", "yes -> SensorBad no").replace("Sensor, Cold refers", "Sensor refers")
                .replace("Click yes, Warm no", "Click yes, Warm no, Smell yes");
        List<Finding> found = Texts.findings("ambiguity-group", text);

        assertEquals(1, found.size());
        assertEquals("Warm would: let the steps lead there.", found.get(0).advice());
    }

    @Test
    void should_say_where_the_table_is_silent_about_a_group() {
        String text = TIMER.replace("Click yes, Warm yes", "Click yes").replace("Sensor, Cold refers", "Sensor refers");

        assertEquals("Say what all of them show at \"Warm\", add a step that tells them apart, or one conclusion that finds them"
                + " together.", Texts.findings("ambiguity-group", text).get(0).advice());
    }

    /** A step that comes once before and once after a repair tells something after it. */
    @Test
    void should_keep_silent_on_what_judges_a_repair() {
        for (String rule : List.of("outcome-already-known", "step-tells-nothing", "outcome-no-fault-explains", "remedy-not-done")) {
            assertEquals(List.of(), Texts.messages(rule, TIMER), rule);
        }
    }

    @Test
    void should_show_the_path_to_where_tree_and_table_part() {
        List<Finding> found = Texts.findings("fault-misses-conclusion", TIMER.replace("Click no remedy", "Click yes remedy"));

        assertEquals("[See (runs), Click (yes), Warm]", found.get(0).path().toString());
    }
}
