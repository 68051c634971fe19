/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.BetterOrder;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderStudyTest {
    private static final Path DEMO = Path.of("..", "..", "procedures-demo");

    /** The slow one first; CONDITIONS, FIRST and SECOND are filled in. */
    private static final String BOX = """
            procedure Box "Box is dead"
            condition Supply "Supply" { off, on } live when on starts off ends off
            condition Cover "Cover" { fitted, removed } starts fitted ends fitted
            fault Fuse "Fuse" { cases 10 shows See dead, Slow bad, Quick good, Third good }
            fault Jack "Jack" { cases 60 shows See dead, Slow good, Quick bad, Third good }
            fault Board "Board" { cases 30 shows See dead, Slow good, Quick good, Third bad }
            check See "Dead?" { confirms complaint takes 1 min dead -> FIRST alive -> Nothing }
            do Lift "Lift the cover" { sets Cover removed takes 2 min then -> LIFTED }
            check Slow "Slow?" { SLOWNEEDS takes 20 min bad -> FuseBad good -> Quick }
            check Quick "Quick?" { QUICKNEEDS takes 1 min bad -> JackBad good -> Third }
            check Third "Third?" { takes 5 min bad -> BoardBad good -> Passed }
            do Shut "Fit the cover" { sets Cover fitted takes 2 min then -> Nothing }
            perform FuseBad "Close up" by CloseUp { takes 1 min closed -> FuseFound }
            perform JackBad "Close up" by CloseUp { takes 1 min closed -> JackFound }
            perform BoardBad "Close up" by CloseUp { takes 1 min closed -> BoardFound }
            perform Passed "Close up" by CloseUp { takes 1 min closed -> HandedOn }
            routine CloseUp "Close up" { exits closed do Fit "Fit" { sets Cover fitted takes 1 min then -> closed } }
            conclude FuseFound "Fuse" { finds Fuse refers to "x" }
            conclude JackFound "Jack" { finds Jack refers to "x" }
            conclude BoardFound "Board" { finds Board refers to "x" }
            conclude HandedOn "Other" { refers to "x" }
            conclude Nothing "Works" { finds nothing }
            """;

    private static String box(String first, String lifted, String slow, String quick) {
        return BOX.replace("FIRST", first).replace("LIFTED", lifted).replace("SLOWNEEDS", slow).replace("QUICKNEEDS", quick);
    }

    private static OrderStudy.Comparison best(String text) {
        return OrderStudy.in(new Subject(Texts.procedure(text), Optional.empty())).orElseThrow().best().orElseThrow();
    }

    private static String lines(OrderedTests order) {
        return String.join("|", order.lines());
    }

    @Test
    void should_put_the_quick_and_telling_test_first() {
        OrderStudy.Comparison found = best(box("Slow", "Slow", "", ""));

        assertEquals("Slow|  bad|    Fuse: FuseBad|  good|    Quick|      bad|        Jack: JackBad|      good|        Third|"
                + "          bad|            Board: BoardBad", lines(found.authors()));
        assertEquals("Quick|  bad|    Jack: JackBad|  good|    Third|      bad|        Board: BoardBad|      good|        Slow|"
                + "          bad|            Fuse: FuseBad", lines(found.better()));
        // 1 min to see it, then 20 min for all, 1 min for 90 %, 5 min for 30 %, and 1 min to close: 24.4 min.
        assertEquals("24.4 min", PrintedNumbers.minutes(found.before()));
        // 1 min for all, 5 min for 40 %, 20 min for 10 %.
        assertEquals("7 min", PrintedNumbers.minutes(found.after()));
        assertTrue(found.isBest());
        assertEquals("Quick first settles 60 % of the cases in 1 min.", found.reason());
        assertEquals(List.of(), found.presumed());
    }

    @Test
    void should_leave_alone_what_confirms_the_complaint_and_an_order_that_is_best() {
        OrderStudy.Comparison found = best(box("Quick", "Slow", "", "").replace("good -> Quick", "good -> Passed")
                .replace("bad -> BoardBad good -> Passed", "bad -> BoardBad good -> Slow"));

        assertEquals(0, found.saving().signum());
        assertEquals(lines(found.authors()), lines(found.better()));
    }

    /** The quick test needs the cover off: it has to wait for both others, though it would save a quarter of an hour. */
    @Test
    void should_never_propose_to_open_earlier_than_it_must_be() {
        OrderStudy.Comparison found = best(box("Slow", "Quick", "", "needs Cover removed").replace("good -> Quick", "good -> Lift"));

        assertTrue(lines(found.better()).startsWith("Third|"), lines(found.better()));
        assertTrue(lines(found.better()).indexOf("Slow") < lines(found.better()).indexOf("Quick"), lines(found.better()));
    }

    /** A cover against a mode that nobody gets hurt by: the mode first, as long as it costs next to nothing. */
    @ParameterizedTest
    @CsvSource({"10 s, Third", "9 min, Quick"})
    void should_leave_the_cover_on_where_that_costs_next_to_nothing(String more, String first) {
        OrderStudy.Comparison found = best(box("Lift", "Enter", "needs Cover removed, Mode service", "needs Cover removed")
                .replace("sets Cover removed takes 2 min", "sets Cover removed takes 10 s").replace("takes 1 min bad -> JackBad", "takes 2 min bad -> JackBad")
                .replace("condition Cover", "condition Mode \"Mode\" { normal, service }\ncondition Cover")
                .replace("cases 60", "cases 46").replace("cases 30", "cases 44")
                .replace("check Third \"Third?\" { takes 5 min", "do Enter \"Service mode\" { sets Mode service takes " + more
                        + " then -> Slow }\ncheck Third \"Third?\" { needs Mode service takes 2 min"));

        assertTrue(lines(found.better()).startsWith(first + "|"), lines(found.better()));
        assertEquals(first.equals("Third"), found.reasons().stream().anyMatch(reason -> reason.contains("(Cover) stays shut for Third")), found.reasons().toString());
    }

    @Test
    void should_say_for_each_test_why_it_comes_where_it_does() {
        assertEquals(List.of("Quick first settles 60 % of the cases in 1 min.", "Third settles 75 % of the cases that come to it in 5 min.",
                "Slow settles 100 % of the cases that come to it in 20 min."), best(box("Slow", "Slow", "", "")).reasons());
    }

    private static Optional<List<OrderDifferences.Difference>> differences(String before, String after) {
        Procedure procedure = Texts.procedure(before);
        return OrderDifferences.between(FaultWalks.of(procedure), procedure, Texts.procedure(after), Map.of());
    }

    private static final String TWO = """
            procedure Two "Two"
            fault A "A" { cases 1 shows See dead, First bad, Second good, TryA good }
            fault B "B" { cases 9 shows See dead, First good, Second bad, TryB good }
            check See "Dead?" { confirms complaint dead -> First alive -> Fine }
            check First "First?" { bad -> MendA good -> Second odd -> HandedOn }
            check Second "Second?" { bad -> MendB good -> HandedOn }
            do MendA "Mend A" { repairs then -> TryA }
            do MendB "Mend B" { repairs then -> TryB }
            check TryA "Good?" { verifies repair good -> FoundA bad -> HandedOn }
            check TryB "Good?" { verifies repair good -> FoundB bad -> HandedOn }
            conclude FoundA "A" { finds A }
            conclude FoundB "B" { finds B }
            conclude HandedOn "Other" { refers to "x" }
            conclude Fine "Works" { finds nothing }
            """;

    @Test
    void should_list_of_two_faults_at_once_which_is_found_first_and_object_to_nothing() {
        List<OrderDifferences.Difference> found = differences(TWO, TWO.replace("dead -> First", "dead -> Second")
                .replace("good -> Second odd", "good -> HandedOn odd").replace("bad -> MendB good -> HandedOn", "bad -> MendB good -> First")).orElseThrow();

        assertTrue(found.stream().anyMatch(one -> one.toString().equals("See dead, Second bad, TryB good leads to \"FoundB\"; as written, with First bad, TryA good,"
                + " to \"FoundA\".")), found.toString());
        assertEquals(List.of(), found.stream().filter(OrderDifferences.Difference::changesWhatIsMeant).toList());
    }

    /** Outcomes that the fault table does not know are walked as well. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            odd -> HandedOn            | odd -> MendB               | NEVER_BEFORE
            odd -> HandedOn            | odd -> Fine                | NEVER_BEFORE
            good -> Second odd         | good -> MendB odd          | WITHOUT_EVIDENCE
            good -> Second odd         | good -> HandedOn odd       | ONE_FAULT
            alive -> Fine              | alive -> HandedOn          | NEVER_BEFORE
            good -> FoundA             | good -> FoundB             | NEVER_BEFORE
            """)
    void should_object_to_whatever_means_something_else(String written, String instead, OrderDifferences.Kind kind) {
        List<OrderDifferences.Difference> found = differences(TWO, TWO.replace(written, instead)).orElseThrow();

        assertTrue(found.stream().filter(OrderDifferences.Difference::changesWhatIsMeant).anyMatch(one -> one.kind() == kind), found.toString());
    }

    @Test
    void should_object_to_giving_up_what_may_still_be_found() {
        String asksOn = TWO.replace("odd -> HandedOn", "odd -> Second");

        List<OrderDifferences.Difference> found = differences(asksOn, TWO).orElseThrow();

        assertTrue(found.stream().anyMatch(one -> one.kind() == OrderDifferences.Kind.GIVEN_UP && one.toString().startsWith(
                "No fault explains See dead, First odd; it would be handed on at once")), found.toString());
    }

    @Test
    void should_find_no_difference_between_a_tree_and_itself() {
        assertEquals(List.of(), differences(TWO, TWO).orElseThrow());
    }

    @Test
    void should_follow_an_arrow_that_was_taken_too_often() {
        String bounded = TWO.replace("odd -> HandedOn", "odd -> First at most 2 times, else HandedOn");

        assertEquals(List.of(), differences(bounded, bounded).orElseThrow());
        assertTrue(differences(bounded, bounded.replace("else HandedOn", "else Fine")).orElseThrow().stream()
                .anyMatch(one -> one.kind() == OrderDifferences.Kind.NEVER_BEFORE));
    }

    @Test
    void should_say_which_step_stands_in_the_way() throws IOException {
        Procedure iron = (Procedure) ProcedureReader.overFiles().read(DEMO.resolve("HavendyneColdIron.procedure"));
        OrderStudy study = OrderStudy.in(new Subject(iron, Optional.empty())).orElseThrow();

        assertTrue(study.verified(procedure -> List.of()).isEmpty());
        assertEquals("\"SeeIt\" leads into the middle of these steps, to \"TipTemp\", where other faults would be looked for.", study.inTheWay().get(0));
    }

    @Test
    void should_count_the_time_to_open_and_open_on_the_new_way() {
        String text = box("Lift", "Slow", "needs Cover removed", "");
        OrderStudy.Comparison found = best(text);

        assertEquals("26.4 min", PrintedNumbers.minutes(found.before()));
        assertEquals("7.2 min", PrintedNumbers.minutes(found.after()), "opening is needed in one case out of ten only");
        Procedure changed = Texts.procedure(BetterOrder.verified(new Subject(Texts.procedure(text), Optional.empty()))
                .orElseThrow().fix().applied());
        assertEquals("dead->Quick, alive->Nothing", outcomes(changed, "See"));
        assertEquals("bad->BoardBad, good->Lift", outcomes(changed, "Third"));
        assertEquals("done->Slow", outcomes(changed, "Lift"));
        assertEquals("bad->FuseBad, good->Passed", outcomes(changed, "Slow"));
        assertEquals(found.after(), OrderStudy.in(new Subject(changed, Optional.empty())).orElseThrow().best().orElseThrow().before());
    }

    private static String outcomes(Procedure procedure, String step) {
        return procedure.steps().stream().filter(s -> s.name().text().equals(step)).flatMap(s -> s.outcomes().stream())
                .map(o -> o.key() + "->" + o.target().orElseThrow()).collect(Collectors.joining(", "));
    }

    @Test
    void should_name_what_it_takes_for_granted() {
        OrderStudy.Comparison found = best(box("Slow", "Slow", "", "").replace("Slow bad, Quick good, Third good", "Slow bad, Quick good")
                .replace("Slow good, Quick bad, Third good", "Slow good, Quick bad"));

        assertEquals(List.of("Third good"), found.presumed());
        assertEquals("7 min", PrintedNumbers.minutes(found.after()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            good -> Quick }          | good -> Quick at most 2 times, else Passed } | Slow counts how often it is asked
            good -> Passed }         | good -> Quick }                              | ''
            Slow good, Quick bad     | Slow good or bad, Quick bad                  | Jack goes on to different steps as things stand
            """)
    void should_say_why_an_order_is_not_studied(String written, String instead, String reason) {
        OrderStudy study = OrderStudy.in(new Subject(Texts.procedure(box("Slow", "Slow", "", "").replace(written, instead)), Optional.empty())).orElseThrow();

        assertEquals(reason.isEmpty() ? List.of() : List.of(reason), study.notStudied());
    }

    @Test
    void should_write_the_better_order_of_the_demo_without_a_new_finding() throws IOException {
        Path file = DEMO.resolve("LundavikTillDrawer.procedure");
        Procedure till = (Procedure) ProcedureReader.overFiles().read(file);

        OrderStudy.Verified found = BetterOrder.verified(new Subject(till, Optional.empty())).orElseThrow();

        Procedure changed = (Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), found.fix().applied()));
        assertEquals(List.of(), changed.problems());
        assertEquals(Set.of(Severity.ADVICE), severities(new Checker().check(changed)));
        assertEquals(List.of(), Texts.findings("better-order", changed));
        assertEquals(PrintedNumbers.minutes(found.comparison().after()), PrintedNumbers.minutes(TimeStudy.of(changed).inAll().expected().orElseThrow()));
        assertTrue(found.comparison().reason().startsWith("KeyLook first settles 45 % of the cases"), found.comparison().reason());
        assertEquals(comments(till), comments(changed), "comments stay");
        assertEquals(till.examples().size(), ExampleCoverage.of(changed).runs().stream().filter(ExampleRun::passes).count());
    }

    private static Set<Severity> severities(List<Finding> findings) {
        return findings.stream().map(Finding::severity).collect(Collectors.toSet());
    }

    private static List<String> comments(Procedure procedure) {
        return procedure.source().content().lines().map(String::strip).filter(line -> line.startsWith("//")).sorted().toList();
    }

    /** What needs a dead unit is not moved to where it is live: the order is put together again, or not proposed. */
    @Test
    void should_judge_an_order_with_every_other_rule() {
        Procedure box = Texts.procedure(box("Slow", "Slow", "", ""));
        OrderStudy study = OrderStudy.in(new Subject(box, Optional.empty())).orElseThrow();
        Finding objection = new Finding("left-open", Severity.ERROR, box.name().at(), "Objected.", "Objected.", List.of(), List.of());

        assertTrue(study.verified(procedure -> List.of()).isPresent());
        assertTrue(study.verified(procedure -> procedure == box ? List.of() : List.of(objection)).isEmpty());
        assertTrue(study.verified(procedure -> List.of(objection)).isPresent(), "it was there before");
    }
}
