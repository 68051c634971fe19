/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;

class OutcomeUntriedTest {
    @Test
    void should_count_one_as_one() {
        String text = "procedure P \"p\" check Look \"a\" { yes -> X no -> X } conclude X \"x\" { finds nothing }";

        assertEquals(List.of("No example is given for 2 outcomes and 1 conclusion; not tried: \"X\", \"Look\" yes and \"Look\" no."), messages(text));
        assertEquals(List.of("The one example takes 1 of 2 outcomes and 1 of 1 conclusion; not tried: \"Look\" no."),
                messages(text + " example \"e\" { Look yes ends at X }"));
    }

    /** It leads to the same end by the same words wherever the routine is followed. */
    @Test
    void should_ask_once_for_an_exit_that_no_arrow_names() {
        String text = """
                procedure P "p"
                otherwise Elsewhere
                routine Try "t" { exits good normal, bad check Look "l" { yes -> good no -> bad } }
                perform Try { good -> Other }
                perform Other by Try { good -> Fine }
                conclude Fine "f" { finds nothing }
                conclude Elsewhere "e" { refers to "the bench" }
                """;

        assertEquals(List.of("The one example takes 2 of 3 outcomes and 1 of 2 conclusions; not tried: \"Elsewhere\" and \"Try\" bad."),
                messages(text + "example \"e\" { Try good, Other good ends at Fine }"));
        assertEquals(List.of(), messages(text + "example \"e\" { Try good, Other good ends at Fine but Other bad ends at Elsewhere }"));
        String named = text.replace("{ good -> Fine }", "{ good -> Fine bad -> Elsewhere }");
        assertEquals(List.of("The 2 examples take 3 of 4 outcomes and 2 of 2 conclusions; not tried: \"Try\" bad."),
                messages(named + "example \"e\" { Try good, Other good ends at Fine but Other bad ends at Elsewhere }"));
    }

    private static List<String> messages(String text) {
        return Texts.findings(text).stream().filter(finding -> finding.rule().equals("outcome-untried")).map(Finding::message).toList();
    }
}
