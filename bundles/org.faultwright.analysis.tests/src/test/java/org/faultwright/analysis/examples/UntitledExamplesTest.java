/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.steps.StepChange;
import org.faultwright.analysis.steps.StepEdits;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** An example that has no title of its own is called by what it says. */
class UntitledExamplesTest {
    private static final String STEPS = """
            procedure P "p"
            otherwise Refer
            indicator Lamp "lamp" { 2 blinks means "two" source "s" dated 2025-01-01 }
            fault Worn "Worn out" { shows See dark remedy Mend }
            check See "?" { light normal -> Ready dark -> Blinks }
            check Ready "Ready?" { yes normal -> Fine no -> Refer }
            observe Blinks "B" at Lamp { 2 blinks -> Refer none normal -> Mend }
            do Mend "Mend" { then -> Tried }
            check Tried "Good?" { yes normal -> WornOut no -> Refer }
            conclude WornOut { finds Worn }
            conclude Fine "Fine" { finds nothing }
            conclude Refer "Referred" { refers to "Bench" }
            """;

    private static Procedure read(String examples) {
        return (Procedure) Texts.document(STEPS + examples, Map.of());
    }

    private static List<String> titles(String examples) {
        return read(examples).examples().stream().map(example -> example.title().text()).toList();
    }

