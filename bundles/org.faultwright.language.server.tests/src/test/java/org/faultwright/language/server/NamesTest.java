/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.faultwright.procedure.ThingKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NamesTest {
    @Test
    void should_rename_arrows_faults_and_examples_with_the_step() {
        Cursor cursor = Cursor.at("RailVoltage");

        String renamed = Renaming.rename(cursor.text(), cursor.offset(), "MeasureRail").applied();

        assertEquals(Cursor.LAMP.replace("RailVoltage", "MeasureRail"), renamed);
        assertEquals(cursor.text().findings().stream().map(finding -> finding.rule()).toList(),
                Cursor.open(renamed).findings().stream().map(finding -> finding.rule()).toList());
    }

    @Test
    void should_say_which_routine_a_step_follows_when_one_of_them_gets_another_name() {
        String text = """
                procedure P "p"
                routine Try "t" { exits good, bad check Look "l" { yes -> good no -> bad } }
                perform Try "again" { good -> End bad -> Again }
                perform Again by Try { good -> End bad -> End }
                conclude End "e" { finds nothing }
                """;

        assertEquals(text.replace("perform Try \"again\" {", "perform Retry \"again\" by Try {"), renamed(text, text.indexOf("Try \"again"), "Retry"));
        assertEquals(text.replace("routine Try", "routine Prove").replace("by Try", "by Prove").replace("\"again\" {", "\"again\" by Prove {"),
                renamed(text, text.indexOf("Try \"t"), "Prove"));
    }

    @Test
    void should_rename_a_set_up_with_the_steps_that_ask_for_it_and_leave_its_conditions() {
        String text = """
                procedure P "p"
                condition Supply { off, on }
                setup dead "d" { Supply off }
                check Look "l" { unit dead needs Supply off yes -> End no -> End }
                conclude End "e" { finds nothing }
                """;

        assertEquals(text.replace("dead", "quiet"), renamed(text, text.indexOf("dead"), "quiet"));
        assertEquals(text.replace("Supply", "Mains"), renamed(text, text.indexOf("Supply"), "Mains"));
        assertEquals(text.replace("off", "out"), renamed(text, text.indexOf("off"), "out"));
    }

    private static String renamed(String text, int offset, String name) {
        OpenText open = Cursor.open(text);
        String renamed = Renaming.rename(open, offset, name).applied();
        assertEquals(open.findings().stream().map(finding -> finding.rule()).toList(), Cursor.open(renamed).findings().stream().map(finding -> finding.rule()).toList());
        return renamed;
    }

    @ParameterizedTest
    @ValueSource(strings = {"measure", "two words", "9lives", ""})
    void should_refuse_what_cannot_be_a_name(String name) {
        Cursor cursor = Cursor.at("RailVoltage");

        assertTrue(Renaming.refusal(cursor.text(), cursor.offset(), name).isPresent());
        assertThrows(IllegalArgumentException.class, () -> Renaming.rename(cursor.text(), cursor.offset(), name));
    }

    @Test
    void should_say_that_there_is_no_name_inside_a_quoted_text() {
        Cursor cursor = Cursor.at("Does it light?");

        assertTrue(Renaming.refusal(cursor.text(), cursor.offset(), "Other").orElseThrow().contains("no name"));
    }

    @Test
    void should_know_where_a_name_is_declared() {
        Cursor cursor = Cursor.at("dark  -> RailVoltage".substring(9));

        NameInText name = cursor.text().nameAt(cursor.offset()).orElseThrow();

        assertEquals(Cursor.LAMP.indexOf("measure RailVoltage") + "measure ".length(),
                name.declared().orElseThrow().at().offset());
        assertEquals(4, name.uses().size());
    }

    @Test
    void should_tell_what_a_change_of_a_step_touches() {
        Cursor cursor = Cursor.at("expects 24 V");

        ChangeImpact touched = ChangeImpact.at(cursor.text(), cursor.offset()).orElseThrow();

        assertEquals("RailVoltage", touched.step().name().text());
        assertEquals(1, touched.faults().size());
        assertEquals(1, touched.examples().size());
        assertEquals("SeeIt", touched.comesFrom().get(0).name().text());
        assertFalse(touched.way().isEmpty());
    }

    @Test
    void should_touch_nothing_outside_of_a_step() {
        Cursor cursor = Cursor.at("cases 3");

        assertTrue(ChangeImpact.at(cursor.text(), cursor.offset()).isEmpty());
    }

    // ---- an arrow to a fault

    private static final String ARROW = Cursor.LAMP.replace("    conclude Found \"Lamp blown\" { finds Blown report \"New lamp.\" }\n", "")
            .replace("conclude Found \"Lamp blown\" { finds Blown report \"New lamp.\" }\n", "").replace("yes -> Found", "yes -> Blown")
            .replace("ends at Found", "ends at Blown").replace("remedy Replace\n", "remedy Replace\n    report \"New lamp.\"\n");

    @ParameterizedTest
    @ValueSource(strings = {"fault Bl|own", "yes -> Bl|own", "ends at Bl|own"})
    void should_rename_arrows_and_ends_with_the_fault(String place) {
        Cursor cursor = Cursor.in(ARROW.replace(place.replace("|", ""), place));

        NameInText name = cursor.text().nameAt(cursor.offset()).orElseThrow();
        String renamed = Renaming.rename(cursor.text(), cursor.offset(), "Burnt").applied();

        assertEquals(ARROW.indexOf("fault Blown") + "fault ".length(), name.declared().orElseThrow().at().offset());
        assertEquals(ARROW.replace("Blown", "Burnt").replace("\"Burnt\"", "\"Blown\""), renamed);
        assertEquals(cursor.text().findings().stream().map(finding -> finding.rule()).toList(),
                Cursor.open(renamed).findings().stream().map(finding -> finding.rule()).toList());
    }

    /** The arrow would lead to the step, and the fault be found no more. */
    @ParameterizedTest
    @ValueSource(strings = {"fault Bl|own; Proof; step", "yes -> Bl|own; Replace; step", "check Pro|of; Blown; fault"})
    void should_not_give_a_fault_and_a_step_one_name(String row) {
        String[] cells = row.split("; ");
        Cursor cursor = Cursor.in(ARROW.replace(cells[0].replace("|", ""), cells[0]));

        assertEquals("There is a " + cells[2] + " \"" + cells[1] + "\" already: an arrow to that name could mean either.",
                Renaming.refusal(cursor.text(), cursor.offset(), cells[1]).orElseThrow());
    }

    /** Where an arrow leads to a fault, it is the fault that is renamed, and two faults may not share a name. */
    @ParameterizedTest
    @ValueSource(strings = {"fault Bl|own", "yes -> Bl|own"})
    void should_not_give_two_faults_one_name(String place) {
        String two = ARROW.replace("fault Blown", "fault Loose \"Lamp loose\" { cases 1 shows SeeIt no report \"Seated.\" }\nfault Blown");
        Cursor cursor = Cursor.in(two.replace(place.replace("|", ""), place));

        assertEquals(ThingKind.FAULT, cursor.text().nameAt(cursor.offset()).orElseThrow().kind());
        assertEquals("There is a fault \"Loose\" already.", Renaming.refusal(cursor.text(), cursor.offset(), "Loose").orElseThrow());
    }

    @Test
    void should_tell_what_leads_to_a_fault() {
        Cursor cursor = Cursor.in(ARROW.replace("cases 3", "ca|ses 3"));

        ChangeImpact touched = ChangeImpact.at(cursor.text(), cursor.offset()).orElseThrow();

        assertEquals("Blown", touched.step().name().text());
        assertEquals("Proof", touched.comesFrom().get(0).name().text());
        assertEquals(1, touched.examples().size());
    }

    @Test
    void should_explain_an_arrow_to_a_fault() {
        Cursor cursor = Cursor.in(ARROW.replace("yes -> Blown", "yes -> Bl|own"));

        String said = Explanations.at(cursor.text(), cursor.offset()).orElseThrow().markdown();

        assertTrue(said.contains("Lamp blown") && said.contains("Report: New lamp"), said);
    }
}
