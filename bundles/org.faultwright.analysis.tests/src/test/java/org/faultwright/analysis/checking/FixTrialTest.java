/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.SourceRange;
import org.junit.jupiter.api.Test;

/** What is tried before it is offered. */
class FixTrialTest {
    private static final String TEXT = """
            procedure P "P"
            check Look { good -> Fine bad -> Broken }
            conclude Fine "Fine" { finds nothing }
            conclude Broken "Broken" { refers to "the senior technician" }
            """;
    private final FixTrial trial = new FixTrial(text -> Texts.document(text.name(), text.content()), new Checker());
    private final List<Finding> found = Texts.findings(TEXT);

    private Finding title() {
        return found.stream().filter(finding -> finding.rule().equals("missing-title")).findFirst().orElseThrow();
    }

    private SourceRange words(String words) {
        return new SourceRange(title().at().source(), TEXT.indexOf(words), words.length());
    }

    @Test
    void should_offer_a_fix_that_removes_its_finding_and_brings_none() {
        assertEquals(1, trial.holding(title(), found).size());
    }

    @Test
    void should_not_offer_a_fix_that_leaves_its_finding() {
        Fix elsewhere = Fix.replacing("Write all right", words("\"Fine\""), "\"All right\"");

        assertFalse(trial.holds(title(), elsewhere, found));
    }

    @Test
    void should_not_offer_a_fix_that_removes_its_finding_and_brings_another() {
        Fix wrong = Fix.replacing("Lead nowhere", words("Look { good -> Fine"), "Look \"Look\" { good -> Nowhere");

        assertTrue(trial.added(title(), wrong, found).stream().anyMatch(one -> one.rule().equals("unknown-name")));
        assertFalse(trial.holds(title(), wrong, found));
    }

    @Test
    void should_know_a_finding_again_whose_place_has_moved() {
        Fix longer = Fix.replacing("Say more", words("Look {"), "Look \"Look at the unit from every side\" {\n\n\n");

        assertTrue(trial.holds(title(), longer, found), trial.added(title(), longer, found).toString());
    }

    @Test
    void should_not_offer_a_fix_that_makes_the_text_unreadable() {
        Fix broken = Fix.replacing("Break it", words("Look {"), "Look \"Look\" { {");

        assertFalse(trial.holds(title(), broken, found));
    }

    @Test
    void should_leave_out_what_it_was_not_given_time_to_try() {
        assertEquals(List.of(), trial.tried(found, 0).stream().flatMap(finding -> finding.fixes().stream()).toList());
    }
}
