/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.CardPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Severity;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Precautions;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.CardPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CardContentTest {
    private static final Publication EVERYTHING = Samples.everything();
    private static final CardText CARD = CardText.of(EVERYTHING);

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(EVERYTHING), Samples.demos().stream().map(Samples::demo));
    }

    private static void assertSays(CardText card, String words) {
        assertTrue(card.says(words), "not on the card: " + words);
    }

    /** On paper nothing goes back by itself. */
    @Test
    void should_say_what_to_do_after_a_wrong_tick() {
        assertSays(CARD, "Wrong tick? Strike it out, sign it, tick the right one. Done a step since? Stop, plug out, ask who checks.");
        assertTrue(Samples.string("card-html", EVERYTHING).contains("Wrong tick? Strike it out"));
    }

    /** A tool that is named twice is needed once; ranges stand as on the instrument; what a step handles need not be a spare. */
    @Test
    void should_say_what_is_needed_once_and_by_size() {
        CardText card = CardText.of(Samples.text("procedure P \"P\" instrument Meter \"Meter\" { resistance up to 600 ohm resolution 0.1 ohm accuracy 1 % of reading"
                + " resistance up to 60 kohm resolution 10 ohm accuracy 1 % of reading resistance up to 600 kohm resolution 100 ohm accuracy 1 % of reading }"
                + " point R1 \"R1\" part Lead \"Bleed lead\""
                + " measure A \"A\" { resistance at R1 using Meter range 600 kohm at most 470 kohm -> B above -> End }"
                + " measure B \"B\" { resistance at R1 using Meter range 600 ohm at most 5 ohm -> C above -> End }"
                + " measure C \"C\" { resistance at R1 using Meter range 60 kohm at most 5 kohm -> D above -> End }"
                + " do D \"D\" { handles Lead tools \"strap\" tools \"strap\" then -> End } conclude End \"End\" { finds nothing }"));
        assertSays(card, "resistance 600 \u03A9 and 60 k\u03A9 and 600 k\u03A9");
        assertSays(card, "In hand Bleed lead");
        assertSays(card, "Tools strap");
        assertFalse(card.says("strap, strap"), card.all());
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_print_every_step_limit_note_and_conclusion(Publication publication) {
        CardText card = CardText.of(publication);
        Procedure procedure = publication.procedure();
        CardPlan plan = TypesetPlan.of(publication);
        int steps = 0;
        for (StepGraph graph : procedure.graphs()) {
            for (Step step : graph.steps()) {
                steps++;
                boolean printed = plan.placed().anyMatch(placed -> placed.step() == step);
                if (printed) {
                    assertSays(card, step.title());
                } else {
                    // its own steps stand for it, for it has nothing else to say
                    assertTrue(step instanceof Step.Perform && step.frame().equals(new StepFrame(List.of(), List.of(), List.of(), List.of(), List.of(),
                            step.frame().takes(), List.of(), List.of(), Optional.empty(), Optional.empty(), step.frame().source(), Optional.empty(),
                            Optional.empty(), List.of(), Precautions.NONE)), step.name().text());
                }
                limits(step).forEach(limit -> assertSays(card, limit));
                step.frame().hint().map(Written::value).ifPresent(hint -> assertSays(card, hint));
                step.frame().notes().stream().flatMap(name -> procedure.scope().note(name).stream())
                        .forEach(note -> assertNote(card, note));
                if (step instanceof Step.Conclude conclude) {
                    conclude.report().map(Written::value).ifPresent(report -> assertSays(card, report));
                }
            }
        }
        assertTrue(steps > 10);
        procedure.complaints().forEach(complaint -> assertSays(card, complaint.value()));
        assertSays(card, publication.digest());
        assertSays(card, publication.revision());
    }

    private static Stream<String> limits(Step step) {
        Stream<String> bands = step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> Wording.printed(((Outcome.Band) head).limit().value()));
        return Stream.concat(CardResult.expected(step).stream().map(Wording::printed), bands);
    }

    private static void assertNote(CardText card, Note note) {
        List.of(note.word().name(), note.hazard(), note.consequence(), note.avoid())
                .forEach(words -> assertSays(card, words));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_print_notes_and_the_caution_before_the_first_step(Publication publication) {
        CardText card = CardText.of(publication);
        int first = card.position("Steps: begin at 1");
        assertTrue(first > 0);
        int caution = card.position("Local codes, the maker's instructions and licensed practice come first");
        assertTrue(caution > 0 && caution < first);
        int notes = 0;
        Procedure procedure = publication.procedure();
        for (StepGraph graph : procedure.graphs()) {
            for (Step step : graph.steps()) {
                for (Note note : step.frame().notes().stream().flatMap(n -> procedure.scope().note(n).stream()).toList()) {
                    int at = card.position(note.avoid());
                    assertTrue(at > 0 && at < first, note.name().text());
                    notes++;
                }
            }
        }
        assertTrue(notes > 0);
    }

    @Test
    void should_leave_out_notes_that_no_step_warns_of() {
        assertFalse(CARD.says("This note is warned of nowhere."));
    }

    @Test
    void should_print_the_gravest_note_first() {
        assertTrue(CARD.position("DANGER") < CARD.position("WARNING"));
        assertTrue(CARD.position("WARNING") < CARD.position("CAUTION"));
        assertTrue(CARD.position("CAUTION") < CARD.position("NOTICE"));
    }

    /** ANSI Z535.6: the alert symbol stands with danger, warning and caution, and not with notice. */
    @Test
    void should_print_the_alert_symbol_where_people_can_be_hurt_and_nowhere_else() {
        for (String word : List.of("DANGER", "WARNING", "CAUTION")) {
            assertFalse(CARD.all().replace("\u26A0" + word, "").contains(word), word);
            assertTrue(CARD.all().contains("\u26A0" + word), word);
        }
        assertTrue(CARD.all().contains("NOTICE"));
        assertFalse(CARD.all().contains("\u26A0NOTICE"));
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "Ednor W3 warming plate, boards W3-1, W3-2",
        "resistance 600 \u03A9",
        "calibrated until 2027-03-31",
        "screwdriver set", "heat paste", "Bleed lead, 1 kohm 50 W",
        "You will need", "Condition on arrival", "Bulk capacitors present",
        "12 V +10 % -5 %",
        "E 05 Stored programs lost",
        "(proves Bulk capacitors absent)",
        "at most 2 times, then",
        "\u2212 12 V) \u00F7 12 V",
        "What it can be", "All steps", "Which fault was it?", "Parts used", "Remarks",
        "Refer to Senior technician",
        "Erases stored programs",
        "At C7, plus side (up to 14 V dc) against Screw at J1 (up to 0.1 V dc)",
        "Ednor W3 circuit, sheet 1, dated 2024-05-06",
        "Before the unit leaves the bench",
        "Technician", "Checked by" })
    void should_say(String words) {
        assertSays(CARD, words);
    }

    /**
     * 12 V + 10 % is 13.2 V. There the meter is uncertain by 0.5 % of 13.2 V + 2 × 10 mV = 86 mV and the probe by
     * 10 mV, both rectangular: U = 2 √(86² + 10²)/√3 mV = 99.97 mV (JCGM 100:2008, 4.3.7, 5.1.2 and 6.2, by hand). So
     * accepted up to 13.10 V, rejected from 13.30 V.
     */
    @Test
    void should_print_the_zones_of_a_guarded_limit_with_the_convention() {
        List.of("reject", "accept", "?").forEach(zone -> assertSays(CARD, zone));
        assertSays(CARD, "11.31 V 11.49 V 13.1 V 13.3 V");
        assertSays(CARD, "(ISO 14253-1)");
        assertSays(CARD, "k = 2");
        assertSays(CARD, "(JCGM 100:2008, 4.3.7 and 6.2)");
    }

    @Test
    void should_say_draft_in_the_head_of_a_draft() {
        CardText draft = CardText.of(Samples.text("procedure P revision 2 draft conclude End \"End\" { finds nothing }"));
        assertTrue(draft.says("Revision 2, draft"));
        assertTrue(draft.says("neither reviewed nor released"));
        assertFalse(CARD.says("neither reviewed nor released"));
    }

    @Test
    void should_list_open_errors_before_anything_else() {
        Publication broken = Samples.text("procedure P check A \"Is it?\" { yes -> Nowhere no -> End }"
                + " conclude End \"End\" { finds nothing }");
        assertTrue(broken.hasErrors());
        CardText card = CardText.of(broken);
        int open = card.position("Draft with open errors: do not work by this");
        assertTrue(open > 0 && open < card.position("Dangers: read before anything else"));
        broken.of(Severity.ERROR).forEach(finding -> assertSays(card, finding.message()));
        assertTrue(card.pages().stream().allMatch(page -> page.contains("DRAFT")));
        assertEquals(-1, CARD.position("Draft with open errors"));
    }

    private static final String BENCH = """
            procedure P "P" tools "solder wire" begin at A
            point Rail "Rail" carries up to 10 V
            part Fuse "Fuse T2A"
            part Lead "Bleed lead in a handle" drains by 1 kohm rated 50 W
            do A "Drain it" { handles Lead then -> B }
            do B "Fit a fuse" { handles Fuse then -> M }
            measure M "Rail" { dc voltage at Rail under 5 V -> N at least 5 V -> End source "Leaflet L, page 3" }
            measure N "Rail again" { dc voltage at Rail under 5 V -> O at least 5 V -> End source "Leaflet L, page 7" }
            measure O "Rail once more" { dc voltage at Rail under 5 V -> End at least 5 V -> End source "House rule" }
            conclude End "End" { finds nothing }
            """;

    /** A lead that only drains a charge comes back from the bench; a fuse may not. */
    @Test
    void should_tell_tools_from_parts() {
        String paper = CardText.of(Samples.text(BENCH)).all();
        String tools = CardText.even("Tools, supplies \u2610 solder wire \u2610 Bleed lead in a handle");
        String parts = CardText.even("Parts \u2610 Fuse T2A");
        assertTrue(paper.contains(tools) && paper.indexOf(parts) > paper.indexOf(tools), paper);
        String screen = Samples.string("card-html", Samples.text(BENCH)).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
        assertTrue(screen.contains("Tools, supplies \u2610 solder wire \u2610 Bleed lead in a handle Parts \u2610 Fuse T2A"), screen);
        String none = CardText.of(Samples.text(BENCH.replace(" tools \"solder wire\"", "").replace("handles Lead ", "").replace("handles Fuse ", ""))).all();
        assertFalse(none.contains("Tools,supplies") || none.contains("Parts\u2610"), none);
    }

    @Test
    void should_say_a_document_once_for_its_places() {
        String paper = CardText.of(Samples.text(BENCH)).all();
        assertTrue(paper.contains(CardText.even("Leaflet L: [1] page 3, [2] page 7 [3] House rule")), paper);
    }
}
