/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;

class RepairRulesTest {
    private static final String HEAD = """
            procedure P "p"
            complaints "dead"
            part Fuse "Fuse"
            fault Blown "Fuse blown" { remedy Swap }
            """;
    private static final String ENDS = "conclude Found \"f\" { finds Blown } conclude Nothing \"n\" { finds nothing }\n";

    @Test
    void should_want_the_complaint_confirmed_before_a_repair_a_wipe_or_a_part() {
        for (String does : List.of("repairs", "erases \"settings\"", "handles Fuse")) {
            String act = "do Do \"d\" { " + does + " then -> Nothing }" + ENDS;
            assertEquals(List.of("A path comes to \"Do\" without a step that confirms the complaint."),
                    Texts.messages("complaint-not-confirmed", HEAD + act), does);
            assertEquals(List.of(), Texts.messages("complaint-not-confirmed",
                    HEAD + "check See \"s\" { confirms complaint yes -> Do no -> Nothing }" + act), does);
        }
        assertEquals(List.of(), Texts.messages("complaint-not-confirmed", HEAD + "do On \"o\" { then -> Nothing }" + ENDS));
    }

    @Test
    void should_report_only_the_first_of_several_on_a_path() {
        assertEquals(List.of("A path comes to \"Swap\" without a step that confirms the complaint."),
                Texts.messages("complaint-not-confirmed", HEAD + "do Swap \"s\" { then -> Again }"
                        + "do Again \"a\" { handles Fuse then -> Found }" + ENDS));
    }

    @Test
    void should_want_the_complaint_confirmed_before_a_fault_is_found_without_any_act() {
        assertEquals(List.of("A path comes to \"Found\" without a step that confirms the complaint."),
                Texts.messages("complaint-not-confirmed", HEAD + "check Fuses \"f\" { yes -> Found no -> Nothing }" + ENDS));
    }

    @Test
    void should_not_take_the_changing_act_itself_for_a_confirmation() {
        assertEquals(1, Texts.messages("complaint-not-confirmed",
                HEAD + "do Swap \"s\" { confirms complaint handles Fuse then -> Nothing }" + ENDS).size());
    }

    @Test
    void should_leave_a_service_without_complaints_or_faults_alone() {
        assertEquals(List.of(), Texts.messages("complaint-not-confirmed",
                "procedure P \"p\" part Fuse \"f\" do A \"a\" { handles Fuse then -> B } conclude B \"b\" { finds nothing }"));
    }

    @Test
    void should_propose_the_first_step_where_it_is_one_that_looks() {
        String text = HEAD + "check See \"s\" { yes -> Swap no -> Nothing } do Swap \"s\" { then -> Found }" + ENDS;
        Finding found = Texts.findings("complaint-not-confirmed", text).get(0);
        assertEquals(List.of(), Texts.findings("complaint-not-confirmed", found.fixes().get(0).applied()));
        assertTrue(Texts.findings("complaint-not-confirmed", HEAD + "do Swap \"s\" { then -> Found }" + ENDS).get(0).fixes().isEmpty());
    }

    @Test
    void should_want_a_repair_verified_before_a_fault_is_found() {
        String swap = HEAD + "do Swap \"s\" { then -> Try }";
        String tried = "check Try \"t\" { %s yes -> Found no -> Swap at most 2 times, else Nothing }";
        Finding found = Texts.findings("repair-not-verified", swap + tried.formatted("") + ENDS).get(0);
        assertEquals("After \"Swap\" a path comes to \"Found\" without a step that verifies the repair.", found.message());
        assertEquals("[Swap (done), Try (yes), Found]", found.path().toString());
        assertEquals("Let \"Try\" verify the repair", found.fixes().get(0).title());
        assertEquals(List.of(), Texts.findings("repair-not-verified", found.fixes().get(0).applied()));
        assertEquals(List.of(), Texts.findings("repair-not-verified", swap + tried.formatted("verifies repair") + ENDS));
    }

    /** Verified once, repaired again, and then nobody looks. */
    @Test
    void should_want_a_second_repair_verified_too() {
        Finding found = Texts.findings("repair-not-verified", HEAD + """
                check See "s" { yes -> Swap no -> Nothing }
                do Swap "s" { then -> Try }
                check Try "t" { verifies repair yes -> Found no -> More }
                do More "m" { repairs then -> Found }
                """ + ENDS).get(0);
        assertEquals("More", found.at().text());
        assertEquals("[See (yes), Swap (done), Try (no), More (done), Found]", found.path().toString());
    }

    @Test
    void should_let_a_repair_end_unverified_where_no_fault_is_found() {
        assertEquals(List.of(), Texts.messages("repair-not-verified", HEAD + "do Swap \"s\" { then -> Nothing }" + ENDS));
    }

    @Test
    void should_take_a_routine_that_verifies_inside_for_a_verification() {
        String text = HEAD + """
                routine TryIt "t" { exits good, bad check Look "l" { %s yes -> good no -> bad } }
                do Swap "s" { then -> Try }
                perform Try "t" by TryIt { good -> Found bad -> Nothing }
                """ + ENDS;
        assertEquals(1, Texts.messages("repair-not-verified", text.formatted("")).size());
        assertEquals(List.of(), Texts.messages("repair-not-verified", text.formatted("verifies repair")));
    }

    @Test
    void should_want_every_conclusion_to_say_what_was_found() {
        assertEquals(List.of(), Texts.messages("conclusion-without-finding", HEAD + ENDS + "conclude On \"o\" { refers to \"x\" }"));
        Finding found = Texts.findings("conclusion-without-finding", HEAD + ENDS + "conclude On \"o\" {\n}\n").get(0);
        assertEquals("\"On\" does not say what was found.", found.message());
        assertTrue(found.fixes().get(0).applied().contains("conclude On \"o\" {\n    finds nothing\n}"));
    }
}
