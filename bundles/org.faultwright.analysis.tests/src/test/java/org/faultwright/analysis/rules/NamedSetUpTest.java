/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;

class NamedSetUpTest {
    private static final String BENCH = """
            condition Supply { off, on } live when on starts off
            condition Cover { fitted, removed } starts fitted
            """;
    private static final String DEAD = "setup dead \"Open and off\" { Supply off, Cover removed }\n";
    private static final String STEPS = "check Look \"l\" { %s yes -> End no -> End } conclude End \"e\" { finds nothing }";

    @Test
    void should_need_what_the_set_up_says() {
        List<Finding> short_ = Texts.findings("need-not-established", text(BENCH + DEAD, "unit dead"));

        assertEquals(messages(Texts.findings("need-not-established", text(BENCH, "needs Supply off, Cover removed"))), messages(short_));
        assertEquals(List.of("\"Look\" needs \"Cover removed\", but a path comes to it with \"Cover fitted\"."), messages(short_));
        assertEquals("dead", short_.get(0).at().text(), "told where the step asks for it");
    }

    @Test
    void should_take_a_set_up_from_a_library_and_add_to_it() {
        Document document = Texts.document(text("uses Bench\n", "unit dead needs Strap worn"), Map.of("Bench",
                "library Bench \"b\"\n" + BENCH + "condition Strap { off, worn } starts off\n" + DEAD));

        assertEquals(List.of("\"Look\" needs \"Cover removed\", but a path comes to it with \"Cover fitted\".",
                "\"Look\" needs \"Strap worn\", but a path comes to it with \"Strap off\"."), messages(Texts.findings("need-not-established", document)));
        assertEquals(List.of(), Texts.findings("unknown-name", document));
    }

    @Test
    void should_need_each_condition_once_in_a_routine_of_a_library_too() {
        String library = "library Bench \"b\"\n" + BENCH + DEAD + "routine Try \"r\" { exits done check Inside \"i\" { unit dead needs Cover removed yes -> done no -> done } }\n";
        Document document = Texts.document("procedure Test \"t\"\nuses Bench\nperform Try { done -> End } conclude End \"e\" { finds nothing }", Map.of("Bench", library));

        assertEquals(List.of("Cover removed", "Supply off"), document.scope().routines().get(0).steps().get(0).frame().needs().stream()
                .map(need -> need.condition() + " " + need.value()).sorted().toList());
        Document hiding = Texts.document("procedure Test \"t\"\nuses Bench\n" + DEAD + "perform Try { done -> End } conclude End \"e\" { finds nothing }", Map.of("Bench", library));
        assertEquals(1, Texts.findings("duplicate-name", hiding).size(), "one of its own would hide the one of the library, and this is told");
    }

    @Test
    void should_name_a_set_up_that_is_not_there_once() {
        assertEquals(List.of("There is no setup named \"daed\"."), all(text(BENCH + DEAD, "unit daed")));
        assertEquals(List.of("There is no setup named \"Supply\"."), all(text(BENCH, "unit Supply")));
    }

    @Test
    void should_name_what_is_wrong_in_a_set_up_once_wherever_it_is_used() {
        assertEquals(List.of("There is no condition named \"Lid\"."), all(text(BENCH + "setup dead \"d\" { Lid open }\n", "unit dead")));
        assertEquals(List.of("The set-up \"dead\" asks for \"Supply off\" together with \"Supply on\"; the two cannot both hold."),
                messages(Texts.findings("contradictory-needs", text(BENCH + "setup dead \"d\" { Supply on, Supply off }\n", "unit dead"))));
        assertEquals(List.of("\"Look\" needs \"Supply on\" together with \"Supply off\"; the two cannot both hold."),
                messages(Texts.findings("contradictory-needs", text(BENCH + DEAD, "unit dead needs Supply on"))));
        assertEquals(1, Texts.findings("contradictory-needs", text(BENCH + DEAD + "setup lit \"l\" { Supply on }\n", "unit dead, lit")).size());
    }

    @Test
    void should_answer_for_half_a_set_up_in_one_finding() {
        for (String half : List.of("setup", "setup dead", "setup dead \"d\" {", "setup dead \"d\" { Supply", "setup dead \"d\" { Supply off,")) {
            String text = text(BENCH + DEAD.replace("dead", "ready") + half + "\n", "unit ready");
            assertEquals(1, Texts.findings(text).stream().filter(finding -> finding.rule().equals("unreadable-text")).count(), half + all(text));
        }
        assertTrue(all(text(BENCH + DEAD, "unit")).size() <= 2, all(text(BENCH + DEAD, "unit")).toString());
    }

    @Test
    void should_say_that_nothing_asks_for_a_set_up() {
        assertEquals(List.of("Nothing refers to the setup \"dead\"."), messages(Texts.findings("unused-declaration", text(BENCH + DEAD, "needs Supply off, Cover removed"))));
        assertEquals(List.of(), Texts.findings("unused-declaration", text(BENCH + DEAD, "unit dead")), "its conditions are used through it");
    }

    private static String text(String declared, String needs) {
        return "procedure Test \"t\"\n" + declared + STEPS.formatted(needs);
    }

    private static List<String> messages(List<Finding> findings) {
        return findings.stream().map(Finding::message).toList();
    }

    /** Errors and warnings about names and words. */
    private static List<String> all(String text) {
        return Texts.findings(text).stream().filter(finding -> Stream.of("unknown-name", "unreadable-text").anyMatch(finding.rule()::equals))
                .map(Finding::message).toList();
    }
}
