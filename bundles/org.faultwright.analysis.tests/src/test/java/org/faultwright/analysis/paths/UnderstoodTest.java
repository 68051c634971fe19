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
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.analysis.compare.ProcedureComparison;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a text leaves to be understood, held against the same text with all of it written out. */
class UnderstoodTest {
    private static final String HEAD = "procedure P \"p\"\notherwise Refer\n";
    private static final String BENCH = """
            indicator Lamp "Lamp" { 2 blinks means "Too hot" 3 blinks means "Too cold" }
            routine Try "Try it" { exits good normal, bad %s check Ask "?" { verifies repair takes 1 min yes -> good no -> bad } }
            """;
    private static final String FAULTS = """
            fault Worn "Worn" { shows See dark, Volts below remedy Mend }
            fault Burnt "Burnt" { shows See dark or dim, Blinks 2 blinks remedy Mend }
            """;
    private static final String ENDS = """
            conclude WornOut { finds Worn }
            conclude BurntOut { finds Burnt }
            conclude Fine "Fine" { finds nothing }
            conclude Refer "Referred" { refers to "Bench" }
            """;
    private static final String SHORT = HEAD + BENCH.formatted("takes 5 min") + FAULTS + """
            check See "?" { light normal -> Fine dark -> Volts dim -> Blinks }
            measure Volts "V" { dc voltage expects 5 V +/- 5 % below -> Mend within -> Blinks }
            observe Blinks "B" at Lamp { 2 blinks -> Other }
            do Mend "Mend" { then -> Tried }
            perform Tried by Try { good -> WornOut }
            do Other "Other" { then -> TriedOther }
            perform TriedOther by Try { good -> BurntOut }
            """ + ENDS + """
            example "Worn out" of Worn {
                within 20 min
                but "Not that" Tried bad
                but "Too many volts" Volts 6 V
                but "Both" of Burnt Volts 5 V
            }
            example "Burnt" of Burnt { See dim }
            example "Sound" { ends at Fine }
            """;
    private static final String LONG = "procedure P \"p\"\n" + BENCH.formatted("") + FAULTS + """
            check See "?" { light normal -> Fine dark -> Volts dim -> Blinks }
            measure Volts "V" { dc voltage expects 5 V +/- 5 % below -> Mend within -> Blinks above -> Refer }
            observe Blinks "B" at Lamp { 2 blinks -> Other anything else -> Refer }
            do Mend "Mend" { then -> Tried }
            perform Tried "Try it" by Try { takes 5 min good -> WornOut bad -> Refer }
            do Other "Other" { then -> TriedOther }
            perform TriedOther "Try it" by Try { takes 5 min good -> BurntOut bad -> Refer }
            """ + ENDS.replace("WornOut {", "WornOut \"Worn out\" {").replace("BurntOut {", "BurntOut \"Burnt out\" {") + """
            example "Worn out" of Worn { See dark, Volts below ends at WornOut within 20 min }
            example "Not that" { See dark, Volts below, Tried bad ends at Refer }
            example "Too many volts" { See dark, Volts 6 V ends at Refer }
            example "Both" of Burnt { See dark, Volts 5 V, Blinks 2 blinks ends at BurntOut }
            example "Burnt" of Burnt { See dim, Blinks 2 blinks ends at BurntOut }
            example "Sound" { ends at Fine }
            """;

    private static Procedure procedure(String text) {
        return (Procedure) Texts.document(text, Map.of());
    }

    private static List<String> rules(String text) {
        return Texts.findings(text).stream().map(Finding::rule).sorted().toList();
    }

    @Test
    void should_mean_what_the_same_text_written_out_means() {
        List<Difference> differences = ProcedureComparison.of(procedure(LONG), procedure(SHORT));

        assertEquals(List.of(), differences);
        assertEquals(List.of(), ProcedureComparison.of(procedure(SHORT), procedure(LONG)));
    }

    @Test
    void should_find_in_it_what_is_found_in_the_text_written_out() {
        assertEquals(rules(LONG), rules(SHORT));
        assertFalse(rules(SHORT).contains("example-fails"), rules(SHORT).toString());
    }

    @Test
    void should_find_a_variation_that_goes_another_way() {
        List<Finding> found = Texts.findings(SHORT.replace("Volts 6 V", "Volts 4 V")).stream().filter(one -> one.rule().equals("example-fails")).toList();

        assertEquals(1, found.size());
        assertTrue(found.get(0).message().contains("\"Too many volts\" ends at \"WornOut\", not at \"Refer\""), found.get(0).message());
    }

    @Test
    void should_tell_a_variation_that_its_path_does_not_come_there() {
        List<Finding> found = Texts.findings(SHORT.replace("Tried bad", "Tried bad, Blinks 3 blinks")).stream()
                .filter(one -> one.rule().equals("example-fails")).toList();

        assertEquals(List.of("The example \"Not that\" says what \"Blinks\" shows, and its path does not come there."),
                found.stream().map(Finding::message).toList());
    }

