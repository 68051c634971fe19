/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.order.OrderStudy;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExamplesTest {
    private static final String TIMER = """
            procedure Timer "Timer does not switch off"
            indicator Lamp "Lamp" { 3 blinks means "Hot" "E 05" means "Lost" }
            fault Relay "Relay stuck" { shows Click no }
            begin at Click
            check Click "Does the relay click?" { takes 1 min yes -> Code no -> Ohms }
            observe Code "Code" at Lamp { takes 1 min 3 blinks -> Click "E 05" -> Lost none -> Cool anything else -> Passed }
            do Cool "Let it cool" { takes 10 min then -> Click at most 1 times, else Passed }
            measure Ohms "Coil" { resistance takes 4 min under 60 ohm -> Bad 60 ohm .. 80 ohm -> Bad high over 80 ohm -> Passed }
            conclude Bad "Relay bad" { finds Relay }
            conclude Lost "Lost" { finds nothing }
            conclude Passed "Passed on" { refers to "the timer bench" }
            """;

    private static ExampleRun run(String example) {
        return ExampleCoverage.of(Texts.procedure(TIMER + "example \"One\" " + example)).runs().get(0);
    }

    private static String path(ExampleRun run) {
        return String.join(", ", run.path().stream().map(Object::toString).toList());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            { Click no, Ohms 71 ohm ends at Bad }                          | Click (no), Ohms (60 ohm .. 80 ohm), Bad
            { Click no, Ohms 0.02 kohm ends at Bad }                       | Click (no), Ohms (under 60 ohm), Bad
            { Click no, Ohms high ends at Passed }                         | Click (no), Ohms (high), Passed
            { Click yes, Code "E 05" ends at Lost }                        | Click (yes), Code (E 05), Lost
            { Click yes, Code 9 blinks ends at Passed }                    | Click (yes), Code (anything else), Passed
            { Click yes, Code 3 blinks, Click no, Ohms 1 kohm }            | Click (yes), Code (3 blinks), Click (no), Ohms (high), Passed
            { Click yes, Code none, Click yes, Code none ends at Passed }  | Click (yes), Code (none), Cool (done), Click (yes), Code (none), Cool (done), Passed
            { Click yes, Code none, Cool done, Click no, Ohms high ends at Passed } | Click (yes), Code (none), Cool (done), Click (no), Ohms (high), Passed
            """)
    void should_go_the_way_that_is_said(String example, String path) {
        ExampleRun run = run(example);

        assertEquals(path, path(run));
        assertTrue(run.passes(), run.problem().toString());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            { Click no ends at Bad }                                       | NOTHING_SAID   | Ohms
            { Click maybe ends at Bad }                                    | UNKNOWN_RESULT | Click
            { Click no, Ohms high ends at Bad }                            | OTHER_END      | Passed
            { Click no, Ohms 70 ohm, Code none ends at Bad }               | NEVER_ASKED    | Code
            { Click no, Click no, Ohms 70 ohm ends at Bad }                | NEVER_ASKED    | Click
            of Relay { Click no, Ohms high ends at Passed }                | OTHER_FAULT    | Passed
            """)
    void should_say_where_the_way_leaves_what_was_said(String example, ExampleRun.Failure failure, String step) {
        ExampleRun.Problem problem = run(example).problem().orElseThrow();

        assertEquals(failure, problem.failure());
        assertEquals(step, problem.step().orElseThrow().name().text());
    }

    @Test
    void should_add_up_the_times_of_the_steps() {
        assertEquals("17 min", PrintedNumbers.minutes(run("{ Click yes, Code none, Click no, Ohms high }").time()));
    }

    @Test
    void should_stop_where_a_way_goes_round_for_ever() {
        ExampleRun run = ExampleCoverage.of(Texts.procedure("""
                procedure P "P"
                do A "A" { then -> B }
                do B "B" { then -> A }
                conclude C "C" { finds nothing }
                example "Round" { ends at C }
                """)).runs().get(0);

        assertEquals(ExampleRun.Failure.NO_END, run.problem().orElseThrow().failure());
    }

    @Test
    void should_count_what_examples_take() {
        ExampleCoverage coverage = ExampleCoverage.of(Texts.procedure(TIMER + """
                example "One" { Click no, Ohms 71 ohm ends at Bad }
                example "Two" { Click yes, Code "E 05" ends at Lost }
                """));

        assertEquals(List.of("Click yes", "Click no", "Code E 05", "Ohms 60 ohm .. 80 ohm"),
                coverage.tried().stream().map(Object::toString).toList());
        assertEquals(List.of("Code 3 blinks", "Code none", "Code anything else", "Ohms under 60 ohm", "Ohms high"),
                coverage.untried().stream().map(Object::toString).toList());
        assertEquals(List.of("Passed"), coverage.unreached().stream().map(c -> c.name().text()).toList());
    }

    /** What is proposed is read again, goes as it says, and leaves nothing untried; of the demo's form with codes and bands. */
    @Test
    void should_propose_examples_that_leave_nothing_untried() {
        Procedure timer = Texts.procedure(TIMER);
        String text = timer.source().content() + String.join("", MissingExamples.texts(timer, ExampleCoverage.of(timer)));

        Procedure tried = Texts.procedure(text);

        assertEquals(List.of(), tried.problems());
        ExampleCoverage coverage = ExampleCoverage.of(tried);
        assertTrue(coverage.isComplete(), coverage.untried().toString());
        assertEquals(List.of(), coverage.runs().stream().filter(run -> !run.passes()).map(run -> run.problem().get()).toList());
        assertTrue(tried.examples().size() <= 6, tried.examples().size() + " examples for 9 outcomes");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            { Click no ends at Bad }                         | Say "Ohms 54 Ω"; Say "Ohms 60 ohm"
            { Click no, Ohms 70 ohm, Code none ends at Bad } | Leave out "Code none"
            { Click no, Ohms high ends at Bad }              | End at "Passed"
            { ends at Lost }                                 | ''
            """)
    void should_repair_an_example_by_what_has_been_tried(String example, String titles) {
        String text = TIMER + "example \"One\" " + example + "\n";
        List<Finding> found = Texts.findings("example-fails", text);
        List<Fix> fixes = found.get(0).fixes();
        assertEquals(titles, String.join("; ", fixes.stream().map(Fix::title).toList()));
        for (Fix fix : fixes) {
            assertEquals(List.of(), Texts.findings("example-fails", fix.applied()), fix.applied());
            assertEquals(List.of(), Texts.procedure(fix.applied()).problems(), fix.applied());
        }
    }

    @Test
    void should_have_nothing_to_say_of_a_library() {
        Subject subject = new Subject(Texts.library("library L \"L\""), Optional.empty());

        assertTrue(ExampleCoverage.in(subject).isEmpty());
        assertTrue(FaultWalks.in(subject).isEmpty() && TimeStudy.in(subject).isEmpty() && OrderStudy.in(subject).isEmpty());
    }

    /** A charge shows with either sign, as the probes are held (common practice). */
    @ParameterizedTest
    @CsvSource({"3 V, at most 5 V, Gone", "-3 V, at most 5 V, Gone", "40 V, at most 5 V, Still", "-40 V, at most 5 V, Still", "-3 V, -5 V .. 5 V, Gone"})
    void should_take_a_voltage_of_either_sign_for_a_charge(String reading, String limit, String end) {
        String text = """
                procedure P "P"
                condition Charge { present, absent } charged when present proved at Bank
                point Bank "Bank" carries up to 400 V dc
                measure Volts "Volts" { dc voltage at Bank LIMIT -> Gone proves Charge absent over 5 V -> Still }
                conclude Gone "Gone" { finds nothing }
                conclude Still "Still" { finds nothing }
                example "One" { Volts READING ends at END }
                """.replace("READING", reading).replace("LIMIT", limit).replace("END", end);

        assertTrue(ExampleCoverage.of(Texts.procedure(text)).runs().get(0).passes());
    }
}
