/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A text that is laid out says the same, keeps its comments, and stays as it is when laid out again. */
class TextFormatterTest {
    private static final Pattern COMMENT = Pattern.compile("\"(?:\\\\.|[^\"\\\\])*\"|//[^\n]*|/\\*(?s:.*?)\\*/");

    static Stream<String> texts() {
        return Stream.concat(Reading.demo().stream().map((Path file) -> Reading.content(file)),
                Stream.of("OllenbyFaintLabels.procedure", "HarbourBench.procedure").map(Reading::resource));
    }

    @ParameterizedTest
    @MethodSource("texts")
    void should_keep_the_meaning_and_every_comment(String text) {
        check(text);
    }

    @ParameterizedTest
    @MethodSource("texts")
    void should_keep_the_meaning_however_a_text_is_spread_over_lines(String text) {
        Random random = new Random(text.length());
        for (int i = 0; i < 10; i++) {
            check(spread(text, random));
        }
    }

    private static void check(String text) {
        String laidOut = TextFormatter.format(text);

        assertEquals(List.of(), Reading.document(laidOut).problems());
        assertEquals(DocumentMeaning.of(Reading.document(text)), DocumentMeaning.of(Reading.document(laidOut)));
        assertEquals(comments(text), comments(laidOut));
        assertEquals(laidOut, TextFormatter.format(laidOut));
        assertTrue(laidOut.lines().noneMatch(line -> line.endsWith(" ") || line.contains("\t")) || laidOut.contains("/*"));
        assertTrue(laidOut.endsWith("\n") && !laidOut.endsWith("\n\n"));
    }

    /** Other white space wherever there is some, and a comment here and there. */
    private static String spread(String text, Random random) {
        StringBuilder changed = new StringBuilder();
        Matcher words = Pattern.compile("\"(?:\\\\.|[^\"\\\\])*\"|//[^\n]*\n|/\\*(?s:.*?)\\*/|\\s+|[^\\s\"]+").matcher(text);
        List<String> gaps = List.of(" ", "   ", "\n", "\n\n\n", "\t", " /* why */ ", " // because\n", "\n        ", " ", " ");
        while (words.find()) {
            String word = words.group();
            changed.append(word.isBlank() ? gaps.get(random.nextInt(gaps.size())) : word);
        }
        return changed.toString();
    }

    private static List<String> comments(String text) {
        List<String> comments = new ArrayList<>();
        Matcher found = COMMENT.matcher(text);
        while (found.find()) {
            if (!found.group().startsWith("\"")) {
                comments.add(found.group().strip());
            }
        }
        return comments;
    }

    @Test
    void should_lay_a_text_out_evenly() {
        String laidOut = TextFormatter.format("""
                // a sketch
                procedure   X "x"

                uses A , B
                condition Supply{off,on} live when on
                  starts off
                check SeeIt "How?"
                {
                confirms complaint   needs Supply on
                      takes 3 min // about
                  faint->A    at most 2 times,else C
                    // neither
                  anything   else   -> B }
                measure M "m" { dc voltage at P
                   low under 3.5 V -> A good 3.5 V .. 5V -> B
                   tooHigh over 5V -> C }
                do Short "s" { then -> X }
                do Long "This one is too long to stand on a line of its own, so that each of its items gets one" { takes 3 min then -> X }
                instrument I { dc voltage up to 6 V resolution 1 mV accuracy 1 %
                dc current up to 600 mA resolution 100 uA accuracy 2 % burden 2 ohm }
                """);

        assertEquals("""
                // a sketch
                procedure X "x"

                uses A, B
                condition Supply { off, on } live when on
                    starts off
                check SeeIt "How?" {
                    confirms complaint needs Supply on
                    takes 3 min  // about
                    faint -> A at most 2 times, else C
                    // neither
                    anything else -> B
                }
                measure M "m" {
                    dc voltage at P
                    low     under 3.5 V  -> A
                    good    3.5 V .. 5V  -> B
                    tooHigh over 5V      -> C
                }
                do Short "s" { then -> X }
                do Long "This one is too long to stand on a line of its own, so that each of its items gets one" {
                    takes 3 min
                    then -> X
                }
                instrument I {
                    dc voltage up to 6 V      resolution 1 mV     accuracy 1 %
                    dc current up to 600 mA   resolution 100 uA   accuracy 2 %   burden 2 ohm
                }
                """.replace("  -> ", " -> ").replace("5V     ", "5V    ").replace("over 5V    ->", "over 5V     ->"), laidOut);
    }

    @Test
    void should_keep_the_line_ends_and_the_mark_at_the_start() {
        assertEquals("\uFEFFprocedure X\r\ncheck A { yes -> B }\r\n", TextFormatter.format("\uFEFFprocedure  X\r\ncheck A {yes->B}"));
    }

    @Test
    void should_leave_a_text_alone_that_cannot_be_read_in_full() {
        for (String broken : List.of("procedure   X  check A {", "procedure  X  chek A { yes -> B }", "procedure  X check A { ; yes -> B }", "",
                "hello   you")) {
            assertEquals(broken, TextFormatter.format(broken));
        }
    }
}