    @ParameterizedTest
    @ValueSource(strings = {"otherwise Fine", "otherwise WornOut", "otherwise Mend"})
    void should_lead_nothing_to_a_conclusion_that_claims_something(String otherwise) {
        List<String> found = rules(SHORT.replace("otherwise Refer", otherwise));

        assertTrue(found.contains("otherwise-claims"), found.toString());
        assertTrue(found.contains("outcomes-incomplete"), found.toString());
    }

    @ParameterizedTest
    @ValueSource(strings = {"otherwise", "otherwise Nobody", "otherwise otherwise", "otherwise Refer otherwise Refer", "otherwise {"})
    void should_bear_an_otherwise_that_cannot_be_understood(String otherwise) {
        List<String> found = rules(SHORT.replace("otherwise Refer", otherwise));

        assertTrue(found.contains("unknown-name") || found.contains("unreadable-text"), found.toString());
    }

    /** What a sound unit shows is never meant without being said, nor is anything where nothing is said yet. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "below -> Mend within -> Blinks } | below -> Mend } conclude Between { finds nothing } | outcomes-incomplete",
            "{ good -> WornOut } | { bad -> Refer } | outcomes-incomplete",
            "{ good -> WornOut } | { } | empty-outcomes",
            "exits good normal, bad | exits good, bad | outcomes-incomplete"})
    void should_not_guess_what_a_sound_unit_shows(String was, String is, String rule) {
        List<String> found = rules(SHORT.replace(was, is));

        assertTrue(found.contains(rule), found.toString());
    }

    @Test
    void should_bear_examples_that_go_round_for_ever_or_stand_alone() {
        Procedure round = procedure(HEAD + "check A \"?\" { yes -> B no -> Refer } do B \"b\" { then -> A } conclude Refer \"r\" { refers to \"x\" } "
                + "fault F \"f\" { shows A yes } example \"e\" of F { but \"\" but \"x\" A no, A no but \"y\" of G B then ends at Nowhere }");

        assertEquals(List.of("e", "", "x", "y"), round.examples().stream().map(example -> example.title().text()).toList());
        assertEquals(List.of(), procedure(HEAD + "example \"e\" { but").steps());
    }

    @Test
    void should_put_what_is_understood_where_nothing_stands() {
        Procedure procedure = procedure(SHORT);
        Step volts = procedure.writtenSteps().get(1);

        assertEquals(List.of("below", "within", "above"), volts.outcomes().stream().map(outcome -> outcome.key()).toList());
        assertTrue(volts.outcomes().get(2).isUnderstood());
        assertEquals(0, volts.outcomes().get(2).target().get().at().length());
        Example variation = procedure.examples().get(1);
        assertEquals("Tried bad", variation.written().stream().map(showing -> showing.at().text()).collect(Collectors.joining(", ")));
        assertEquals(3, variation.shows().size());
        assertTrue(variation.writtenEnd().isEmpty());
    }

    // ---- an arrow to a fault

    /** The same procedure once more: its two conclusions of one fault are not written out. */
    private static final String ARROWS = SHORT.replace("WornOut", "Worn").replace("BurntOut", "Burnt")
            .replace("conclude Worn { finds Worn }\nconclude Burnt { finds Burnt }\n", "");
    private static final String OUT = ARROWS + "conclude Worn \"Worn\" { finds Worn report \"Worn. Repaired and tried.\" }\n"
            + "conclude Burnt \"Burnt\" { finds Burnt report \"Burnt. Repaired and tried.\" }\n";

    private static Step.Conclude end(String text, String name) {
        return procedure(text).steps().stream().filter(step -> step.name().text().equals(name)).map(Step.Conclude.class::cast).findFirst().orElseThrow();
    }

    private static Optional<String> report(String text, String name) {
        return end(text, name).report().map(Written::value);
    }

    @Test
    void should_understand_an_arrow_to_a_fault_as_the_conclusion_that_finds_it() {
        assertTrue(ARROWS.length() < SHORT.length());
        assertEquals(List.of(), ProcedureComparison.of(procedure(OUT), procedure(ARROWS)));
        assertEquals(List.of(), ProcedureComparison.of(procedure(ARROWS), procedure(OUT)));
        assertEquals(rules(OUT), rules(ARROWS));
        assertEquals(rules(SHORT), rules(ARROWS));
    }

