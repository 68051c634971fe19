/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.analysis.checking.RuleSet;
import org.junit.jupiter.api.Test;

/** Texts that no author would write on purpose: the rules about paths, state and safety say what they can and stop. */
class HostileTextsTest {
    private static final List<Rule> RULES = RuleSet.all().stream().filter(rule -> List.of(Group.PATHS, Group.STATE, Group.SAFETY)
            .contains(rule.header().group())).toList();

    @Test
    void should_not_fail_on_pages_with_pieces_missing_or_doubled() {
        Random random = new Random(11);
        int checked = 0;
        for (Rule rule : RULES) {
            String text = RulePages.page(rule.header().id()).orElseThrow().bad();
            List<String> words = List.of(text.split("(?<=\\s)"));
            for (int i = 0; i < 12; i++) {
                int from = random.nextInt(words.size());
                int to = Math.min(words.size(), from + 1 + random.nextInt(6));
                assertNoFailure(String.join("", words.subList(0, from)) + String.join("", words.subList(to, words.size())));
                assertNoFailure(String.join("", words.subList(0, to)) + String.join("", words.subList(from, words.size())));
                checked += 2;
            }
        }
        assertTrue(checked >= 24 * 16, "checked " + checked);
    }

    private static List<Finding> assertNoFailure(String text) {
        List<Finding> found = Texts.all(new Checker(RULES, Optional.empty()), Texts.document(text));
        assertEquals(List.of(), found.stream().filter(one -> one.rule().equals("rule-failed")).toList(), text);
        return found;
    }

    @Test
    void should_not_fail_on_conditions_that_force_one_another_round_in_a_circle() {
        assertNoFailure("""
                procedure P "p"
                condition A { off, on } becomes on when B off becomes off when B on
                condition B { off, on } becomes on when A on becomes off when A off
                condition Self { off, on } becomes on when Self off
                condition Empty { }
                check C "c" { needs A on, B off, Self on, Empty full, Nobody none yes -> End no -> C }
                conclude End "e" { finds nothing }
                """);
    }

    @Test
    void should_not_fail_on_bounds_as_large_as_can_be_written() {
        List<Finding> found = assertNoFailure("""
                procedure P "p"
                condition A { off, on } ends on
                check C "c" { yes -> D at most 1000000 times, else End no -> End }
                check D "d" { yes -> C at most 999999 times, else End no -> D at most 999999999999999999999 times, else End }
                conclude End "e" { finds nothing }
                """);
        assertTrue(found.stream().anyMatch(one -> one.rule().equals("state-bound-reached")), found.toString());
        assertTrue(found.stream().anyMatch(one -> one.rule().equals("left-open")), found.toString());
    }

    @Test
    void should_say_so_where_bounds_can_be_counted_but_not_together_with_a_condition() {
        String text = """
                procedure P "p"
                condition A { a, b } condition B { a, b } condition C { a, b } condition D { a, b }
                condition E { a, b } becomes b when A b becomes b when B b becomes b when C b becomes b when D b
                check S "s" { yes -> T at most 230 times, else End no -> T proves A a set -> T proves A b
                    aside -> T proves B a along -> T proves B b }
                check T "t" { yes -> S at most 230 times, else End no -> S proves C a set -> S proves C b
                    aside -> S proves D a along -> S proves D b other -> U }
                check U "u" { yes -> S proves E a no -> S }
                conclude End "e" { finds nothing }
                """;
        assertEquals(List.of("The values of \"E\" and the bounds on repeats make more than 2 000 000 states, so for it the bounds"
                + " were taken as open: no path is missed, but one shown may repeat too often."),
                Texts.messages("state-bound-reached", text));
    }

    @Test
    void should_get_through_two_thousand_steps_that_all_lead_back() {
        String steps = IntStream.range(0, 2_000).mapToObj(i -> ("do S%d \"s\" { needs C%d on sets C%d off "
                + "yes -> S%d no -> S%d at most 2 times, else End }%n").formatted(i, i % 10, (i + 3) % 10, i + 1, i / 2))
                .collect(Collectors.joining());
        String conditions = IntStream.range(0, 10).mapToObj("condition C%d { off, on }%n"::formatted).collect(Collectors.joining());
        List<Finding> found = assertNoFailure("procedure P \"p\"\n" + conditions + steps
                + "conclude S2000 \"e\" { finds nothing } conclude End \"e\" { refers to \"x\" }");
        assertTrue(found.stream().anyMatch(one -> one.rule().equals("state-bound-reached")));
        assertTrue(found.stream().anyMatch(one -> one.rule().equals("need-not-established")));
    }

    @Test
    void should_leave_a_library_alone_but_for_its_notes_and_settings() {
        List<String> stateful = RuleSet.all().stream().filter(rule -> rule.header().group() == Group.STATE)
                .map(rule -> rule.header().id()).toList();
        List<String> found = assertNoFailure("""
                library L
                note N notice { covers shock hazard "h" consequence "c" avoid "a" }
                routine R "r" { exits done measure M "m" { resistance needs Supply on under 1 ohm -> done at least 1 ohm -> done } }
                condition Supply { off, on } live when on
                """).stream().map(Finding::rule).toList();
        assertTrue(found.contains("signal-word-fit") && found.stream().noneMatch(stateful::contains), found.toString());
    }
}
