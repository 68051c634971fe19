/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.Random;
import java.util.stream.Stream;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Texts made to exhaust the reader. The time limit only stands for ever: it is far above what any of them takes. */
@Timeout(300)
class HostileTextsTest {
    static Stream<Arguments> texts() {
        String formula = "procedure X calculate D { value ";
        return Stream.of(arguments("parentheses", formula + "(".repeat(10_000) + "A" + ")".repeat(10_000) + " }"),
                arguments("open parentheses", formula + "(".repeat(1_000_000)),
                arguments("functions", formula + "abs(".repeat(10_000) + "A" + ")".repeat(10_000) + " }"),
                arguments("a long sum", formula + "A" + " + A".repeat(30_000) + " }"),
                arguments("opening braces", "procedure X " + "{".repeat(100_000)),
                arguments("closing braces", "procedure X " + "}".repeat(100_000)),
                arguments("letters and signs", "procedure X " + garbage(300_000, 0x5F)),
                arguments("all scripts", "procedure X " + garbage(300_000, 0x3000)),
                arguments("a long number", "procedure X fault F { weight " + "9".repeat(1_000_000) + " }"),
                arguments("a large exponent", "procedure X do A { takes 1e999999999 min then -> B }"),
                arguments("an unclosed text", "procedure X \"" + "a".repeat(1_000_000)),
                arguments("quotation marks", "procedure X " + "\"".repeat(100_001)),
                arguments("backslashes", "procedure X \"" + "\\".repeat(100_001) + "\""),
                arguments("an unclosed comment", "procedure X /*" + "a/*".repeat(300_000)),
                arguments("null characters", "procedure X \0\0\0 check A { yes \0 -> B }"),
                arguments("half a character", "procedure X \uD800 check A \"\uDC00\" { yes -> B }"),
                arguments("words", "procedure X " + "abc ".repeat(20_000)),
                arguments("words in a step", "procedure X check A { " + "abc ".repeat(20_000)),
                arguments("steps without a name", "procedure X " + "check ".repeat(20_000)),
                arguments("a long unit", "procedure X do A { takes 3 " + "m.".repeat(20_000) + "m then then -> B }"));
    }

    private static String garbage(int length, int signs) {
        Random random = new Random(1);
        return random.ints(length, 0x20, 0x20 + signs).collect(StringBuilder::new, StringBuilder::appendCodePoint,
                StringBuilder::append).toString();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("texts")
    void should_end_with_a_sentence(String what, String text) {
        Document document = Reading.document(text);

        assertTrue(document.problems().size() > 0 && document.problems().size() <= 101, document.problems().size() + " problems");
        document.problems().forEach(problem -> assertTrue(problem.message().length() < 400, problem.message()));
        assertEquals(text.replaceAll("\\s", ""), TextFormatter.format(text).replaceAll("\\s", ""));
    }

    @Test
    void should_refuse_a_text_longer_than_any_procedure() {
        Document document = Reading.document("procedure X " + " ".repeat(9 * 1024 * 1024));

        assertEquals("This text is longer than the 8 MB that are read; is it a procedure at all?",
                document.problems().get(0).message());
    }

    @Test
    void should_read_a_text_of_white_space_only() {
        assertEquals(1, Reading.document(" \n".repeat(1_000_000)).problems().size());
    }

    @Test
    void should_read_thousands_of_steps() {
        StringBuilder text = new StringBuilder("procedure X begin at S0\n");
        for (int i = 0; i < 5000; i++) {
            text.append("check S").append(i).append(" \"t\" { yes -> S").append(i + 1).append(" no -> S0 }\n");
        }
        Document document = Reading.document(text.toString());

        assertEquals(0, document.problems().size());
        assertEquals(5000, document.graphs().get(0).steps().size());
    }
}
