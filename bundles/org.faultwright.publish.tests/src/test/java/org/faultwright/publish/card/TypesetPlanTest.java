/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.LikelyFaults;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.ReadingWay;
import org.faultwright.publish.plan.StepRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is printed, counted in the finished card. */
class TypesetPlanTest {
    private static final String TWICE = """
            procedure Twice "Twice" begin at A
            condition Charge "Stored charge" { present, absent } charged when present starts present
            condition Supply "Supply" { on, off } live when on starts off
            perform A "Prepare" by Q { done -> Live bad -> Refer }
            do Live "Switch on" { sets Supply on then -> Look }
            check Look "Does it run?" { needs Supply on yes -> B no -> Refer }
            perform B "Once more" by Q { done -> End bad -> Refer }
            conclude End "End" { finds nothing }
            conclude Refer "Refer" { refers to "somebody" }
            routine Q "Q" { exits done, bad
                check C1 "One?" { hint "A long hint that is told here and told again, since the step is long." yes -> C2 no -> bad }
                check C2 "Two?" { hint "A long hint that is told here and told again, since the step is long." yes -> C3 no -> bad }
                check C3 "Three?" { hint "A long hint that is told here and told again, since the step is long." yes -> C4 no -> bad }
                check C4 "Four?" { hint "A long hint that is told here and told again, since the step is long." yes -> C5 no -> bad }
                check C5 "Five?" { hint "A long hint that is told here and told again, since the step is long." yes -> Read no -> bad }
                measure Read "The rail" { dc voltage low under 5 V -> done high at least 5 V -> bad }
            }
            """;

    static List<Publication> demos() {
        return Samples.demos().stream().map(Samples::demo).toList();
    }

    /** The pages of one procedure of the demo on each paper of full size, and the turns of its three likeliest repairs. */
    @ParameterizedTest
    @MethodSource("demos")
    void should_turn_the_page_four_times_at_most_on_six_pages_at_most(Publication publication) throws IOException {
        for (String form : List.of("card-pdf", "card-pdf-letter")) {
            fewPages(publication, form);
        }
    }

    private static void fewPages(Publication publication, String form) throws IOException {
        CardPlan plan = TypesetPlan.of(publication);
        try (CardPages pages = CardPages.open(Samples.publish(form, publication).bytes())) {
            Map<String, CardPages.Place> places = pages.printed();
            assertTrue(pages.count() <= 6, form + ", pages: " + pages.count());
            for (LikelyFaults.Case one : plan.likely().cases().subList(0, 3)) {
                List<PlacedStep> way = ReadingWay.of(plan, one);
                int turns = 0;
                for (int i = 1; i < way.size(); i++) {
                    turns += places.get(way.get(i).label()).page() == places.get(way.get(i - 1).label()).page() ? 0 : 1;
                }
                assertTrue(turns <= 4, form + ", " + one.fault().title() + ": " + turns);
            }
        }
    }

    /** Steps that begin on a page of their own stand at its top, behind a first page that is filled. */
    @Test
    void should_begin_steps_on_a_page_of_their_own_behind_a_full_one_only() throws IOException {
        int fresh = 0;
        for (Publication publication : demos()) {
            CardPlan plan = TypesetPlan.of(publication);
            PlacedStep first = plan.sections().get(0).steps().get(0);
            try (CardPages pages = CardPages.open(TypesetPlan.print(plan, Paper.A4))) {
                CardPages.Place place = pages.printed().get(first.label());
                if (plan.beginsOnFreshPage()) {
                    assertEquals(1, place.page(), publication.title());
                    assertTrue(place.area().getY() < 120, publication.title() + ": " + place.area());
                    fresh++;
                }
            }
        }
        assertTrue(fresh > 0);
    }

    /** Whoever proves a charge gone has an open unit in front of them; no page is turned meanwhile, on whatever paper. */
    @ParameterizedTest
    @MethodSource("demos")
    void should_turn_no_page_over_a_proof(Publication publication) throws IOException {
        CardPlan plan = TypesetPlan.of(publication);
        for (Paper paper : Paper.values()) {
            try (CardPages pages = CardPages.open(TypesetPlan.print(plan, paper))) {
                Map<String, CardPages.Place> places = pages.printed();
                Map<StepRun, Set<Integer>> proofs = new HashMap<>();
                plan.placed().filter(placed -> placed.run().proves() && places.containsKey(placed.label()))
                        .forEach(placed -> proofs.computeIfAbsent(placed.run(), none -> new HashSet<>()).add(places.get(placed.label()).page()));
                assertTrue(!proofs.isEmpty() && proofs.values().stream().allMatch(on -> on.size() == 1), paper + ": " + proofs.values());
            }
        }
    }

    /** Nobody turns the page between what warns of an open unit made live and the step that does it, on whatever paper. */
    @Test
    void should_print_what_switches_on_beside_its_warning() throws IOException {
        int looked = 0;
        for (Publication publication : demos()) {
            CardPlan plan = TypesetPlan.of(publication);
            for (Paper paper : Paper.values()) {
                try (CardPages pages = CardPages.open(TypesetPlan.print(plan, paper))) {
                    Map<String, CardPages.Place> places = pages.printed();
                    for (PlacedStep placed : plan.placed().filter(one -> plan.besideWarning(one) > 0).toList()) {
                        PlacedStep deed = plan.inside(placed).get(plan.besideWarning(placed) - 1);
                        assertEquals(places.get(placed.label()).page(), places.get(deed.label()).page(), publication.title() + ", " + paper + ": " + deed.label());
                        looked++;
                    }
                }
            }
        }
        assertTrue(looked >= 5 * Paper.values().length, "looked at " + looked);
    }

    @Test
    void should_give_all_forms_one_plan_and_the_same_bytes_again() {
        Publication publication = Samples.text(TWICE);
        Publication again = Samples.text(TWICE);
        assertSame(TypesetPlan.of(publication), TypesetPlan.of(publication));
        assertArrayEquals(TypesetPlan.printed(publication, Paper.A4), TypesetPlan.printed(again, Paper.A4));
        for (Paper paper : Paper.values()) {
            assertArrayEquals(TypesetPlan.printed(publication, paper), TypesetPlan.print(TypesetPlan.of(publication), paper), paper.name());
        }
    }

    /** What was ticked and written at the first visit is not taken for the second: where a routine is printed once for several steps, each visit has boxes. */
    @Test
    void should_give_each_visit_of_a_routine_boxes_of_its_own() {
        Publication publication = Samples.text(TWICE);
        CardPlan plan = TypesetPlan.of(publication);
        CardText card = CardText.of(publication);
        boolean apart = plan.sections().stream().filter(CardSection::isRoutine).anyMatch(section -> plan.visits(section) > 1);
        assertEquals(apart, card.says("Of two boxes the left is for the 1st time, the right for the 2nd."));
        assertEquals(apart, card.all().contains(CardText.even("\u2610\u2610 low")));
        assertEquals(apart, card.says("Came from step 1st"));
        long again = demos().stream().filter(demo -> {
            CardPlan arranged = TypesetPlan.of(demo);
            boolean comes = arranged.sections().stream().anyMatch(section -> arranged.visits(section) > 1);
            assertEquals(comes, CardText.of(demo).says("Came from step 1st"), demo.title());
            return comes;
        }).count();
        assertTrue(again > 0);
    }

    /** Nobody must conclude from a missing word that the circuit is dead. */
    @Test
    void should_tell_each_time_that_a_step_is_done_live() {
        assertTrue(CardText.of(Samples.text(TWICE)).says("Does it run? With Supply on"));
    }
}
