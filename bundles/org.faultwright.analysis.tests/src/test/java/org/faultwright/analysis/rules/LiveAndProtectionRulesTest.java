/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
}
