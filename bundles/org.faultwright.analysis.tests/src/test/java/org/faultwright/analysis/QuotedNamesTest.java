/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class QuotedNamesTest {
    private static final QuotedNames NAMES = new QuotedNames(Texts.document("""
            procedure LampDark "p"
            condition Supply { off, on }
            routine Prove "r" { exits dead do BleedIt "b" { then -> dead } }
            routine OpenUp "r" { exits open perform ProveIt "p" by Prove { dead -> open } }
            perform OpenFirst "o" by OpenUp { open -> EndHere }
            conclude EndHere "e" { finds nothing }
            """));

    @Test
    void should_quote_a_step_of_a_routine_within_a_routine() {
        assertEquals("A path comes to \"OpenFirst/ProveIt/BleedIt\" without a note.",
                NAMES.inMessage("A path comes to OpenFirst/ProveIt/BleedIt without a note."));
    }

    @Test
    void should_quote_a_condition_with_its_value_and_leave_what_is_quoted() {
        assertEquals("\"OpenFirst\" needs \"Supply on\", not \"Supply off\".", NAMES.inMessage("OpenFirst needs Supply on, not \"Supply off\"."));
    }
}