    @Test
    void should_see_no_change_of_meaning_where_a_conclusion_of_another_name_is_no_longer_written_out() {
        String written = SHORT.replace("WornOut {", "WornOut \"Worn\" { report \"Worn. Repaired and tried.\"")
                .replace("BurntOut {", "BurntOut \"Burnt\" { report \"Burnt. Repaired and tried.\"");

        assertEquals(List.of(), ProcedureComparison.of(procedure(written), procedure(ARROWS)));
        assertEquals(List.of(), ProcedureComparison.of(procedure(ARROWS), procedure(written)));
        assertEquals(1, ProcedureComparison.of(procedure(written.replace("Worn. Repaired", "Worn out. Repaired")), procedure(ARROWS)).size());
    }

    @Test
    void should_tell_the_customer_what_the_fault_says_else_its_title() {
        String said = ARROWS.replace("fault Worn \"Worn\" {", "fault Worn \"Worn\" { report \"The brush was worn. New brush.\"");

        assertEquals(Optional.of("The brush was worn. New brush."), report(said, "Worn"));
        assertEquals(Optional.of("Worn. Repaired and tried."), report(ARROWS, "Worn"));
        assertEquals(Optional.of("Worn. Found."), report(ARROWS.replace("Volts below remedy Mend", "Volts below"), "Worn"));
        assertEquals(Optional.of("Worn?"), Optional.of(end(ARROWS.replace("\"Worn\"", "\"Worn?\""), "Worn").title()));
        assertEquals(Optional.of("Worn. Repaired and tried."), report(ARROWS.replace("\"Worn\"", "\"Worn?\""), "Worn"));
        assertEquals("Worn", end(ARROWS.replace("fault Worn \"Worn\"", "fault Worn \"\""), "Worn").title());
    }

    @Test
    void should_give_a_written_conclusion_of_one_fault_the_report_of_the_fault() {
        String said = SHORT.replace("fault Worn \"Worn\" {", "fault Worn \"Worn\" { report \"New brush.\"");

        assertEquals(Optional.of("New brush."), report(said, "WornOut"));
        assertEquals(Optional.empty(), report(SHORT, "WornOut"));
        assertEquals(Optional.empty(), report(said.replace("{ finds Worn }", "{ finds Worn, Burnt }"), "WornOut"));
        assertEquals(Optional.of("Own."), report(said.replace("{ finds Worn }", "{ finds Worn report \"Own.\" }"), "WornOut"));
    }

    @Test
    void should_lead_to_the_step_where_a_step_has_the_name_of_a_fault() {
        String both = ARROWS.replace("conclude Fine", "conclude Worn \"Own\" { finds Burnt }\nconclude Fine");

        assertEquals(List.of("Burnt"), end(both, "Worn").finds().stream().map(Object::toString).toList());
        assertFalse(rules(both).contains("duplicate-name"), rules(both).toString());
    }

    @Test
    void should_conclude_only_what_an_arrow_of_the_procedure_leads_to() {
        assertTrue(procedure(ARROWS.replace("good -> Worn", "good -> Fine")).steps().stream().noneMatch(step -> step.name().text().equals("Worn")));
        assertTrue(rules(ARROWS.replace("good -> Worn", "good -> Fine")).contains("fault-never-concluded"));
        // a routine has exits and does not conclude
        assertTrue(rules(ARROWS.replace("yes -> good", "yes -> Worn")).contains("unknown-name"));
        assertTrue(rules(ARROWS.replace("otherwise Refer", "otherwise Burnt")).contains("unknown-name"));
        assertTrue(rules(ARROWS + "example \"x\" { ends at Nobody }").contains("unknown-name"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fault { } check A \"?\" { yes -> no -> }", "fault F \"f\" { report } check A \"?\" { yes -> F no -> F }",
        "fault F \"f\" { report \"a\" report \"b\" } check A \"?\" { yes -> F no -> F }", "fault F { } fault F { } check A \"?\" { yes -> F no -> F }",
        "fault F \"\\\"<b>\" { report \"&\" } do F \"f\" { then -> F }", "begin at F fault F { }", "fault F { remedy F } do A \"a\" { then -> F at most 2 times, else F }"})
    void should_bear_faults_that_cannot_be_led_to(String text) {
        Procedure procedure = procedure("procedure P \"p\"\n" + text);

        assertEquals(procedure.steps().size(), procedure.steps().stream().map(step -> step.name().text()).distinct().count());
        assertFalse(rules("procedure P \"p\"\n" + text).isEmpty());
    }

    @Test
    void should_put_the_conclusion_of_a_fault_where_nothing_stands_and_its_name_where_the_fault_has_it() {
        Procedure procedure = procedure(ARROWS);
        Step end = procedure.step(procedure.faults().get(0).name()).orElseThrow();

        assertTrue(end.isUnderstood());
        assertEquals(procedure.faults().get(0).name(), end.name());
        assertFalse(procedure.writtenSteps().contains(end));
        assertTrue(procedure.namedSteps().contains(end));
        assertEquals(Optional.of(end), procedure.stepAt(procedure.faults().get(0).at().offset() + 3));
    }
}
