/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProposalsTest {
    @ParameterizedTest
    @CsvSource(delimiter = ';', value = {
        "dark  -> RailVoltage; dark -> Rail; RailVoltage",
        "within  -> Replace; within -> Rep; Replace",
        "at Rail using; at Ra; Rail",
        "using HandMeter; using Han; HandMeter",
        "finds Blown; finds Bl; Blown",
        "yes -> Found; yes -> Bl; Blown",
    })
    void should_propose_the_name_that_fits_the_place(String words, String typed, String expected) {
        Cursor cursor = Cursor.after(words, typed);

        List<String> labels = labels(cursor);

        assertTrue(labels.contains(expected), () -> typed + " got " + labels);
    }

    @Test
    void should_write_a_whole_measurement_with_blanks_in_reading_order() {
        Cursor cursor = Cursor.after("begin at SeeIt\n", "begin at SeeIt\n\nmeas");

        Proposal whole = Proposals.at(cursor.text(), cursor.offset()).stream()
                .filter(one -> one.kind().equals("measure")).findFirst().orElseThrow();

        assertTrue(whole.insert().contains("${1:"), whole.insert());
        assertTrue(whole.insert().contains("->"), whole.insert());
        assertFalse(whole.plainInsert().contains("${"), whole.plainInsert());
        assertEquals("meas", cursor.text().content().substring(whole.from(), whole.to()));
    }

    @Test
    void should_not_throw_at_any_place_of_a_text() {
        OpenText text = Cursor.open(Cursor.LAMP);

        for (int offset = 0; offset <= text.content().length(); offset += 7) {
            for (Proposal one : Proposals.at(text, offset)) {
                assertTrue(one.from() <= one.to() && one.to() <= text.content().length(), one.toString());
            }
        }
    }

    @Test
    void should_propose_conditions_and_their_values_in_a_set_up_and_set_ups_for_the_unit() {
        String bench = "procedure P \"p\"\ncondition Supply { off, on }\ncondition Cover { fitted, removed }\nsetup dead \"d\" { Supply off }\n";
        assertEquals(List.of("Supply", "Cover"), at(bench + "setup open \"o\" { "));
        assertEquals(List.of("off", "on"), at(bench + "setup open \"o\" { Supply "));
        assertEquals(List.of("Supply", "Cover"), at(bench + "setup open \"o\" { Supply off, "));
        assertEquals(List.of("fitted", "removed"), at(bench + "setup open \"o\" { Supply off, Cover "));
        assertEquals(List.of("dead"), at(bench + "check Look \"l\" {\n    unit "));
    }

    private static List<String> at(String text) {
        return Proposals.at(Cursor.open(text), text.length()).stream().map(Proposal::label).toList();
    }

    private static List<String> labels(Cursor cursor) {
        return Proposals.at(cursor.text(), cursor.offset()).stream().map(Proposal::label).toList();
    }
}
