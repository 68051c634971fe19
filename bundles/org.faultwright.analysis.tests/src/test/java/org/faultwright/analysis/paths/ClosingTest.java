/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A procedure that says how it is closed is held against the same one with every closing step written out. */
class ClosingTest {
    private static final String BENCH = """
            condition Supply { off, on } live when on starts off ends off
            condition Cover { fitted, removed } starts fitted ends fitted
            routine CloseUp "Close up" { exits closed begin at Plug
                do Plug "Pull the plug" { sets Supply off takes 30 s then -> Fit }
                do Fit "Fit the cover" { needs Supply off sets Cover fitted takes 4 min then -> closed } }
            """;

    private static Procedure procedure(String text) {
        return Texts.procedure("procedure P \"p\"\n" + text);
    }

    private static List<String> closing(Procedure procedure) {
        return procedure.steps().stream().filter(ClosingStep::is).map(step -> step.name().text()).toList();
    }

    private static List<String> of(String rule, String text) {
        return Texts.findings(rule, "procedure P \"p\"\n" + text).stream().map(Finding::message).toList();
    }

    @Test
    void should_close_before_a_conclusion_only_where_something_is_open() {
        Procedure procedure = procedure("closes by CloseUp\n" + BENCH + """
                begin at Look
                check Look "?" { sound -> Fine bad -> Open }
                do Open "Open" { sets Cover removed then -> Inside }
                check Inside "?" { sound -> Fine bad -> Bad }
                conclude Fine "Fine" { finds nothing } conclude Bad "Bad" { refers to "Somebody" }
                """);

        assertEquals(List.of("CloseUp before Fine", "CloseUp before Bad"), closing(procedure));
        assertEquals("Fine", procedure.steps().get(0).outcomes().get(0).target().get().text());
        assertEquals("CloseUp before Fine", procedure.steps().get(2).outcomes().get(0).target().get().text());
        assertEquals("Fine", procedure.steps().get(2).outcomes().get(0).target().get().at().text());
        assertEquals(List.of("Look", "Open", "Inside", "Fine", "Bad"), procedure.writtenSteps().stream().map(step -> step.name().text()).toList());
    }

    @Test
    void should_cost_no_time_where_nothing_is_open_and_the_time_of_the_routine_where_something_is() {
        String steps = """
                check Look "?" { takes 1 min sound -> Fine bad -> Open }
                do Open "Open" { sets Cover removed takes 2 min then -> Fine }
                conclude Fine "Fine" { finds nothing }
                example "Sound" { Look sound ends at Fine } example "Bad" { Look bad ends at Fine }
                """;
        List<String> times = ExampleCoverage.of(procedure("closes by CloseUp\n" + BENCH + steps)).runs().stream()
                .map(run -> run.time().toString()).toList();

        // 1 min; 1 min and 2 min, and 30 s and 4 min to close
        assertEquals(List.of("60", "450"), times);
    }

    @Test
    void should_still_find_what_the_routine_does_not_close() {
        String open = BENCH.replace("condition Cover", "condition Strap { off, worn } starts off ends off condition Cover") + """
                do Wear "Wear" { sets Strap worn, Cover removed then -> Fine } conclude Fine "Fine" { finds nothing }
                """;

        List<String> left = of("left-open", "closes by CloseUp\n" + open);

        assertEquals(1, left.size(), left.toString());
        assertTrue(left.get(0).contains("Strap worn"), left.toString());
        assertEquals(2, of("left-open", open).size());
    }

    @Test
    void should_take_the_routine_from_the_library_unless_the_procedure_names_its_own() {
        String steps = "do Open \"Open\" { sets Cover removed then -> Fine } conclude Fine \"Fine\" { finds nothing }";
        Map<String, String> house = Map.of("House", "library House \"House\" closes by CloseUp\n" + BENCH);

        Procedure theirs = (Procedure) Texts.document("procedure P \"p\" uses House " + steps, house);
        Procedure own = (Procedure) Texts.document("procedure P \"p\" uses House closes by Shut routine Shut \"Shut\" { exits done do It \"i\" "
                + "{ sets Cover fitted takes 1 s then -> done } } " + steps, house);

        assertEquals(List.of("CloseUp before Fine"), closing(theirs));
        assertEquals(List.of("Shut before Fine"), closing(own));
    }

    @ParameterizedTest
    @ValueSource(strings = {"closes by Nothing", "closes by", "closes", "closes by CloseUp closes by CloseUp"})
    void should_bear_a_closing_that_cannot_be_understood(String closes) {
        List<Finding> found = Texts.findings("procedure P \"p\"\n" + closes + "\n" + BENCH
                + "do Open \"Open\" { sets Cover removed takes 1 s then -> Fine } conclude Fine \"Fine\" { finds nothing }");

        assertTrue(found.stream().anyMatch(finding -> finding.rule().equals("unknown-name") || finding.rule().equals("unreadable-text")),
                found.toString());
    }

