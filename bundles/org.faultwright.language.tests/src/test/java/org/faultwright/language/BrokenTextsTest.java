/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.ReadingProblem;
import org.faultwright.procedure.SourceRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said about a text that is not of the language, where, and what is still read of it. */
class BrokenTextsTest {
    /** A text with the broken words between « and », which are no part of it, and the one sentence expected. */
    static Stream<org.junit.jupiter.params.provider.Arguments> texts() {
        return Stream.of(
                arguments("«»", "This text is empty; begin it with \"procedure\" or \"library\" and a name."),
                arguments("«proc» X", "\"proc\" begins no text of this language; did you mean procedure?"),
                arguments("«hello»", "Expected \"procedure\" or \"library\" and a name at the start of the text."),
                arguments("procedure X check A \"Guard\" «yes» -> A }", "Expected { after \"Guard\"; what belongs to it stands between { and }."),
                arguments("procedure«»", "Expected a name after \"procedure\"."),
                arguments("procedure X check «report» { yes -> B }",
                        "Expected a name after \"check\"; \"report\" is a word of the language and cannot be one."),
                arguments("procedure X «chek» A { yes -> B }",
                        "\"chek\" begins nothing that can stand between declarations; did you mean check?"),
                arguments("procedure X check A { faint «B» good -> C }",
                        "Expected \"->\" and the next step after the outcome \"faint\"."),
                arguments("procedure X check A { yes -> «}»", "Expected the name of the next step after \"->\"."),
                arguments("procedure X check A { take 3 min «yes» -> B }",
                        "Expected \"->\" and the next step after the outcome \"take 3 min\"; or did you mean \"takes\"?"),
                arguments("procedure X check A { takes 3 yes «->» B }", "Expected a result before ->, as \"yes\" was read as the unit of 3;"
                        + " write the unit after the number, as in 24 V."),
                arguments("procedure X check A { takes «yes» -> B }",
                        "Expected a number with its unit, as in 24 V, after \"takes\"."),
                arguments("procedure X check A { yes«→»B }", "An arrow is written -> here."),
                arguments("procedure X check A { yes -> B«;» no -> C }", "Nothing ends with ; here; delete it."),
                arguments("procedure X check A «“»how? { yes -> B }",
                        "Quotation marks are written straight here: \" before and behind the text."),
                arguments("procedure X check A «\"how? { yes -> B }»\n",
                        "The quotation mark that opens here is not closed; put one at the end of the text in this line."),
                arguments("procedure X «/*» check A { yes -> B }", "This comment is not closed; put */ at its end."),
                arguments("procedure X check A { yes -> B«»",
                        "The text ends before the check A is closed; put a } at its end."),
                arguments("procedure X measure M { dc voltage at He«»",
                        "The text ends before the measure M is closed; put a } at its end."),
                arguments("procedure X check A { yes -> B\n«check» C { no -> D }",
                        "This \"check\" begins before the check A is closed; put a } before it."),
                arguments("procedure X check A { yes -> B } «}» check C { no -> D }", "This } closes nothing; delete it."),
                arguments("procedure X check A { tools «pen» yes -> B }",
                        "Expected a text in quotation marks after \"tools\"; write \"pen\"."),
                arguments("procedure X measure M { «expects» 5 V below -> X }",
                        "Expected what is read, such as dc voltage or resistance, after \"{\"."),
                arguments("procedure X measure M { dc voltage using «expects» 5 V +/- 1 % below -> X }",
                        "Expected the name of an instrument after \"using\"."),
                arguments("procedure X measure M { dc voltage expects «5 V» below -> X }", "\"5 V\" alone is no limit; write 5 V +/- a"
                        + " tolerance, or 5 V .. and the upper end, or at most or at least before it."),
                arguments("procedure X measure M { dc voltage «>» 5 V -> X }", "Write over or at least instead of >."),
                arguments("procedure X measure M { «dc voltge» at P yes -> X }",
                        "\"dc voltge\" is no quantity that can be measured here; did you mean dc voltage?"),
                arguments("procedure X measure M { «voltage» at P yes -> X }",
                        "Say which voltage is meant: dc voltage, ac voltage rms or ac voltage peak."),
                arguments("procedure X do A { then -> B at most 2 times «}»", "Expected \"else\" after \"times\"."),
                arguments("procedure X do A { then -> B at most «0» times, else C }",
                        "The number of times is a whole number from 1 to 1000000; write one instead of \"0\"."),
                arguments("procedure X conclude C { finds «}»", "Expected nothing or the name of a fault after \"finds\"."),
                arguments("procedure X fault F { shows A «}»",
                        "Expected what the step shows: a result word, a code or a reading, after \"A\"."),
                arguments("procedure X calculate D { value (A + «expects» at most 5 V within -> X }",
                        "Expected the name of an earlier step, a number or ( after \"+\"."),
                arguments("procedure X revision 4 «dated» 2026-01-31", "Expected draft, reviewed or released after \"4\"."),
                arguments("procedure X revision 4 «finished»",
                        "\"finished\" is no status of a revision; write one of draft, reviewed or released."),
                arguments("procedure X revision 4 draft dated «2026-02-30»",
                        "\"2026-02-30\" is no day of the calendar; write year, month and day as in 2026-01-31."),
                arguments("procedure X «decision rule risk 60 %»", "A rule for readings near a limit is simple, guarded or risk with a share"
                        + " above 0 % and up to 50 %; write one of these, as in decision rule risk 2 %."),
                arguments("procedure X part P hazards «shok»", "\"shok\" is no hazard that the language knows; write one of shock, charge,"
                        + " heat, battery, motion, light, chemical, weight, pressure, static or data."),
                arguments("procedure X note N «{» hazard \"x\" }",
                        "Expected a signal word (danger, warning, caution or notice) after \"N\"."),
                arguments("procedure X note N «peril» { hazard \"x\" }",
                        "\"peril\" is no signal word; write one of danger, warning, caution or notice."),
                arguments("procedure X condition C { on «off» }",
                        "\"off\" does not belong in the condition C; correct it or delete it, or put the } that closes the condition C before it."),
                arguments("procedure X instrument I { dc voltage «6» V }", "Expected \"up\" after \"voltage\"."),
                arguments("procedure X instrument I { «dc voltage up to 6 V» }",
                        "This range has no resolution; write the value of its last digit, as in resolution 1 mV."),
                arguments("procedure X measure M { resistance expects at most 5 degC on «Pt50» within -> X }", "\"Pt50\" is no sensor with a"
                        + " standard characteristic; write one of Pt100, Pt500, Pt1000, B, E, J, K, N, R, S, T."),
                arguments("library L «check» A { yes -> B }",
                        "A library holds declarations and routines only; put this check into a procedure."),
                arguments("procedure X «procedure» Y",
                        "One file holds one procedure or one library; put this one into a file of its own."),
                arguments("procedure X check A { yes -> B } «\uFFFD»", "\"\uFFFD\" begins nothing that can stand between declarations;"
                        + " correct it or delete it."));
    }

