/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

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
}
