/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.faultwright.analysis.checking.Assessment;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;

/** What may only follow from something else waits. That it does is said, and nothing else is kept back. */
class WaitingTest {
    private static final Checker CHECKER = new Checker();
    private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_]*");
    private static final String TEXT = """
            procedure Lamp "Lamp stays dark" uses Bench
            equipment "Lamp" boards "A"
            revision 1 draft
            complaints "dark"

            check SeeIt "Is it dark?" {
                confirms complaint
                needs Supply on
                takes 1 min
                yes -> Volts
                no  -> Fine
            }
            measure Volts "Volts" {
                dc voltage at Mains using Meter
                takes 1 min
                expects 5 V +/- 5 %
                within  -> Fine
                outside -> Fine
            }
            check Aside "Does anything lead here?" {
                takes 1 min
                yes -> Fine
                no  -> Fine
            }
            conclude Fine "Nothing found" {
                finds nothing
                report "Tried as described."
            }
            """;
    private static final String BENCH = """
            library Bench "Bench"
            condition Supply { off, on } starts off ends off
            point Mains "Plug" carries up to 24 V dc
            instrument Meter "Meter" rated 60 V { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
            """;

    private static Assessment assessed(String text, Map<String, String> libraries) {
        Document document = Texts.document(text, libraries);
        return CHECKER.assess(CHECKER.subject(document));
    }

    private static List<Finding> saying(Assessment assessed) {
        return assessed.findings().stream().filter(finding -> finding.advice().contains(" is checked ")).toList();
    }

    @Test
    void should_say_at_the_library_that_is_not_there_what_waits_for_it() {
        Assessment assessed = assessed(TEXT.replace("-> Volts", "-> Vlts"), Map.of());
        assertTrue(assessed.waiting().stream().anyMatch(finding -> finding.message().contains("\"Mains\"")));
        List<Finding> saying = saying(assessed);
        assertEquals(1, saying.size(), saying::toString);
        assertTrue(saying.get(0).message().startsWith("There is no library \"Bench\""), saying::toString);
        assertTrue(saying.get(0).advice().endsWith("What may only follow from this is checked then."), saying::toString);
    }

    @Test
    void should_say_at_the_first_name_that_leads_nowhere_what_waits_for_it() {
        List<Finding> saying = saying(assessed(TEXT.replace("-> Volts", "-> Vlts").replace("outside -> Fine", "outside -> Fin"), Map.of("Bench", BENCH)));
        assertEquals(1, saying.size(), saying::toString);
        assertTrue(saying.get(0).message().contains("\"Vlts\""), saying::toString);
    }

    @Test
    void should_say_nothing_of_waiting_where_nothing_waits() {
        Assessment assessed = assessed(TEXT, Map.of("Bench", BENCH));
        assertEquals(List.of(), assessed.waiting());
        assertEquals(List.of(), saying(assessed));
    }

    @Test
    void should_lose_nothing_in_damaged_texts_and_say_that_something_waits() {
        Random random = new Random(11);
        int waiting = 0;
        for (int i = 0; i < 60; i++) {
            List<MatchResult> words = WORD.matcher(TEXT).results().toList();
            MatchResult word = words.get(random.nextInt(words.size()));
            String text = TEXT.substring(0, word.start()) + (random.nextBoolean() ? "" : word.group() + " oops") + TEXT.substring(word.end());
            Assessment assessed = assessed(text, random.nextInt(4) == 0 ? Map.of() : Map.of("Bench", BENCH));
            assertTrue(assessed.waiting().isEmpty() || !saying(assessed).isEmpty(), () -> assessed + "\n" + text);
            waiting += assessed.waiting().isEmpty() ? 0 : 1;
        }
        assertTrue(waiting > 20, "something waits in " + waiting + " texts only");
    }

    @Test
    void should_either_tell_or_hold_back_each_thing_that_a_rule_says() {
        String text = TEXT.replace("takes 1 min\n    yes -> Volts", "takes 1 minn oops\n    yes -> Volts");
        Document document = Texts.document(text, Map.of("Bench", BENCH));
        List<String> one = new ArrayList<>();
        for (Rule rule : RuleSet.all()) {
            Texts.all(new Checker(List.of(rule), Optional.empty()), document).forEach(finding -> one.add(finding.rule() + finding.message()));
        }
        List<String> all = new ArrayList<>(Texts.all(CHECKER, document).stream().map(finding -> finding.rule() + finding.message()).toList());
        one.sort(null);
        all.sort(null);
        assertTrue(!one.isEmpty());
        assertEquals(one, all);
    }
}
