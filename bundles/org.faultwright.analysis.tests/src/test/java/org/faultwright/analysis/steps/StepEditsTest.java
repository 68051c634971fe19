/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.steps;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Remarks;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.steps.NewStep.Kind;
import org.faultwright.analysis.steps.StepChange.Offered;
import org.faultwright.analysis.steps.StepChange.Refused;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StepEditsTest {
    private static final String TEXT = """
            procedure Timer "Kitchen timer"
            // what everybody asks
            complaints "silent"
            routine Try "Try it" {
                exits good normal, bad
                do Wind "Wind it" { takes 5 s then -> Ask }
                check Ask "Does it ring?" { yes normal -> good no -> bad }
            }
            fault Spring "Spring slack" { cases 3 shows Look dark, Shake rattles remedy Tighten }
            fault Dust "Dust" { cases 1 shows Clean done, Look dark }

            begin at Look

            // the lamp first
            check Look "Is the lamp dark?" {
                takes 1 min // at arm's length
                dark       -> Shake
                lit normal -> Fine
            }

            check Shake "Shake it" {
                rattles -> Clean // loose parts
                quiet normal -> Look at most 2 times, else Fine
            }

            // brush, no air
            do Clean "Brush it" {
                /* never */ // with water
                then -> Tighten
            } // it takes a while

            do Tighten "Turn the screw" { then -> TryIt }
            perform TryIt "Try it" by Try { good -> Mended bad -> Fine }
            conclude Mended "Mended" { finds Spring }
            conclude Fine "Nothing found" { finds nothing }
            conclude Lonely "Nobody comes here" { finds Dust }

            example "Shaken" of Spring { Look dark, Shake rattles, Clean done, TryIt good ends at Mended }
            example "Only" of Dust { Clean done ends at Fine }
            """;

    private static Document document(String text) {
        Document document = Texts.document(text);
        assertEquals(List.of(), document.problems());
        return document;
    }

    private static StepChange asked(Document document, String graph, String what, String step, String... rest) {
        StepGraph of = document.graphs().stream().filter(one -> one.name().text().equals(graph)).findFirst().orElseThrow();
        Step at = of.steps().stream().filter(one -> one.name().text().equals(step)).findFirst().orElseThrow();
        StepEdits edits = new StepEdits(document, of);
        return switch (what) {
            case "turn" -> edits.turn(at, Integer.parseInt(rest[0]), false, rest[1]);
            case "turn its bound" -> edits.turn(at, Integer.parseInt(rest[0]), true, rest[1]);
            case "insert" -> edits.insert(at, Integer.parseInt(rest[0]), false, new NewStep(Kind.valueOf(rest[1]), rest[2], "New \"words\""));
            case "insert at its bound" -> edits.insert(at, Integer.parseInt(rest[0]), true, new NewStep(Kind.valueOf(rest[1]), rest[2], "New"));
            case "add" -> edits.add(at, new NewStep(Kind.valueOf(rest[0]), rest[1], "New"));
            default -> edits.takeOut(at);
        };
    }

    /** The text after a change that must hold. */
    private static String changed(String text, String graph, String what, String step, String... rest) {
        StepChange change = asked(document(text), graph, what, step, rest);
        Offered offered = assertInstanceOf(Offered.class, change, change.toString());
        String after = offered.fix().applied();
        assertTrue(offered.holds(Texts.document(after)), () -> Texts.document(after).problems() + "\n" + after);
        assertEquals(Remarks.in(text), Remarks.in(after));
        return after;
    }

    private static Map<String, List<String>> arrows(String text, int graph) {
        return ArrowTargets.of(document(text).graphs().get(graph));
    }

    private static String refused(String text, String graph, String what, String step, String... rest) {
        StepChange change = asked(document(text), graph, what, step, rest);
        String sentence = assertInstanceOf(Refused.class, change, change.toString()).sentence();
        assertTrue(sentence.endsWith(".") && sentence.lines().count() == 1, sentence);
        return sentence;
    }

    @Test
    void should_change_one_word_of_the_text_when_an_arrow_is_turned() {
        assertEquals(TEXT.replace("dark       -> Shake", "dark       -> Clean"), changed(TEXT, "Timer", "turn", "Look", "0", "Clean"));
        assertEquals(TEXT.replace("else Fine", "else Lonely"), changed(TEXT, "Timer", "turn its bound", "Shake", "1", "Lonely"));
        assertEquals(TEXT.replace("no -> bad", "no -> Wind"), changed(TEXT, "Try", "turn", "Ask", "1", "Wind"));
        assertEquals(TEXT.replace("no -> bad", "no -> good"), changed(TEXT, "Try", "turn", "Ask", "1", "good"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "Look | 0 | Wind | is no step of the procedure",
        "Look | 0 | good | is no step of the procedure",
        "Look | 0 | Shake | leads to \"Shake\" already",
        "Look | 7 | Clean | has no such result",
        "Look | -1 | Clean | has no such result",
        "Look | 0 | a b | is no step",
    })
    void should_say_why_an_arrow_is_not_turned(String step, String result, String to, String words) {
        assertTrue(refused(TEXT, "Timer", "turn", step, result, to).contains(words));
    }

    @Test
    void should_refuse_an_arrow_without_a_bound_and_one_into_another_graph() {
        assertTrue(refused(TEXT, "Timer", "turn its bound", "Look", "0", "Fine").contains("has no such result"));
        assertTrue(refused(TEXT, "Try", "turn", "Ask", "0", "Look").contains("no step of routine \"Try\""));
    }

    @ParameterizedTest
    @ValueSource(strings = {"CHECK", "DO", "CONCLUDE"})
    void should_insert_a_step_of_each_kind_on_an_arrow(String kind) {
        String after = changed(TEXT, "Timer", "insert", "Look", "0", kind, "Fresh");

        Map<String, List<String>> arrows = arrows(after, 0);
        assertEquals("Fresh", arrows.get("Look").get(0));
        assertTrue(arrows.get("Fresh").stream().allMatch(target -> target.isEmpty() || target.equals("Shake")), arrows.toString());
        assertTrue(after.indexOf(" Fresh \"New \\\"words\\\"\"") > after.indexOf("check Look") && after.indexOf(" Fresh \"") < after.indexOf("check Shake"));
    }

    @Test
    void should_write_a_step_behind_the_remark_on_the_last_line_and_indented_as_its_neighbour() {
        String behind = changed(TEXT, "Timer", "insert", "Clean", "0", "DO", "Fresh");
        assertTrue(behind.contains("} // it takes a while\ndo Fresh \"New \\\"words\\\"\" {\n    then -> Tighten\n}\n"), behind);

        String within = changed(TEXT, "Try", "insert", "Wind", "0", "CHECK", "Fresh");
        assertTrue(within.contains("then -> Fresh }\n    check Fresh \"New \\\"words\\\"\" {\n        yes -> Ask\n        no  -> Ask\n    }\n"), within);
        assertEquals("Fresh", arrows(changed(TEXT, "Timer", "insert at its bound", "Shake", "1", "DO", "Fresh"), 0).get("Shake").get(3));
    }

    @Test
    void should_add_a_step_that_nothing_leads_to_yet() {
        String after = changed(TEXT, "Timer", "add", "Shake", "DO", "Fresh");

        Map<String, List<String>> arrows = arrows(after, 0);
        assertEquals(List.of("Clean", ""), arrows.remove("Fresh"));
        assertEquals(arrows(TEXT, 0), arrows);
        assertEquals(List.of("Lonely", ""), arrows(changed(TEXT, "Timer", "add", "Lonely", "DO", "Fresh"), 0).get("Fresh"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Look", "Spring", "Try"})
    void should_not_take_a_name_twice(String name) {
        assertTrue(refused(TEXT, "Timer", "add", "Look", "DO", name).contains("is the name of something else"));
        assertTrue(refused(TEXT, "Timer", "insert", "Look", "0", "DO", name).contains("is the name of something else"));
    }

    @Test
    void should_take_a_step_out_and_lead_on_to_the_one_behind_it() {
        String after = changed(TEXT, "Timer", "take out", "Clean");

        assertEquals("Tighten", arrows(after, 0).get("Shake").get(0));
        assertFalse(after.contains("Clean"), after);
        assertTrue(after.contains("// brush, no air\n/* never */\n// with water\n"), after);
        assertTrue(after.contains("fault Dust \"Dust\" { cases 1 shows Look dark }"), after);
        assertTrue(after.contains("{ Look dark, Shake rattles, TryIt good ends at Mended }"), after);
        assertTrue(((Procedure) Texts.document(after)).examples().get(1).written().isEmpty(), after);
    }

    @Test
    void should_take_out_where_it_begins() {
        String plain = TEXT.replace("    lit normal -> Fine\n", "");
        assertTrue(changed(plain, "Timer", "take out", "Look").contains("begin at Shake"));

        String first = plain.replace("begin at Look\n", "").replace("-> Shake", "-> Clean");
        assertTrue(changed(first, "Timer", "take out", "Look").contains("begin at Clean\n\ncheck Shake"));
        assertFalse(changed(plain.replace("begin at Look\n", ""), "Timer", "take out", "Look").contains("begin at"));
        assertEquals(List.of("Ask"), arrows(changed(TEXT, "Try", "take out", "Wind"), 1).get(""));
    }

    @Test
    void should_take_out_what_nothing_leads_to_wherever_it_leads() {
        String apart = TEXT.replace("dark       -> Shake", "dark       -> Clean").replace("Shake rattles remedy", "Look dark remedy");
        assertFalse(changed(apart, "Timer", "take out", "Shake").contains("check Shake"));
        assertFalse(changed(TEXT, "Timer", "take out", "Lonely").contains("Lonely"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "Timer | Shake | leads to 3 (Clean, Look, Fine)",
        "Timer | Fine | is a conclusion",
        "Timer | Tighten | Line 9 names \"Tighten\"",
        "Try | Ask | leads to 2 (good, bad)",
    })
    void should_say_why_a_step_is_not_taken_out(String graph, String step, String words) {
        String sentence = refused(TEXT, graph, "take out", step);

        assertTrue(sentence.contains(words), sentence);
    }

    @Test
    void should_not_take_out_what_leads_to_itself_nor_all_that_a_routine_does() {
        String round = TEXT.replace("then -> TryIt", "then -> Tighten");
        assertTrue(refused(round.replace(" remedy Tighten", ""), "Timer", "take out", "Tighten").contains("leads to itself"));
        String only = TEXT.replaceAll("    check Ask.*\n", "").replace("then -> Ask", "then -> good");
        assertTrue(refused(only.replace("bad\n", "bad\n    do Other \"Other\" { then -> Wind }\n    begin at Wind\n"), "Try", "take out", "Wind")
                .contains("is where routine \"Try\" begins"));
    }

    @Test
    void should_not_take_out_a_reading_that_a_formula_uses() {
        String text = """
                procedure Sum "Sum"
                measure One "One" { resistance at Pin expects 5 ohm +/- 5 % within -> Sum below -> Sum above -> Sum }
                calculate Sum "Sum" { value One * 2 expects 10 ohm +/- 5 % within -> End below -> End above -> End }
                conclude End "End" { finds nothing }
                """;
        assertTrue(refused(text, "Sum", "take out", "One").contains("Line 3 names \"One\""));
    }

    @Test
    void should_leave_a_step_that_closes_the_unit_alone() {
        String text = """
                procedure Lid "Lid"
                closes by Close
                condition Lid { shut, open } starts shut ends shut
                routine Close "Close it" { exits shut do Shut "Shut it" { sets Lid shut then -> shut } }
                do Open "Open it" { sets Lid open then -> See }
                check See "See" { yes -> Good no -> Bad }
                conclude Good "Good" { finds nothing }
                conclude Bad "Bad" { finds nothing }
                """;
        Step closing = document(text).graphs().get(0).steps().stream().filter(org.faultwright.procedure.ClosingStep::is).findFirst().orElseThrow();

        assertTrue(refused(text, "Lid", "take out", closing.name().text()).contains("closes by"));
        assertTrue(refused(text, "Lid", "turn", closing.name().text(), "0", "Bad").contains("closes by"));
        assertEquals(text.replace("yes -> Good", "yes -> Bad"), changed(text, "Lid", "turn", "See", "0", "Bad"));
        assertEquals(text.replace("yes -> Good", "yes -> Bad"), changed(text, "Lid", "turn", "See", "0", "Close before Bad"));
        assertTrue(changed(text, "Lid", "insert", "See", "0", "DO", "Fresh").contains("then -> Good\n"));
    }

    private static final String SAID_ONCE = """
            procedure Rail "Rail"
            otherwise Refer
            instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
            point P "TP1"
            indicator Lamp "Lamp" { 1 blinks means "warm" 2 blinks means "hot" }
            measure Volts "Rail" {
                dc voltage at P using Meter
                expects 24 V +/- 5 %
                within -> Code
            }
            observe Code "Count" at Lamp { 1 blinks -> Fine none normal -> Fine }
            conclude Fine "Fine" { finds nothing }
            conclude Refer "Refer" { refers to "the maker" }
            """;

    /** Its order among the results stays, so that the others keep their places. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "Volts | 0 | below -> Fine",
        "Volts | 2 | above -> Fine",
        "Code | 2 | anything else -> Fine",
    })
    void should_write_an_arrow_that_is_said_once_for_all_steps(String step, String result, String line) {
        for (String text : List.of(SAID_ONCE, SAID_ONCE.replace("\n", "\r\n"))) {
            String after = changed(text, "Rail", "turn", step, result, "Fine");
            assertTrue(after.contains(line) && after.contains("otherwise Refer"), after);
            assertEquals(3, ArrowTargets.of(document(after).graphs().get(0)).get(step).size() / 2);
            assertEquals(text.contains("\r"), !after.replace("\r\n", "").equals(after), after);
            assertFalse(after.replace("\r\n", "").contains("\n") && text.contains("\r"), after);
            assertTrue(changed(text, "Rail", "insert", step, result, "DO", "Fresh").contains("then -> Refer"));
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "24 V +/- 5 % | below  -> Code | within -> Code | above  -> Code",
        "12 V .. 15 V | below  -> Code | within -> Code | above  -> Code",
        "over 5 V .. under 6 V | below  -> Code | within -> Code | above  -> Code",
        "at most 2 V | within -> Code | above  -> Code | using Meter",
        "under 2 V | within -> Code | above  -> Code | using Meter",
        "at least 20 V | below  -> Code | within -> Code | using Meter",
        "over 20 V | below  -> Code | within -> Code | using Meter",
    })
    void should_write_a_reading_with_a_result_for_each_side_that_its_limit_has(String limit, String one, String two, String three) {
        Document document = document(SAID_ONCE.replace("otherwise Refer\n", "").replace("within -> Code", "below -> Code\n within -> Code\n above -> Code")
                .replace("none normal -> Fine", "none normal -> Fine anything else -> Refer"));
        Step volts = document.graphs().get(0).steps().get(0);
        NewStep reading = new NewStep(Kind.MEASURE, "Again", "Once more", java.util.Optional.of(new NewStep.Reading("dc voltage", "P", "", "Meter", limit)));

        Offered offered = assertInstanceOf(Offered.class, new StepEdits(document, document.graphs().get(0)).insert(volts, 1, false, reading));

        String after = offered.fix().applied();
        assertTrue(offered.holds(Texts.document(after)), () -> Texts.document(after).problems() + "\n" + after);
        assertTrue(after.contains("measure Again \"Once more\" {\n    dc voltage at P using Meter\n    expects " + limit + "\n"), after);
        String written = after.substring(after.indexOf("measure Again"), after.indexOf("observe Code"));
        assertTrue(written.contains(one) && written.contains(two) && written.contains(three), written);
    }

    @Test
    void should_end_its_lines_as_the_text_does() {
        String windows = TEXT.replace("\n", "\r\n");
        for (String after : List.of(changed(windows, "Timer", "insert", "Clean", "0", "DO", "Fresh"), changed(windows, "Timer", "take out", "Clean"))) {
            assertFalse(after.replace("\r\n", "").contains("\n"), after);
            assertFalse(after.replace("\r\n", "").contains("\r"), after);
        }
    }

    @Test
    void should_know_when_a_changed_text_is_not_what_was_asked_for() {
        Offered offered = assertInstanceOf(Offered.class, asked(document(TEXT), "Timer", "turn", "Look", "0", "Clean"));
        String after = offered.fix().applied();

        assertFalse(offered.holds(Texts.document(TEXT)), "nothing was changed");
        assertFalse(offered.holds(Texts.document(after.replace("lit normal -> Fine", "lit normal -> Clean"))), "another arrow was moved");
        assertFalse(offered.holds(Texts.document(after.replace("// loose parts", ""))), "a comment is gone");
        assertFalse(offered.holds(Texts.document(after.replace("check Shake", "chek Shake"))), "it cannot be read");
    }

    /** Its conclusion stands nowhere: arrows may be turned to it and steps put before it, and it changes only with the fault. */
    @Test
    void should_lead_to_a_fault_and_change_its_conclusion_nowhere() {
        String after = changed(TEXT, "Timer", "turn", "TryIt", "0", "Spring");
        String inserted = changed(after, "Timer", "insert", "TryIt", "0", "DO", "Oil");

        assertTrue(after.contains("good -> Spring bad -> Fine"), after);
        assertTrue(inserted.contains("good -> Oil bad -> Fine") && inserted.contains("then -> Spring"), inserted);
        assertTrue(changed(after, "Timer", "turn", "TryIt", "0", "Mended").contains("good -> Mended"));
        assertTrue(refused(after, "Timer", "add", "Spring", "DO", "Wipe").contains("follows from fault \"Spring\""));
        assertTrue(refused(after, "Timer", "take out", "Spring").contains("let the results that lead to it lead elsewhere"));
        // a routine has exits and does not conclude
        assertTrue(refused(TEXT, "Try", "turn", "Ask", "0", "Spring").contains("is no step of"));
    }
}
