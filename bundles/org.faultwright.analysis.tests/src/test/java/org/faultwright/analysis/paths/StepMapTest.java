/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.faultwright.analysis.Texts;
import org.junit.jupiter.api.Test;

class StepMapTest {
    private static final String ROUTINE = """
            routine MakeSafe "Make it dead" {
                exits dead, still
                do PullPlug "Pull the plug" { then -> Prove }
                check Prove "Is it dead?" { yes -> dead no -> still }
            }
            """;

    @Test
    void should_write_a_routine_out_behind_each_step_that_performs_it() {
        StepMap map = map(ROUTINE + """
                perform First "Make it dead" by MakeSafe { dead -> Again still -> End }
                perform Again "Make it dead again" by MakeSafe { dead -> End still -> End }
                conclude End "End" { finds nothing }
                """);
        assertEquals(List.of("First", "Again", "End", "First/PullPlug", "First/Prove", "Again/PullPlug", "Again/Prove",
                "First (dead)", "First (still)", "Again (dead)", "Again (still)"), names(map));
        assertEquals(List.of("First (dead) -> Again"), ways(map, "First (dead)"));
        assertEquals(List.of("First/Prove (yes) -> First (dead)", "First/Prove (no) -> First (still)"),
                ways(map, "First/Prove"));
    }

    @Test
    void should_lead_nowhere_from_an_exit_that_the_perform_step_does_not_answer() {
        StepMap map = map(ROUTINE + "perform Only \"x\" by MakeSafe { dead -> End } conclude End \"End\" { finds nothing }");
        assertEquals(List.of(), ways(map, "Only (still)"));
    }

    @Test
    void should_answer_every_other_exit_by_anything_else() {
        StepMap map = map(ROUTINE + "perform Only \"x\" by MakeSafe { dead -> End anything else -> Other }"
                + "conclude End \"End\" { finds nothing } conclude Other \"Other\" { finds nothing }");
        assertEquals(List.of("Only (still) -> Other"), ways(map, "Only (still)"));
    }

    @Test
    void should_leave_a_routine_closed_that_nobody_declares_or_that_performs_itself() {
        StepMap unknown = map("perform P \"x\" by Nobody { done -> End } conclude End \"End\" { finds nothing }");
        assertEquals(List.of("P (done) -> End"), ways(unknown, "P"));

        StepMap circle = map("""
                routine A "a" { exits done perform InA "x" by B { done -> done } }
                routine B "b" { exits done perform InB "x" by A { done -> done } }
                perform P "x" by A { done -> End }
                conclude End "End" { finds nothing }
                """);
        assertEquals(List.of("P/InA/InB (done) -> P/InA (done)"), ways(circle, "P/InA/InB"));
        assertTrue(ProcedurePaths.of(circle.procedure()).reaches(circle.place(Draft.name("End")).orElseThrow()));
    }

    @Test
    void should_drop_what_leads_to_an_unknown_step_and_take_the_first_of_two_with_one_name() {
        StepMap map = map("check A \"a\" { yes -> Nowhere no -> B } check B \"first\" { yes -> End }"
                + "check B \"second\" { no -> End } conclude End \"End\" { finds nothing }");
        assertEquals(List.of("A (yes) -> ?", "A (no) -> B"), ways(map, "A"));
        assertEquals(List.of("B (yes) -> End"), ways(map, "B"));
    }

    @Test
    void should_begin_where_the_text_says_and_nowhere_when_that_is_unknown() {
        String steps = "check A \"a\" { yes -> B } conclude B \"b\" { finds nothing }";
        assertEquals(Optional.of("A"), map(steps).begin().map(InlinedStep::label));
        assertEquals(Optional.of("B"), map("begin at B " + steps).begin().map(InlinedStep::label));
        assertEquals(Optional.empty(), map("begin at C " + steps).begin());
        assertEquals(Optional.empty(), map("").begin());
    }

    @Test
    void should_stop_writing_out_routines_that_double_with_every_level() {
        StringBuilder text = new StringBuilder("routine R0 \"r\" { exits done check Look \"x\" { yes -> done } }\n");
        for (int level = 1; level <= 24; level++) {
            text.append("routine R%d \"r\" { exits done perform A \"x\" by R%d { done -> B } perform B \"x\" by R%d { done -> done } }%n"
                    .formatted(level, level - 1, level - 1));
        }
        StepMap map = map(text + "perform P \"x\" by R24 { done -> End } conclude End \"End\" { finds nothing }");
        assertTrue(map.places().size() <= 2 * StepMapBuilder.MOST_PLACES, "places: " + map.places().size());
        assertTrue(!map.tooLarge().isEmpty());
        assertTrue(ProcedurePaths.of(map.procedure()).reaches(map.place(Draft.name("End")).orElseThrow()));
    }

    @Test
    void should_stop_writing_out_routines_that_stand_a_thousand_levels_deep() {
        StringBuilder text = new StringBuilder("routine R0 \"r\" { exits done check Look \"x\" { yes -> done } }\n");
        IntStream.rangeClosed(1, 1_000).forEach(level -> text.append(
                "routine R%d \"r\" { exits done perform A \"x\" by R%d { done -> done } }%n".formatted(level, level - 1)));
        StepMap map = map(text + "perform P \"x\" by R1000 { done -> End } conclude End \"End\" { finds nothing }");
        assertEquals(1, map.tooLarge().size());
        assertTrue(ProcedurePaths.of(map.procedure()).reaches(map.place(Draft.name("End")).orElseThrow()));
    }

    private static StepMap map(String text) {
        return StepMap.of(Texts.procedure("procedure P \"p\"\n" + text));
    }

    private static List<String> names(StepMap map) {
        return map.places().stream().map(InlinedStep::toString).toList();
    }

    private static List<String> ways(StepMap map, String place) {
        InlinedStep from = map.places().stream().filter(one -> one.toString().equals(place)).findFirst().orElseThrow();
        return map.ways(from).stream().map(Transition::toString).toList();
    }
}
