/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SignalWord;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;
import org.faultwright.publish.plan.UsedDeclarations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every paper, a grey printer, and type that is read at arm's length. */
class PrintTest {
    private static final double POINTS = 72 / 25.4;

    private static final Map<List<String>, byte[]> CARDS = new HashMap<>();

    /** Printed once. */
    private static byte[] card(String export, Publication publication) {
        return CARDS.computeIfAbsent(List.of(export, publication.digest()), none -> Samples.publish(export, publication).bytes());
    }

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo));
    }

    /** ISO 216 and ANSI/ASME Y14.1; the places of all steps lie on the paper, and every step is there once. */
    @ParameterizedTest
    @CsvSource({ "card-pdf, 210, 297", "card-pdf-a5, 148, 210", "card-pdf-across, 297, 210", "card-pdf-letter, 215.9, 279.4" })
    void should_print_every_step_inside_the_paper(String export, double width, double height) throws IOException {
        for (Publication publication : published().toList()) {
            byte[] card = card(export, publication);
            try (PDDocument pdf = Loader.loadPDF(card); CardPages pages = CardPages.open(card)) {
                for (PDPage page : pdf.getPages()) {
                    assertEquals(width, page.getMediaBox().getWidth() / POINTS, 0.2);
                    assertEquals(height, page.getMediaBox().getHeight() / POINTS, 0.2);
                }
                Map<String, CardPages.Place> places = pages.printed();
                TypesetPlan.of(publication).placed().map(PlacedStep::label).forEach(label -> {
                    CardPages.Place place = places.get(label);
                    assertTrue(pages.size(place.page()).contains(place.area()), publication.title() + ", " + label + ": " + place);
                });
                glyphs(pdf, (text, page) -> assertTrue(text.getX() > 0 && text.getX() + text.getWidth() <= width * POINTS - 12,
                        publication.title() + ", page " + page + ": " + text + " at " + text.getX()));
            }
        }
    }

    private interface Look {
        void at(TextPosition text, int page);
    }

    private static void glyphs(PDDocument pdf, Look look) throws IOException {
        new PDFTextStripper() {
            @Override
            protected void writeString(String words, List<TextPosition> texts) {
                texts.forEach(text -> look.at(text, getCurrentPageNo()));
            }
        }.getText(pdf);
    }

    /** Body at least 9 points; smaller are the running lines, the numbers of sources and the drawing of a blink code beside its words. */
    @ParameterizedTest
    @MethodSource("published")
    void should_set_nothing_that_is_read_smaller_than_nine_points(Publication publication) throws IOException {
        Set<Float> sizes = new HashSet<>();
        try (PDDocument pdf = Loader.loadPDF(card("card-pdf", publication))) {
            double foot = 297 * POINTS - 14 * POINTS;
            double head = 14 * POINTS;
            glyphs(pdf, (text, page) -> {
                sizes.add(text.getFontSizeInPt());
                boolean running = text.getY() < head || text.getY() > foot;
                boolean small = "[]0123456789\u2581\u2588 \u00A0".contains(text.getUnicode());
                assertTrue(running || small || text.getFontSizeInPt() >= 8.99, page + ": " + text + " in " + text.getFontSizeInPt());
            });
        }
        assertTrue(sizes.contains(11f), sizes.toString());
    }

    /** Heads and limits at least 11 points: both are found as they stand among glyphs of that size. */
    @ParameterizedTest
    @MethodSource("published")
    void should_set_heads_and_limits_in_eleven_points(Publication publication) throws IOException {
        StringBuilder large = new StringBuilder();
        try (PDDocument pdf = Loader.loadPDF(card("card-pdf", publication))) {
            glyphs(pdf, (text, page) -> large.append(text.getFontSizeInPt() >= 10.99 ? text.getUnicode() : ""));
        }
        String read = CardText.even(large.toString());
        TypesetPlan.of(publication).placed().forEach(placed -> {
            assertTrue(read.contains(CardText.even(Wording.title(placed.step()))), placed.label());
            CardResult.expected(placed.step()).ifPresent(limit -> assertTrue(read.contains(CardText.even(Wording.printed(limit))), placed.label()));
        });
    }

    /**
     * What a colour says is said by a word too, and the word stays readable in grey: every glyph stands out from the ground it is
     * printed on by 4.5 to 1 (WCAG 2.2, 1.4.3) when the page is turned grey. The lightest and the darkest grey inside the box of a
     * glyph are its ground and its ink, whichever is which.
     */
    @Test
    void should_keep_every_meaning_in_grey() throws IOException {
        byte[] card = card("card-pdf", Samples.everything());
        CardText text = CardText.of(card);
        for (String word : List.of("DANGER", "WARNING", "CAUTION", "NOTICE", "accept", "reject", "?")) {
            assertTrue(text.says(word), word);
        }
        int scale = 4;
        int[] looked = new int[1];
        try (PDDocument pdf = Loader.loadPDF(card)) {
            Map<Integer, BufferedImage> pages = new HashMap<>();
            for (int page = 0; page < pdf.getNumberOfPages(); page++) {
                pages.put(page + 1, new PDFRenderer(pdf).renderImage(page, scale, ImageType.RGB));
            }
            glyphs(pdf, (glyph, page) -> {
                if (!Character.isLetter(glyph.getUnicode().codePointAt(0)) || glyph.getFontSizeInPt() < 8.99) {
                    return;
                }
                double lightest = 0;
                double darkest = 1;
                for (float y = glyph.getY() - glyph.getHeight(); y < glyph.getY(); y += 1f / scale) {
                    for (float x = glyph.getX(); x < glyph.getX() + glyph.getWidth(); x += 1f / scale) {
                        double grey = grey(pages.get(page).getRGB((int) (x * scale), (int) (y * scale)));
                        lightest = Math.max(lightest, grey);
                        darkest = Math.min(darkest, grey);
                    }
                }
                assertTrue(contrast(lightest, darkest) >= 4.5, "page " + page + ": " + glyph + " " + contrast(lightest, darkest));
                looked[0]++;
            });
        }
        assertTrue(looked[0] > 2000, "glyphs: " + looked[0]);
    }

    /** Relative luminance after WCAG 2.2, which is what a grey printer keeps of a colour. */
    private static double grey(int rgb) {
        return 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static double contrast(double one, double other) {
        return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    }

    /** Each outcome of a step has words of its own: none is told by its colour or its place. */
    @ParameterizedTest
    @MethodSource("published")
    void should_tell_the_outcomes_of_a_step_apart_by_words(Publication publication) {
        CardPlan plan = TypesetPlan.of(publication);
        plan.steps().forEach(step -> {
            List<String> told = step.outcomes().stream().map(outcome -> CardResult.of(step, outcome, plan.scope(), LimitZones.of(plan.procedure(), step)))
                    .map(result -> result.word() + result.detail()).toList();
            assertEquals(told.size(), new HashSet<>(told).size(), step.name() + ": " + told);
        });
    }

    /**
     * Nobody reads what to do before what warns of it: signal word, all that is to be done about it and its number stand right before the
     * title of the step, on every paper and wherever the step is printed.
     */
    @ParameterizedTest
    @CsvSource({ "card-pdf", "card-pdf-a5", "card-pdf-across", "card-pdf-letter" })
    void should_print_every_note_whole_at_its_step(String export) {
        int looked = 0;
        for (Publication publication : published().toList()) {
            String card = CardText.of(card(export, publication)).all();
            CardPlan plan = TypesetPlan.of(publication);
            List<Note> numbered = List.copyOf(new UsedDeclarations(plan).notes().keySet());
            List<PlacedStep> printed = plan.placed().toList();
            int from = card.indexOf(CardText.even(CardText.STEPS));
            for (PlacedStep placed : printed) {
                from = card.indexOf(heading(placed), from + 1);
                assertTrue(from >= 0, publication.title() + " " + placed.label());
                List<Note> notes = Wording.notes(placed.step().frame(), plan.scope());
                String told = notes.stream().map(note -> CardText.even((note.word() == SignalWord.NOTICE ? "" : Wording.ALERT) + note.word().name() + Wording.hazards(note)
                        + note.avoid() + "note " + (numbered.indexOf(note) + 1))).collect(Collectors.joining());
                String before = card.substring(0, from);
                assertTrue(before.endsWith(told), publication.title() + " " + placed.label() + " lacks " + told + ": " + before.substring(Math.max(0, from - 300)));
                looked += notes.size();
            }
        }
        assertTrue(looked > 100, "notes: " + looked);
    }

    private static String heading(PlacedStep placed) {
        return CardText.even(placed.label() + Wording.title(placed.step()));
    }

    /** A full stop may end an abbreviation. */
    @Test
    void should_not_cut_a_note_at_a_full_stop() {
        Publication publication = Samples.text("""
                procedure Abb "Abb" equipment "K2"
                note Sharp danger { covers shock hazard "Live parts." consequence "Shock." avoid "Wear gloves acc. EN 60903, class 0. Keep one hand away." }
                check A "Look" { notes Sharp yes -> B no -> B }
                conclude B "B" { finds nothing }
                """);
        assertTrue(CardText.of(publication).says("electric shock: Wear gloves acc. EN 60903, class 0. Keep one hand away. note 1"));
    }

    /** On both branches of a routine that stands in a box, and again where it is printed again. */
    @Test
    void should_print_a_note_on_each_branch_and_a_hint_at_each_place() {
        Publication publication = Samples.text("""
                procedure Branch "Branch" equipment "K2"
                note Charge danger { covers charge hazard "Charged." consequence "Shock." avoid "Bleed first. Then read." }
                perform A "Prepare" by Q { done -> B bad -> Refer }
                perform B "Prepare again" by Q { done -> End bad -> Refer }
                conclude End "End" { finds nothing }
                conclude Refer "Refer" { refers to "somebody" }
                routine Q "Q" { exits done, bad
                    check Which "Big or small unit?" { hint "The big one has two lids." big -> Big small -> Small }
                    do Big "Open the big one" { notes Charge then -> done }
                    do Small "Open the small one" { notes Charge then -> bad }
                }
                """);
        String card = CardText.of(publication).all();
        int places = (int) TypesetPlan.of(publication).placed().filter(placed -> placed.step().name().text().equals("Which")).count();
        assertEquals(2 * places, count(card, CardText.even("stored charge: Bleed first. Then read. note 1")));
        assertEquals(places, count(card, CardText.even("The big one has two lids.")));
    }

    private static int count(String all, String words) {
        return (all.length() - all.replace(words, "").length()) / words.length();
    }

    /** An arrow leads from every outcome, also to the step that is printed below it, since a page may end between. */
    @ParameterizedTest
    @CsvSource({ "card-pdf", "card-pdf-a5", "card-pdf-across", "card-pdf-letter" })
    void should_print_an_arrow_for_every_outcome(String export) {
        int looked = 0;
        for (Publication publication : published().toList()) {
            String card = CardText.of(card(export, publication)).all();
            CardPlan plan = TypesetPlan.of(publication);
            List<PlacedStep> printed = plan.placed().toList();
            int from = card.indexOf(CardText.even(CardText.STEPS));
            for (int i = 0; i < printed.size(); i++) {
                PlacedStep placed = printed.get(i);
                from = card.indexOf(heading(placed), from);
                String own = card.substring(from, i + 1 == printed.size() ? card.length() : card.indexOf(heading(printed.get(i + 1)), from));
                for (Outcome outcome : plan.inside(placed).isEmpty() ? placed.step().outcomes() : List.<Outcome>of()) {
                    StepRun.Target target = placed.run().target(outcome.target().orElseThrow());
                    String way = target instanceof StepRun.To to ? Wording.ARROW + to.step().label() : CardText.even("back with: ");
                    assertTrue(own.contains(way), publication.title() + " " + placed.label() + " lacks " + way);
                    looked++;
                }
            }
        }
        assertTrue(looked > 500, "outcomes: " + looked);
    }

    @Test
    void should_name_an_instrument_that_is_only_tried_as_it_is_called() {
        Publication publication = Samples.text("""
                procedure Tried "Tried" equipment "K2"
                instrument Main "Hand-held multimeter" { measures dc voltage range 20 V accuracy 0.5 % }
                instrument Other "Second meter, spare" { measures dc voltage range 20 V accuracy 0.5 % }
                check A "Does it read?" { tries Other yes -> B no -> B }
                conclude B "B" { finds nothing }
                """);
        CardText card = CardText.of(publication);
        assertTrue(card.says("Try first Second meter on a known source"), card.spaced().toString());
        assertTrue(card.says(Wording.BOX + " Second meter, spare"), card.spaced().toString());
    }
}