    private static List<Finding> found(String rule, String examples) {
        return Texts.findings(STEPS + examples).stream().filter(one -> one.rule().equals(rule)).toList();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', value = {
            "but Tried no | Old lamp, but \"Tried\" shows \"no\"",
            "but Blinks 2 blinks, Tried no | Old lamp, but \"Blinks\" shows \"2 blinks\", \"Tried\" shows \"no\"",
            "but of Worn Tried no | Old lamp, but a case of \"Worn\", \"Tried\" shows \"no\"",
            "but See light ends at Fine | Old lamp, but \"See\" shows \"light\", ends at \"Fine\"",
            "but Tried no within 20 min | Old lamp, but \"Tried\" shows \"no\"",
            "but within 20 min | Old lamp, but within 20 min",
            "but \"Not that\" Tried no | Not that"})
    void should_call_a_variation_by_what_differs(String variation, String title) {
        assertEquals(List.of("Old lamp", title), titles("example \"Old lamp\" of Worn { " + variation + " }"));
    }

    @Test
    void should_call_a_case_of_a_fault_by_it() {
        assertEquals(List.of("A case of \"Worn\"", "A case of \"Worn\", but \"Tried\" shows \"no\"", "A case of \"Worn\", \"Blinks\" shows \"none\""),
                titles("example of Worn { within 9 min but Tried no } example of Worn { Blinks none }"));
        assertEquals(List.of(), Texts.findings(STEPS + "example of Worn { but Tried no }").stream().map(Finding::rule)
                .filter(rule -> rule.startsWith("example") || rule.equals("unreadable-text") || rule.equals("duplicate-name")).toList());
    }

    @Test
    void should_show_and_end_as_with_a_title() {
        Procedure with = read("example \"a\" of Worn { but \"b\" Tried no but \"c\" of Worn Blinks none within 5 min but \"d\" See light ends at Fine }");
        Procedure without = read("example \"a\" of Worn { but Tried no but of Worn Blinks none within 5 min but See light ends at Fine }");

        assertEquals(with.examples().stream().map(UntitledExamplesTest::said).toList(), without.examples().stream().map(UntitledExamplesTest::said).toList());
        assertTrue(ExampleCoverage.of(without).runs().stream().allMatch(ExampleRun::passes));
    }

    private static List<Object> said(Example example) {
        return List.of(example.variation(), example.of().map(Object::toString), example.endsAt().map(Object::toString), example.within().map(time -> time.value()),
                example.shows().stream().map(showing -> showing.step() + " " + showing.possible().get(0).words()).toList());
    }

    @Test
    void should_tell_which_one_fails() {
        Finding failing = found("example-fails", "example \"Old lamp\" of Worn { but Tried no ends at Fine }").get(0);

        assertEquals("The example (Old lamp, but \"Tried\" shows \"no\", ends at \"Fine\") ends at \"Refer\", not at \"Fine\".", failing.message());
    }

    @Test
    void should_point_at_the_line_of_one_that_stops() {
        Finding stopping = found("negative-amount", "example \"Old lamp\" of Worn {\n but Tried no within -5 min\n}").get(0);

        assertTrue(stopping.message().contains("the example (Old lamp, but \"Tried\" shows \"no\")"), stopping.message());
    }

    @Test
    void should_find_once_what_is_said_twice_and_take_it_out() {
        String twice = "example \"Old lamp\" of Worn {\n    but Tried no\n    // once more\n    but Tried no within 20 min\n    but Blinks 2 blinks\n}\n";
        List<Finding> found = found("duplicate-name", twice);

        assertEquals(List.of("Line 14 says the same: Old lamp, but \"Tried\" shows \"no\"."), found.stream().map(Finding::message).toList());
        assertEquals("but", found.get(0).at().text());
        assertEquals(STEPS + twice.replace("\n    but Tried no within 20 min", ""), found.get(0).fixes().get(0).applied());
    }

    @ParameterizedTest
    @ValueSource(strings = {
            "example \"a\" of Worn { but Tried no } example \"b\" of Worn { but Tried no }",
            "example \"a\" of Worn { but Tried no but \"b\" Tried no }",
            "example \"a\" of Worn { but Tried no but Tried no, Blinks none }",
            "example \"a\" of Worn { but Tried no but of Worn Tried no }"})
    void should_not_take_one_for_another(String examples) {
        assertEquals(List.of(), found("duplicate-name", examples));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '\0', value = {
            "example { Tried no } | An example needs a title, or \"of\" and the fault that it is a case of.",
            "example { } | An example needs a title, or \"of\" and the fault that it is a case of.",
            "example \"a\" of Worn { but } | This \"but\" does not say what differs. Write a step and what it shows behind it, or take it out.",
            "example \"a\" of Worn { but but Tried no } | This \"but\" does not say what differs. Write a step and what it shows behind it, or take it out."})
    void should_say_what_is_missing(String examples, String message) {
        assertEquals(List.of(message), found("unreadable-text", examples).stream().map(Finding::message).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"example", "example of", "example of {", "example of Nobody { but", "example \"a\" { but of", "example \"a\" { but of }", "example \"a\" { but ends }",
            "example \"a\" { but Tried } but", "but Tried no", "example \"\" of Worn { but Tried no but Tried no }", "example \"a \\\"b\\\", but \" of Worn { but Tried \"\\\"\" }",
            "example \"a\" { but but but but but }", "example of of of { but of of of }", "example \"a\" of Worn { but Tried no but", "example of Worn { but Tried no example of Worn {"})
    void should_bear_what_cannot_be_read(String examples) {
        List<Finding> found = Texts.findings(STEPS + examples);

        assertFalse(found.isEmpty());
        assertTrue(found.stream().noneMatch(one -> one.rule().equals("rule-failed")), found.toString());
        found.stream().flatMap(one -> one.fixes().stream()).map(Fix::applied).forEach(Texts::findings);
    }

    @Test
    void should_take_out_a_variation_with_the_step_it_is_about() {
        String examples = "example \"Old lamp\" of Worn {\n    but Tried no\n    but See light, Ready no\n    but Ready no\n    but of Worn Ready no\n}\n";
        String text = STEPS.replace("yes normal -> Fine no -> Refer", "yes normal -> Fine no -> Fine") + examples;
        Procedure one = (Procedure) Texts.document(text, Map.of());
        StepChange change = new StepEdits(one, one).takeOut(one.step(one.steps().get(1).name()).orElseThrow());

        String after = change instanceof StepChange.Offered offered ? offered.fix().applied() : change.toString();
        assertTrue(after.contains("example \"Old lamp\" of Worn {\n    but Tried no\n    but See light\n    but of Worn\n}\n"), after);
        assertEquals(Stream.of("Old lamp", "Old lamp, but \"Tried\" shows \"no\"", "Old lamp, but \"See\" shows \"light\"", "Old lamp, but a case of \"Worn\"").toList(),
                ((Procedure) Texts.document(after, Map.of())).examples().stream().map(example -> example.title().text()).toList());
    }

    @Test
    void should_leave_out_the_whole_variation_where_its_entry_is_never_asked() {
        String examples = "example \"Old lamp\" of Worn {\n    but Ready no\n}\n";
        Finding never = found("example-fails", examples).stream().findFirst().orElseThrow();

        assertTrue(never.message().startsWith("The example (Old lamp, but \"Ready\" shows \"no\")"), never.message());
        never.fixes().forEach(fix -> assertFalse(Texts.findings(fix.applied()).stream().anyMatch(one -> one.rule().equals("unreadable-text")), fix.applied()));
    }
}