    @ParameterizedTest
    @MethodSource("texts")
    void should_say_in_one_sentence_what_is_wrong_where(String marked, String sentence) {
        int from = marked.indexOf('«');
        int to = marked.indexOf('»') - 1;
        Document document = Reading.document(marked.replace("«", "").replace("»", ""));

        assertEquals(sentence, document.problems().stream().map(ReadingProblem::message).findFirst().orElse("nothing"));
        SourceRange at = document.problems().get(0).at();
        assertEquals(from + " to " + to, at.offset() + " to " + at.end(), "place");
        assertEquals(1, document.problems().size(), document.problems().toString());
    }

    @Test
    void should_read_on_behind_a_broken_place() {
        Procedure procedure = Reading.procedure("""
                chek One { yes -> Two }
                check Two "two" {
                    takes soon
                    yes ->
                    no -> Three
                }
                } stray
                measure Three "three" { dc voltage expects 5 V below -> Four }
                check Four "four" { ; yes -> Five }
                conclude Five "five" { finds nothing }
                """);

        assertEquals(List.of("Two", "Three", "Four", "Five"), procedure.steps().stream().map(step -> step.name().text()).toList());
        assertEquals(List.of(2, 4, 8, 9, 10), procedure.problems().stream().map(problem -> problem.at().line()).toList());
        assertEquals("yes", procedure.steps().get(2).outcomes().get(0).key());
    }

    /** A key hit by mistake at the top empties neither outline nor card. */
    @ParameterizedTest
    @ValueSource(strings = {"x", "x ", "x\n", "}\n", "\"\n", "7 "})
    void should_lose_nothing_for_a_stray_letter_before_the_first_line(String stray) {
        Document document = Reading.document(stray + "procedure Lamp \"Lamp dark\"\n\nbegin at Look\n\ncheck Look \"Dark?\" { yes -> End }\n"
                + "conclude End \"Done\" { finds nothing }\n");

        assertEquals(List.of("Look", "End"), document.graphs().get(0).steps().stream().map(step -> step.name().text()).toList());
        assertEquals(1, document.problems().size(), document.problems().toString());
        assertEquals(1, document.problems().get(0).at().line());
    }

