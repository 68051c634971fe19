/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.draft.TriedDraft;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;

/** Whatever stands in a text, rules about faults and examples report and never break off; so do drafts and counts. */
class BrokenFaultsTest {
    private static final List<Rule> RULES = RuleSet.all().stream()
            .filter(rule -> Set.of(Group.FAULTS, Group.EXAMPLES).contains(rule.header().group())).toList();

    private static void assertAnswers(String text) {
        Document document = Texts.document(text);
        Subject subject = new Subject(document, Optional.empty());
        List<Finding> found = new Checker(RULES, Optional.empty()).check(subject);

        assertEquals(List.of(), found.stream().filter(finding -> finding.rule().equals("rule-failed")).map(Finding::message).toList(), text);
        found.forEach(finding -> finding.fixes().forEach(fix -> assertTrue(fix.applied() != null, text)));
        QaSummary.of(subject, found);
        if (document instanceof Procedure procedure) {
            assertTrue(TriedDraft.of(procedure, one -> Texts.document(one.name(), one.content()), new Checker(RULES, Optional.empty())).remarks().size() > 0, text);
        }
    }

    /** Pieces cut out of, doubled in and swapped about the demo, the same ones each time. */
    @Test
    void should_answer_for_texts_with_pieces_missing() throws IOException {
        Random random = new Random(17);
        List<Path> demo;
        try (Stream<Path> files = Files.list(Path.of("..", "..", "procedures-demo"))) {
            demo = files.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
        int tried = 0;
        for (Path file : demo) {
            List<String> lines = Files.readAllLines(file);
            for (int i = 0; i < 12; i++) {
                List<String> broken = new ArrayList<>(lines);
                for (int change = 0; change < 1 + i; change++) {
                    int at = random.nextInt(broken.size());
                    switch (random.nextInt(4)) {
                        case 0 -> broken.remove(at);
                        case 1 -> broken.add(at, broken.get(random.nextInt(broken.size())));
                        case 2 -> broken.set(at, broken.get(at).substring(0, broken.get(at).length() / 2));
                        default -> broken.set(at, broken.get(random.nextInt(broken.size())));
                    }
                }
                assertAnswers(String.join("\n", broken));
                tried++;
            }
        }
        assertTrue(tried >= 80, tried + " texts tried");
    }

    @Test
    void should_answer_for_every_small_oddity() {
        for (String text : List.of("", "procedure", "procedure P", "library L", "procedure P \"P\" fault",
                "procedure P \"P\" fault F \"F\" { shows } example \"E\" { }",
                "procedure P \"P\" fault F \"F\" { cases 0 shows A a 0 % or b 0 % remedy A, A } check A \"A\" { a -> A b -> A }",
                "procedure P \"P\" fault F \"F\" { shows A a } fault F \"F\" { shows A b } check A \"A\" { a -> C } check A \"A\" { } conclude C \"C\" { finds F }",
                "procedure P \"P\" begin at Z fault F \"F\" { shows Z z } conclude C \"C\" { finds F }",
                "procedure P \"P\" conclude C \"C\" { finds nothing } example \"E\" of F { C c, C d ends at C within 3 V }",
                "procedure P \"P\" check A \"A\" { a -> A at most 0 times, else A b -> A at most 9 times, else C } conclude C \"C\" { finds F }",
                "procedure P \"P\" perform A \"A\" by A { x -> C } routine A \"A\" { exits x perform A \"A\" by A { x -> x } } conclude C \"C\" { }",
                "procedure P \"P\" do A \"A\" { takes 3 V then -> A } fault F \"F\" { remedy A shows A done 120 % }")) {
            assertAnswers(text);
        }
    }

    /** Bounds that multiply to more states than are looked at: nothing is reported rather than half of it. */
    @Test
    void should_report_nothing_from_a_walk_that_was_not_finished() {
        StringBuilder text = new StringBuilder("procedure P \"P\"\nfault F \"F\" { shows S0 b }\n");
        for (int i = 0; i < 12; i++) {
            text.append("check S").append(i).append(" \"S\" { a -> S").append((i + 1) % 12).append(" at most 9 times, else C b -> S")
                    .append((i + 5) % 12).append(" at most 9 times, else C c -> S").append((i + 7) % 12).append(" at most 9 times, else C }\n");
        }
        text.append("conclude C \"C\" { finds nothing }\nconclude D \"D\" { finds F }\n");
        FaultWalks walks = FaultWalks.of(Texts.procedure(text.toString()));

        assertTrue(!walks.all().get(0).isComplete());
        assertEquals(List.of(), Texts.findings("fault-misses-conclusion", text.toString()));
        assertAnswers(text.toString());
    }
}
