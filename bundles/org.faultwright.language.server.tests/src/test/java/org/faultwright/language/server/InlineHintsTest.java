/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What an editor shows within a line says where a step leads that does not say it itself. */
class InlineHintsTest {
    private static final String TEXT = """
            procedure P "p"
            otherwise Refer
            measure Volts "V" {
                dc voltage
                expects 5 V +/- 5 %
                below -> Fine
            }
            do Mend "Mend it" { takes 1 min }
            check Good "Good?" { yes -> Fine no -> Refer }
            conclude Fine { finds nothing }
            conclude Refer "Refer it" { refers to "Bench" }
            """;

    private static List<String> hints(String text) {
        OpenText open = new EditingServices().update("P.procedure", text);
        return InlineHints.between(open, 0, text.length()).stream().map(hint -> text.substring(0, hint.offset()).lines().reduce((one, next) -> next).orElse("").strip()
                + " | " + hint.text()).toList();
    }

    @Test
    void should_show_behind_the_last_word_where_a_step_runs_on() {
        assertTrue(hints(TEXT).contains("below -> Fine | within -> Mend  Mend it"), hints(TEXT).toString());
        assertTrue(hints(TEXT).contains("do Mend \"Mend it\" { takes 1 min | then -> Good  Good?"), hints(TEXT).toString());
    }

    @Test
    void should_show_no_such_thing_where_it_is_written_or_leads_nowhere() {
        String written = TEXT.replace("below -> Fine", "below -> Fine within -> Mend").replace("1 min }", "1 min then -> Good }");

        assertEquals(0, hints(written).stream().filter(hint -> hint.contains("| within ->") || hint.contains("| then ->")).count());
        assertEquals(0, hints(TEXT.replace("check Good", "conclude End { finds nothing } check Good")).stream().filter(hint -> hint.contains("| then ->")).count());
    }
}
