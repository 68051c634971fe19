/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines put into a step that stands nowhere in the text. */
class FrameLineTest {
    private static final String TEXT = """
            procedure P "p"
            fault Worn "Worn" { shows See dark remedy Mend report "New brush." }
            check See "?" { light normal -> Fine dark -> Mend }
            do Mend "Mend" { then -> Tried }
            check Tried "Does it run?" { verifies repair good -> Worn bad -> Refer }
            conclude Fine "Fine" { finds nothing }
            conclude Refer "Referred" { refers to "Bench" }""";

    private static Step end(String text) {
        Procedure procedure = (Procedure) Texts.document(text, Map.of());
        return procedure.step(new Name("Worn", procedure.at())).orElseThrow();
    }

    private static List<String> rules(String text) {
        return Texts.findings(text).stream().map(Finding::rule).sorted().toList();
    }

    /** Under the same name, so that all arrows stay, and not as the first step. */
    @ParameterizedTest
    @ValueSource(strings = {"", "\n", "\n\n// the end\n"})
    void should_write_the_conclusion_of_a_fault_out_where_it_has_to_say_something(String end) {
        String text = TEXT + end;
        String fixed = FrameLine.added("Add a hint", end(text), "hint \"Keep the old brush.\"").applied();

        assertEquals("Keep the old brush.", end(fixed).frame().hint().orElseThrow().value());
        assertEquals("New brush.", ((Step.Conclude) end(fixed)).report().orElseThrow().value());
        assertFalse(end(fixed).isUnderstood());
        assertEquals("See", ((Procedure) Texts.document(fixed, Map.of())).first().orElseThrow().name().text());
        assertEquals(rules(text), rules(fixed));
    }
}
