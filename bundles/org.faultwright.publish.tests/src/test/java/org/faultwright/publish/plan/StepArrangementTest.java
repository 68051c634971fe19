/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Which routine stands where, and in which order a card is read. */
class StepArrangementTest {
    /** The step A performs R, whose step P performs Q and is left by what Q is left by; Q is left by done for Big and by bad for Small. */
    private static final String NESTED = """
            procedure Branch "Branch" begin at A
            perform A "Prepare" by R { done -> End bad -> A at most 2 times else Refer }
            conclude End "End" { finds F }
            conclude Refer "Refer" { refers to "somebody" }
            fault F "F" { shows A done }
            routine R "R" { exits done, bad perform P "Inner" by Q { done -> done bad -> bad } }
            routine Q "Q" { exits done, bad
                check Which "Big or small unit?" { big -> Big small -> Small }
                do Big "Open the big one" { then -> done }
                do Small "Open the small one" { then -> bad }
            }
            """;

    static List<Publication> demos() {
        return Samples.demos().stream().map(Samples::demo).toList();
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_print_every_step_once_at_least_and_number_each_once(Publication publication) {
        CardPlan plan = new CardPlan(publication);
        List<String> labels = plan.placed().map(PlacedStep::label).toList();
        assertEquals(labels.size(), new HashSet<>(labels).size(), labels.toString());
        List<Step> all = Stream.concat(publication.procedure().steps().stream(),
                plan.routines().stream().flatMap(routine -> routine.steps().stream())).toList();
        all.forEach(step -> assertTrue(!plan.label(step).isEmpty(), step.name().text()));
    }

    @ParameterizedTest
    @MethodSource("demos")
    void should_have_one_arrangement_for_one_procedure(Publication publication) {
        List<String> first = new CardPlan(publication).placed().map(placed -> placed.label() + " " + placed.step().name()).toList();
        assertEquals(first, new CardPlan(publication).placed().map(placed -> placed.label() + " " + placed.step().name()).toList());
    }

    /** The search never ends with less than it began with, and for most procedures with more. */
    @Test
    void should_find_arrangements_that_are_better_than_the_simplest() {
        int better = 0;
        for (Publication publication : demos()) {
            LikelyFaults likely = LikelyFaults.of(publication.procedure());
            PageEstimate model = new PageEstimate(publication.procedure(), likely);
            StepArrangement found = StepArrangement.of(publication.procedure(), likely);
            assertEquals(new HashSet<>(publication.procedure().steps()), new HashSet<>(found.order()));
            double cost = StepArrangement.cost(model, model.state(found));
            double simplest = StepArrangement.cost(model, model.simplest());
            assertTrue(cost <= simplest, publication.title());
            better += cost < simplest * 0.9 ? 1 : 0;
        }
        assertTrue(better > demos().size() / 2, "better: " + better);
    }

    /** Six pages are out of reach there, and every change that is tried costs as much as the card is long. */
    @Test
    void should_leave_a_card_far_longer_than_six_pages_as_is_simplest() {
        Publication publication = Samples.text("procedure P \"P\" " + IntStream.range(0, 200)
                .mapToObj(i -> "check S%d \"Is it right there?\" { yes -> S%d no -> E%d } conclude E%d \"E\" { finds nothing }\n".formatted(i, i + 1, i, i))
                .collect(Collectors.joining()) + "conclude S200 \"S\" { finds nothing }");
        LikelyFaults likely = LikelyFaults.of(publication.procedure());
        PageEstimate model = new PageEstimate(publication.procedure(), likely);

        assertTrue(model.pages(model.simplest(), 1).length() > 10);
        assertEquals(model.arrangement(model.simplest()), StepArrangement.of(publication.procedure(), likely));
    }

    @Test
    void should_lead_out_of_a_routine_in_a_routine_by_the_bounds_of_both_steps() {
        CardPlan plan = new CardPlan(Samples.text(NESTED));
        PlacedStep small = plan.placed().filter(placed -> placed.step().name().text().equals("Small")).findFirst().orElseThrow();
        StepRun.To to = (StepRun.To) small.run().target(small.step().outcomes().get(0).target().orElseThrow());
        assertEquals("1", to.step().label());
        assertEquals(List.of("P", "A"), to.left().stream().map(left -> left.step().step().name().text()).toList());
        assertEquals(2, to.left().get(1).by().repeat().orElseThrow().atMost());
        StepRun.Target then = to.left().get(1).step().run().target(to.left().get(1).by().repeat().orElseThrow().otherwise());
        assertEquals("Refer", ((StepRun.To) then).step().step().name().text());
    }

    @Test
    void should_read_a_repair_through_the_routines_on_its_way() {
        CardPlan plan = new CardPlan(Samples.text(NESTED));
        List<String> read = ReadingWay.of(plan, plan.likely().cases().get(0)).stream().map(placed -> placed.step().name().text()).toList();
        assertEquals(List.of("A", "Which", "Big", "End"), read);
        assertEquals(List.of("Which", "Small"), RoutineWay.shortest(plan.routines().get(1), "bad").stream()
                .map(on -> on.step().name().text()).toList());
        assertEquals(List.of(), RoutineWay.shortest(plan.routines().get(1), "never"));
    }

    /** Routines that perform themselves, or one another so often that their steps cannot be counted out one by one. */
    @Test
    void should_arrange_routines_without_end_and_deeply_nested_ones() {
        String recursive = "procedure P \"P\" perform A \"A\" by R0 { done -> End } conclude End \"E\" { finds nothing } " + routine(0, 0, 8);
        String nested = "procedure P \"P\" perform A \"A\" by R0 { done -> End } conclude End \"E\" { finds nothing } "
                + IntStream.range(0, 9).mapToObj(i -> routine(i, i + 1, 8)).collect(Collectors.joining(" "))
                + " routine R9 \"R\" { exits done do D \"D\" { then -> done } }";
        String chain = "procedure P \"P\" perform A \"A\" by R0 { done -> End } conclude End \"E\" { finds nothing } "
                + IntStream.range(0, 300).mapToObj(i -> routine(i, i + 1, 1)).collect(Collectors.joining(" "))
                + " routine R300 \"R\" { exits done do D \"D\" { then -> done } }";
        for (String text : List.of(recursive, nested, chain)) {
            assertTimeoutPreemptively(Duration.ofSeconds(60), () -> assertTrue(new CardPlan(Samples.text(text)).placed().count() > 1));
        }
    }

    private static String routine(int number, int performs, int steps) {
        return "routine R" + number + " \"R\" { exits done " + IntStream.range(0, steps).mapToObj(i -> "perform S" + i + " \"S\" by R" + performs
                + " { done -> " + (i + 1 < steps ? "S" + (i + 1) : "done") + " }").collect(Collectors.joining(" ")) + " }";
    }
}
