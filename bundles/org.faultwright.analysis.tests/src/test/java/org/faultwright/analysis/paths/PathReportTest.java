/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Name;
import org.faultwright.quantity.Exact;
import org.junit.jupiter.api.Test;

class PathReportTest {
    @Test
    void should_say_what_the_paths_come_to() {
        PathReport report = report("""
                condition Supply { off, on } live when on
                check Ask "a" { takes 2 min yes -> On no -> Try }
                do On "o" { takes 30 s sets Supply on then -> Try }
                check Try "t" { takes 5 min yes -> End no -> Try at most 2 times, else Lost }
                check Idle "never come to" { yes -> End no -> Lost }
                conclude End "e" { finds nothing }
                conclude Lost "l" { refers to "x" }
                """);
        assertEquals(6, report.steps());
        assertEquals(5, report.stepsReached());
        assertEquals(7, report.outcomes());
        assertEquals(5, report.outcomesTaken());
        // Ask and On once; Try three times, End and Lost, each with the supply off and on
        assertEquals(2 + 2 * 3 + 2 + 2, report.states());
        assertTrue(report.complete() && report.exact());
        assertEquals(List.of("Ask", "Try"), report.always().stream().map(Name::text).toList());
        assertEquals("[Ask (no), Try (yes), End]", report.shortest().orElseThrow().toString());
        // yes or no at Ask; at Try yes, no yes, no no yes, no no no
        assertEquals(Optional.of(BigInteger.valueOf(8)), report.paths());
        assertEquals(6, report.longest().orElseThrow().size());
        assertEquals(Optional.of(Exact.of(120 + 30 + 3 * 300)), report.worstSeconds());
    }

    @Test
    void should_claim_no_number_of_paths_where_a_loop_has_no_bound() {
        PathReport report = report("check A \"a\" { yes -> A no -> End } conclude End \"e\" { finds nothing }");
        assertEquals(Optional.empty(), report.paths());
        assertEquals(Optional.empty(), report.worstSeconds());
        assertEquals("[A (no), End]", report.shortest().orElseThrow().toString());
    }

    /** 2^200 paths: three outcomes would not fit into any machine number either. */
    @Test
    void should_count_more_paths_than_a_machine_number_holds() {
        String steps = IntStream.range(0, 200).mapToObj(i -> "check S%d \"s\" { yes -> S%d no -> S%d }%n".formatted(i, i + 1, i + 1))
                .collect(Collectors.joining());
        assertEquals(Optional.of(BigInteger.TWO.pow(200)),
                report(steps + "conclude S200 \"e\" { finds nothing }").paths());
    }

    @Test
    void should_take_the_time_of_a_perform_step_for_its_whole_routine() {
        String text = """
                routine R "r" { exits done do A "a" { takes 10 min then -> done } }
                perform P "p" by R { %s done -> End }
                conclude End "e" { finds nothing }
                """;
        assertEquals(Optional.of(Exact.of(600)), report(text.formatted("")).worstSeconds());
        assertEquals(Optional.of(Exact.of(120)), report(text.formatted("takes 2 min")).worstSeconds());
    }

    @Test
    void should_have_nothing_to_say_about_an_empty_procedure() {
        PathReport report = report("");
        assertEquals(0, report.states());
        assertEquals(Optional.of(BigInteger.ZERO), report.paths());
        assertEquals(Optional.empty(), report.shortest());
        assertEquals(Optional.empty(), report.worstSeconds());
        assertEquals(List.of(), report.always());
    }

    @Test
    void should_show_the_way_to_a_step() {
        ProcedurePaths paths = ProcedurePaths.of(Texts.procedure("procedure P \"p\" check A \"a\" { yes -> B no -> C }"
                + "check B \"b\" { yes -> C no -> C } conclude C \"c\" { finds nothing } conclude D \"d\" { finds nothing }"));
        assertEquals("[A (yes), B]", paths.pathTo(Draft.name("B")).orElseThrow().toString());
        assertEquals(Optional.empty(), paths.pathTo(Draft.name("D")));
        assertEquals(Optional.empty(), paths.pathTo(Draft.name("Nobody")));
    }

    @Test
    void should_say_when_bounds_make_too_many_states_and_miss_no_path_then() {
        int open = 0;
        for (int seed = 0; seed < 500; seed++) {
            ProcedurePaths counted = ProcedurePaths.of(Draft.at(seed, true, seed % 2));
            ProcedurePaths few = ProcedurePaths.of(Draft.at(seed, true, seed % 2), 4, Exploration.MOST_STATES);
            if (few.countsRepeats()) {
                continue;
            }
            open++;
            assertTrue(few.isComplete());
            for (int i = 0; i < counted.map().places().size(); i++) {
                InlinedStep place = counted.map().places().get(i);
                InlinedStep same = few.map().places().get(i);
                assertTrue(!counted.reaches(place) || few.reaches(same), "seed " + seed + " " + place);
                counted.map().conditions().forEach(condition -> {
                    List<String> met = texts(counted.states(condition).orElseThrow().arriving(place));
                    assertTrue(texts(few.states(condition).orElseThrow().arriving(same)).containsAll(met));
                });
            }
        }
        assertTrue(open > 250, "open " + open);
    }

    private static List<String> texts(List<Name> names) {
        return names.stream().map(Name::text).toList();
    }

    @Test
    void should_stop_at_the_bound_and_say_so() {
        ProcedurePaths paths = ProcedurePaths.of(Draft.at(8, true, 0), 2, 2);
        assertFalse(paths.isComplete());
        assertFalse(paths.together().isComplete());
        assertTrue(paths.together().size() <= 2);
    }

    /** States of more than 64 bits: 100 conditions of three values, set one after the other. */
    @Test
    void should_follow_more_conditions_than_fit_one_machine_word() {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < 100; i++) {
            text.append("condition C%d { a, b, c }%ndo S%d \"s\" { sets C%d c then -> S%d }%n".formatted(i, i, i, i + 1));
        }
        text.append("check S100 \"s\" { yes -> End no -> S0 } conclude End \"e\" { finds nothing }");
        ProcedurePaths paths = ProcedurePaths.of(Texts.procedure("procedure P \"p\"\n" + text));
        Exploration together = paths.together();
        // once through with the values changing one by one, and once more with all of them set
        assertEquals(101 + 1 + 100, together.size());
        int last = together.size() - 1;
        assertEquals("c", together.value(last, paths.map().conditions().get(99)).text());
    }

    private static PathReport report(String text) {
        return PathReport.of(ProcedurePaths.of(Texts.procedure("procedure P \"p\"\n" + text)));
    }
}