    @Test
    void should_see_that_an_arrow_leads_nowhere_yet() {
        Procedure procedure = Reading.procedure("""
                check One "one ->" { // not ->
                    yes ->
                    no -> /* later ->
                    */ Two
                    unsure  ->
                    never -> Three
                }""");

        assertEquals(List.of("yes", "no", "unsure", "never"), procedure.steps().get(0).outcomes().stream().map(o -> o.key()).toList());
        assertEquals(List.of(false, true, false, true), procedure.steps().get(0).outcomes().stream().map(o -> o.target().isPresent())
                .toList());
        assertEquals(List.of("3:11", "6:15"), procedure.problems().stream().map(p -> p.at().line() + ":" + p.at().column()).toList());
    }

    @Test
    void should_give_missing_names_a_place_of_no_length() {
        Procedure procedure = Reading.procedure("check { yes -> B } do A { sets Supply");

        assertEquals("", procedure.steps().get(0).name().text());
        assertEquals(0, procedure.steps().get(0).name().at().length());
        assertEquals("", procedure.steps().get(1).frame().sets().get(0).value().text());
    }

    @Test
    void should_make_an_empty_procedure_of_a_text_that_is_none() {
        Procedure nothing = assertInstanceOf(Procedure.class, Reading.document("Dear customer, your printer is ready."));

        assertEquals("", nothing.name().text());
        assertEquals(List.of(), nothing.steps());
        assertEquals(1, nothing.problems().size());
    }

    @Test
    void should_tell_a_broken_library_from_a_broken_procedure() {
        assertInstanceOf(Library.class, Reading.document("library"));
        assertInstanceOf(Procedure.class, Reading.document("procedure 5"));
    }

    @Test
    void should_stop_counting_problems_where_nobody_reads_on() {
        Procedure procedure = Reading.procedure("check A {\nyes ->\n}\n".repeat(500));

        assertEquals(101, procedure.problems().size());
        assertEquals("400 more places from here on could not be read; mend the first ones and check again.",
                procedure.problems().get(100).message().replaceFirst("^\\d+", "400"));
    }

    /** The words of the language and what stands between them, from which broken texts are put together. */
    private static final String SKETCH = Reading.resource("OllenbyFaintLabels.procedure");

    @Test
    void should_read_the_sketch_cut_off_anywhere() {
        for (int end = 0; end < SKETCH.length(); end += 7) {
            check(SKETCH.substring(0, end));
        }
    }

    @Test
    void should_read_the_sketch_with_a_word_missing_or_doubled_anywhere() {
        List<String> words = Stream.of(SKETCH.split("(?<=\\s)|(?=\\s)")).toList();
        Random random = new Random(20260131);
        for (int i = 0; i < 400; i++) {
            List<String> changed = words.stream().collect(Collectors.toList());
            for (int times = 1 + random.nextInt(4); times > 0; times--) {
                int at = random.nextInt(changed.size());
                if (random.nextBoolean()) {
                    changed.remove(at);
                } else {
                    changed.add(at, words.get(random.nextInt(words.size())));
                }
            }
            check(String.join("", changed));
        }
    }

    @Test
    void should_read_the_sketch_with_any_sign_anywhere() {
        Random random = new Random(42);
        for (int i = 0; i < 400; i++) {
            StringBuilder changed = new StringBuilder(SKETCH);
            for (int times = 1 + random.nextInt(5); times > 0; times--) {
                int at = random.nextInt(changed.length());
                changed.replace(at, at + random.nextInt(3), Character.toString(random.nextInt(random.nextInt(10) == 0 ? 0x3000 : 0x80)));
            }
            check(changed.toString());
        }
    }

    private static void check(String text) {
        Document document = Reading.document(text);
        DocumentMeaning.ranges(document).forEach(range -> assertFalse(range.offset() < 0 || range.end() > text.length(), range.toString()));
        document.problems().forEach(problem -> assertFalse(problem.message().isBlank() || problem.message().contains("RULE_")
                || problem.message().contains("Exception"), problem.message()));
        assertEquals(DocumentMeaning.of(document), DocumentMeaning.of(Reading.document(TextFormatter.format(text))), "laid out");
    }
}
