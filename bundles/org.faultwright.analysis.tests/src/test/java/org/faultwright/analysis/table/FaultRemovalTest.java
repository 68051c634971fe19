/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.faultwright.analysis.ProposedChange;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;

class FaultRemovalTest {
    private static final String BENCH = FaultSheetTest.BENCH;
    private static final String EXAMPLES = """

            // from May
            example "Slip 12" of Dust { SeeIt dim, Lens dusty, TryLens yes ends at Wiped }
            example "Slip 14" of Cell { SeeIt dark, Volts below, TryCell yes ends at Celled }
            """;

    private static ProposedChange without(String fault, String text) {
        Procedure procedure = (Procedure) Texts.document(text);
        assertEquals(List.of(), procedure.problems());
        Fault one = procedure.faults().stream().filter(it -> it.name().text().equals(fault)).findFirst().orElseThrow();
        return FaultRemoval.of(procedure, one);
    }

    /** The text without the fault, which reads well and has every remark still. */
    private static String changed(String fault, String text) {
        String after = without(fault, text).change().orElseThrow().applied();
        assertEquals(List.of(), Texts.document(after).problems(), after);
        assertEquals(Remarks.in(text), Remarks.in(after));
        return after;
    }

    @Test
    void should_take_its_lines_out_and_what_a_conclusion_says_of_it() {
        String after = changed("Cell", BENCH);

        assertFalse(after.contains("Cell \"Cell spent\"") || after.contains("finds Cell"), after);
        assertTrue(after.contains("conclude Celled \"Cell\" { report \"Cell.\" }"), after);
        assertTrue(after.contains("    remedy WipeLens\n}\nfault Switch"), after);
        String twoLines = BENCH.replace("{ finds Cell report \"Cell.\" }", "{\n    finds Cell\n    report \"Cell.\"\n}");
        assertTrue(changed("Cell", twoLines).contains("conclude Celled \"Cell\" {\n    report \"Cell.\"\n}"));
    }

    @Test
    void should_take_it_from_among_others_with_its_comma() {
        for (String finds : List.of("Dust, Cell, Switch", "Cell, Dust, Switch", "Dust, Switch, Cell")) {
            String after = changed("Cell", BENCH.replace("finds Dust", "finds " + finds));
            assertTrue(after.contains("{ finds Dust, Switch report \"Wiped.\" }"), after);
        }
        assertTrue(changed("Cell", BENCH.replace("finds Dust", "finds Dust, // often\n        Cell")).contains("finds Dust // often"));
    }

    @Test
    void should_take_out_its_examples_and_tell_of_each() {
        String after = changed("Dust", BENCH + EXAMPLES);

        assertFalse(after.contains("Slip 12"), after);
        assertTrue(after.contains("Slip 14"), after);
        String told = String.join("\n", without("Dust", BENCH + EXAMPLES).reasons());
        assertTrue(told.contains("\"Slip 12\" goes with it") && told.contains("\"Wiped\" finds it no more"), told);
    }

    @Test
    void should_leave_alone_what_hangs_together_with_other_examples() {
        String text = BENCH + EXAMPLES.replace("ends at Celled }", "ends at Celled but \"Slip 15\" of Dust SeeIt dim, Lens dusty, TryLens yes ends at Wiped }");

        for (String fault : List.of("Dust", "Cell")) {
            ProposedChange refused = without(fault, text);
            assertTrue(refused.change().isEmpty() && refused.outcome().contains("hangs together with others"), refused.outcome());
        }
    }

    @Test
    void should_leave_alone_what_an_arrow_leads_to() {
        String text = BENCH.replaceAll("conclude Celled [^\n]*\n", "").replace("-> Celled", "-> Cell");

        ProposedChange refused = without("Cell", text);

        assertTrue(refused.change().isEmpty(), refused.toString());
        assertTrue(refused.outcome().endsWith("leads to \"Cell\". Lead it elsewhere in the text first, then take the fault out."), refused.outcome());
    }

    @Test
    void should_end_its_lines_as_the_text_does() {
        String after = changed("Dust", (BENCH + EXAMPLES).replace("\n", "\r\n"));

        assertFalse(after.replace("\r\n", "").matches("(?s).*[\r\n].*"), after);
    }
}