    @Test
    void should_bear_a_routine_that_performs_itself_or_has_no_exit() {
        for (String routine : List.of("routine R \"r\" { exits x perform A \"a\" by R { x -> x } }", "routine R \"r\" { do A \"a\" { sets C a then -> A } }",
                "routine R \"r\" { exits x }")) {
            Procedure made = procedure("closes by R condition C { a, b } starts a ends a " + routine
                    + " do B \"b\" { sets C b then -> End } conclude End \"e\" { finds nothing }");
            assertEquals(List.of(), closing(made));
        }
    }

    /** Two thousand small procedures: closing said once, and the same with a step before each conclusion, give the same proofs and times. */
    @ParameterizedTest
    @MethodSource("seeds")
    void should_prove_what_written_out_closing_steps_prove(int seed) {
        for (int round = 0; round < 100; round++) {
            Random random = new Random(seed * 1_000L + round);
            String steps = steps(random);
            Procedure once = procedure("closes by CloseUp\n" + BENCH + steps);
            Procedure spelled = procedure(BENCH + spelled(once, steps));

            assertEquals(findings(spelled), findings(once), () -> steps);
            assertEquals(times(spelled), times(once), () -> steps);
            assertEquals(coverage(spelled), coverage(once), () -> steps);
        }
    }

    static IntStream seeds() {
        return IntStream.range(0, 20);
    }

    private static List<String> findings(Procedure procedure) {
        return new org.faultwright.analysis.checking.Checker().check(procedure).stream()
                .filter(finding -> List.of("left-open", "need-not-established", "path-without-end", "unreachable-step", "unbounded-loop",
                        "step-tells-nothing", "fault-misses-conclusion", "example-fails", "ambiguity-group").contains(finding.rule()))
                .map(finding -> finding.rule() + " " + plain(finding.message())).sorted().toList();
    }

    private static String plain(String words) {
        return words.replace("\"CloseUp\" before \"", "\"Before").replace("CloseUp before ", "Before");
    }

    private static String times(Procedure procedure) {
        TimeStudy times = TimeStudy.in(new Subject(procedure, Optional.empty())).orElseThrow();
        return times.inAll().expected() + " " + times.inAll().worst();
    }

    private static List<String> coverage(Procedure procedure) {
        return ExampleCoverage.of(procedure).untried().stream().map(way -> plain(way.toString())).sorted().toList();
    }

    /** The closing steps as an author would write them, from the arrows that closing was put in for. */
    private static String spelled(Procedure once, String steps) {
        StringBuilder text = new StringBuilder(steps);
        List<org.faultwright.procedure.Name> turned = once.steps().stream().flatMap(step -> step.outcomes().stream())
                .flatMap(outcome -> outcome.target().stream()).filter(name -> name.text().contains(" ")).toList();
        int offset = once.source().content().indexOf(steps);
        turned.stream().sorted((one, other) -> other.at().offset() - one.at().offset()).forEach(name ->
                text.replace(name.at().offset() - offset, name.at().end() - offset, plain(name.text())));
        once.steps().stream().filter(ClosingStep::is).forEach(step -> text.append("perform ").append(plain(step.name().text()))
                .append(" \"Close up\" by CloseUp { closed -> ").append(ClosingStep.written(step.name().text())).append(" }\n"));
        return text.toString();
    }

    private static String steps(Random random) {
        int count = 2 + random.nextInt(5);
        StringBuilder text = new StringBuilder("fault F \"f\" { cases 3 shows S0 a } fault G \"g\" { cases 1 shows S0 b }\n");
        for (int i = 0; i < count; i++) {
            String sets = List.of("", "sets Cover removed", "sets Supply on", "sets Supply off", "sets Cover fitted").get(random.nextInt(5));
            text.append("check S").append(i).append(" \"s\" { ").append(sets).append(" takes ").append(1 + random.nextInt(9)).append(" min a -> ")
                    .append(target(random, i, count)).append(" b -> ").append(target(random, i, count)).append(" }\n");
        }
        return text + "conclude A \"a\" { finds F }\nconclude B \"b\" { finds G }\nexample \"x\" { S0 a ends at A }\n";
    }

    private static String target(Random random, int from, int count) {
        int to = from + 1 + random.nextInt(count - from + 1);
        return to < count ? "S" + to : to == count ? "A" : "B";
    }

    @Test
    void should_make_no_step_of_a_name_that_a_text_could_have() {
        Procedure procedure = procedure("closes by CloseUp\n" + BENCH + "do Open \"o\" { sets Cover removed then -> End } conclude End \"e\" { finds nothing }");

        assertTrue(procedure.steps().stream().anyMatch(ClosingStep::is));
        assertFalse(procedure.writtenSteps().stream().anyMatch(ClosingStep::is));
        assertEquals("End", ClosingStep.written("CloseUp before End"));
        assertEquals("Open", ClosingStep.written("Open"));
        assertTrue(procedure.steps().stream().filter(ClosingStep::is).allMatch(Step.Perform.class::isInstance));
    }
}
