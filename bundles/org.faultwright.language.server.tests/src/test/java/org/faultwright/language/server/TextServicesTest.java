/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TextServicesTest {
    private static final int LAMP_LENGTH = Cursor.LAMP.length();

    @Test
    void should_list_the_parts_in_reading_order() {
        List<String> labels = Outline.of(Cursor.open(Cursor.LAMP).document()).stream().map(OutlineItem::label).toList();

        assertEquals(List.of("Supply", "HandMeter", "Rail", "Blown", "SeeIt", "RailVoltage", "Replace", "Proof", "Found",
                "NotSeen", "HandOn", "Blown"), labels);
    }

    @Test
    void should_colour_keywords_quantities_texts_and_arrows() {
        String line = "    within -> Replace // \u00fc\n    expects 24 V \"x\"";

        List<Colouring.Kind> kinds = Colouring.of(line).stream().map(Colouring.Stretch::kind).toList();

        assertTrue(kinds.containsAll(List.of(Colouring.Kind.ARROW, Colouring.Kind.COMMENT, Colouring.Kind.QUANTITY,
                Colouring.Kind.TEXT, Colouring.Kind.KEYWORD)), kinds.toString());
    }

    @Test
    void should_explain_a_limit_in_numbers() {
        Cursor cursor = Cursor.at("24 V +/- 5 %");

        String words = Explanations.at(cursor.text(), cursor.offset()).orElseThrow().markdown();

        // 24 V less and plus 5 %, worked out by hand
        assertTrue(words.contains("22.8") && words.contains("25.2"), words);
    }

    /** a = 14.25 mV and 27 mV at 2.45 V and 5 V: u = √((0.2·14.25)² + (0.098·27)²)/√3 mV/V, by hand. */
    @Test
    void should_explain_a_computed_limit_with_its_readings() {
        String content = """
                procedure P "P"
                instrument One "One" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits }
                instrument Two "Two" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits }
                measure Out "Out" { dc voltage using One expects 2.5 V +/- 10 % within -> In outside -> Done }
                measure In "In" { dc voltage using Two expects 5 V +/- 1 % within -> D outside -> Done }
                calculate D "D" { value Out / In expects 0.5 +/- 2 % within -> Done outside -> Done }
                conclude Done "Done" { finds nothing }
                """;
        OpenText text = Cursor.open(content);

        String words = Explanations.at(text, content.indexOf("0.5 +/-")).orElseThrow().markdown();

        // √(2.85² + 2.646²)/√3 = 2.2453, rounded up
        assertTrue(words.contains("0.00225") && words.contains("share of Out") && words.contains("5.1.2"), words);
    }

    @ParameterizedTest
    @MethodSource("broken")
    void should_answer_about_a_broken_text_without_throwing(String content) {
        OpenText text = Cursor.open(content);

        Outline.of(text.document());
        for (Colouring.Stretch stretch : Colouring.of(content)) {
            assertTrue(stretch.offset() + stretch.length() <= content.length());
        }
        for (int offset = 0; offset <= content.length(); offset += Math.max(1, content.length() / 9)) {
            Proposals.at(text, offset);
            Explanations.at(text, offset);
            ChangeImpact.at(text, offset);
            text.nameAt(offset);
        }
        assertTrue(!text.findings().isEmpty(), "a broken text has findings");
    }

    /** The lamp procedure cut off at many places, and texts that are none. */
    static Stream<String> broken() {
        Stream<String> cut = Stream.iterate(40, at -> at < LAMP_LENGTH, at -> at + 211).map(at -> Cursor.LAMP.substring(0, at));
        return Stream.concat(cut, Stream.of("", "}{", "\"", "/*", "procedure", "procedure P \"\u0000\uFFFF\" {", "-> -> ->",
                "measure M { expects 5 }", "\uD800"));
    }
}
