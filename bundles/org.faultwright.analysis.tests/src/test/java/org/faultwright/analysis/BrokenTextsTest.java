/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Whatever an author leaves half written, every rule runs to its end and points into the text. */
class BrokenTextsTest {
    private static final int TEXTS = 300;
    private static final Pattern TOKEN = Pattern.compile("\"[^\"]*\"|[\\p{L}_][\\p{L}\\p{N}_]*|[0-9.]+|->|\\.\\.|\\+/-|[^\\s]");
    private static final List<String> STRAY = List.of("{", "}", "\"", "->", "..", "at most", "under", "over", "9",
            "0", "-1", "1e60",
            "ohm", "V", "degC", "%", "dB", "Nowhere", "else", "measure", "expects", "needs", "on", ",", "(", ")",
            "\u0000", "é", "\uD83D\uDD25");
    private static String good;

    @BeforeAll
    static void read() throws IOException {
        try (InputStream file = BrokenTextsTest.class.getResourceAsStream("rules/everything.procedure")) {
            good = new String(file.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static List<Finding> findings(String text) {
        Document document = Texts.document(text, Map.of("OrraBench", "library OrraBench \"Bench\""));
        return new Checker(RuleSet.all(), Optional.of(LocalDate.of(2026, 6, 1))).check(document);
    }

    private static void assertSound(String text, String how) {
        for (Finding finding : findings(text)) {
            assertTrue(!finding.rule().equals("rule-failed"), () -> how + ": " + finding.message() + "\n" + text);
            assertTrue(finding.at().offset() >= 0 && finding.at().end() <= text.length(), () -> how + ": " + finding);
            for (Fix fix : finding.fixes()) {
                fix.edits().forEach(edit -> assertTrue(edit.at().offset() >= 0 && edit.at().end() <= text.length(),
                        () -> how + ": " + finding));
                assertTrue(!fix.applied().equals(text), () -> how + ": a fix changes nothing: " + finding);
            }
        }
    }

    @Test
    void should_have_a_text_that_can_be_read_to_begin_with() {
        assertEquals(List.of(), findings(good).stream().filter(finding -> finding.rule().equals("unreadable-text")
                || finding.rule().equals("unknown-name") || finding.rule().equals("rule-failed"))
                .map(Finding::message).toList());
    }

    @Test
    void should_run_every_rule_over_truncated_texts() {
        Random random = new Random(1);
        for (int i = 0; i < TEXTS; i++) {
            int end = random.nextInt(good.length());
            assertSound(good.substring(0, end), "cut at " + end);
        }
    }

    @Test
    void should_run_every_rule_over_texts_that_begin_in_the_middle() {
        Random random = new Random(2);
        for (int i = 0; i < TEXTS / 3; i++) {
            int from = random.nextInt(good.length());
            assertSound("procedure X \"x\" " + good.substring(from), "from " + from);
        }
    }

    @Test
    void should_run_every_rule_over_texts_with_words_left_out_doubled_or_changed() {
        List<java.util.regex.MatchResult> tokens = TOKEN.matcher(good).results().toList();
        Random random = new Random(3);
        for (int i = 0; i < TEXTS; i++) {
            StringBuilder text = new StringBuilder(good);
            int changes = 1 + random.nextInt(4);
            for (int change = 0; change < changes; change++) {
                var token = tokens.get(random.nextInt(tokens.size()));
                String other = switch (random.nextInt(4)) {
                    case 0 -> "";
                    case 1 -> token.group() + " " + token.group();
                    case 2 -> STRAY.get(random.nextInt(STRAY.size()));
                    default -> tokens.get(random.nextInt(tokens.size())).group();
                };
                int at = Math.min(token.start(), text.length());
                text.replace(at, Math.min(token.end(), text.length()), other);
            }
            assertSound(text.toString(), "mutation " + i);
        }
    }

    @Test
    void should_find_the_same_in_the_same_text() {
        assertEquals(findings(good).stream().map(Finding::toString).toList(), findings(good).stream()
                .map(Finding::toString).toList());
    }
}
