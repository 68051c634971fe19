/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.faultwright.language.parsing.PlainSigns;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a word processor makes of a text is read as it was meant. */
class PlainSignsTest {
    private static final String PLAIN = """
            procedure P "How does it look?"
            check See "Is it \u201Cgood\u201D?" { takes 2 min yes -> Volts no -> End }
            measure Volts "Rail" { temperature expects 25 degC +/- 5 K within -> End outside -> End }
            conclude End "The end" { finds nothing }
            """;

    @Test
    void should_read_arrows_quotation_marks_spaces_and_degrees_of_a_word_processor() {
        String typed = PLAIN.replace("-> Volts", "\u2192 Volts").replace("no -> End", "no\u2192 End").replace("\"How does it look?\"", "\u201EHow does it look?\u201C")
                .replace("\"Rail\"", "\u201CRail\u201D").replace("\"The end\"", "\u00BBThe end\u00AB").replace("2 min", "2\u202Fmin")
                .replace("25 degC", "25\u2009\u00BAC").replace("takes", "\u200Btakes");

        Procedure plain = procedure(PLAIN);
        Procedure read = procedure(typed);

        assertEquals(List.of(), read.problems());
        assertEquals(plain.title(), read.title());
        assertEquals(titles(plain), titles(read));
        assertEquals(arrows(plain), arrows(read));
        assertEquals("Is it \u201Cgood\u201D?", read.steps().get(0).title());
        Step.Measure volts = (Step.Measure) read.steps().get(1);
        assertEquals(((Step.Measure) plain.steps().get(1)).expects().get().limit().value().interval(), volts.expects().get().limit().value().interval());
    }

    private static Procedure procedure(String text) {
        return (Procedure) Reading.document(text);
    }

    private static List<String> titles(Procedure procedure) {
        return procedure.steps().stream().map(Step::title).toList();
    }

    private static List<String> arrows(Procedure procedure) {
        return procedure.steps().stream().flatMap(step -> step.outcomes().stream()).map(outcome -> outcome.key() + outcome.target().get()).toList();
    }

    @Test
    void should_lay_such_a_text_out_without_losing_a_sign() {
        String typed = PLAIN.replace("->", "\u2192").replace("\"Rail\"", "\u201CTwo  spaces\u201D");

        String laid = TextFormatter.format(typed);

        assertTrue(laid.contains("\u201CTwo  spaces\u201D") && laid.contains("\u2192"), laid);
        assertEquals(laid, TextFormatter.format(laid));
        assertEquals(arrows(procedure(typed)), arrows(procedure(laid)));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "expects at most 4,7 kohm | A comma is no decimal point here; write 4.7 kohm.",
        "expects at most 1,000 kohm | A comma is no decimal point here; write 1.000 kohm, or 1000 kohm if it parts thousands.",
        "expects 4,7 kohm .. 5 kohm | A comma is no decimal point here; write 4.7 kohm."})
    void should_say_once_that_a_comma_is_no_decimal_point(String limit, String message) {
        Procedure read = procedure("procedure P \"p\" measure M \"m\" { resistance " + limit + " within -> End anything else -> End } conclude End \"e\" { finds nothing }");

        assertEquals(List.of(message), read.problems().stream().map(ReadingProblem::message).toList());
        assertEquals(2, read.steps().get(0).outcomes().size());
    }

    @Test
    void should_leave_lists_and_formulas_alone() {
        Procedure read = procedure("procedure P \"p\" calculate C \"c\" { value max(1,2) under 3 -> End at least 3 -> End } fault F \"f\" { shows C 2,D x } "
                + "check D \"d\" { x -> End y -> End } conclude End \"e\" { finds nothing }");

        assertEquals(List.of(), read.problems());
        assertEquals(2, read.faults().get(0).shows().size());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"expects at most 5 ohm within -> End above -> Open | above", "low under 5 ohm -> End high at least 5 ohm -> Open | high",
        "expects 4 ohm .. 5 ohm within -> End outside -> Open | outside", "low under 5 ohm -> End anything else -> Open | anything else"})
    void should_take_an_overload_for_a_reading_above_the_range(String outcomes, String key) {
        Procedure read = procedure("procedure P \"p\" measure M \"m\" { resistance " + outcomes + " } conclude End \"e\" { finds nothing } "
                + "conclude Open \"o\" { finds nothing } example \"x\" { M OL ends at Open }");

        Showing.Possible shown = read.examples().get(0).shows().get(0).possible().get(0);
        assertEquals(List.of(), read.problems());
        assertEquals(key, Results.outcome(read.steps().get(0), shown).get().key());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\u201Cnever closed", "\u201E", "\"a \u201C b\" \u201Cc\u201D", "// \u201Ca\u201D\u202F", "/* \u201C", "\u201Ca\\\u201D b\u201D", "\u201Ca \" b\u201D", "\\"})
    void should_keep_the_length_and_what_stands_in_texts_and_remarks(String text) {
        assertEquals(text.length(), PlainSigns.of(text).length());
        assertEquals(PlainSigns.of(text), PlainSigns.of(PlainSigns.of(text)));
        assertTrue(!text.startsWith("//") || PlainSigns.of(text).equals(text));
    }

    @Test
    void should_keep_the_length_whatever_comes() {
        Random random = new Random(7);
        String signs = "\u201C\u201D\u201E\u00AB\u00BB\"\\/*\n a\u202F\u00BA\u2192";
        for (int i = 0; i < 20_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int j = random.nextInt(20); j > 0; j--) {
                text.append(signs.charAt(random.nextInt(signs.length())));
            }
            assertEquals(text.length(), PlainSigns.of(text.toString()).length());
        }
    }
}
