/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.faultwright.procedure.Note;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.Placed;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Used;
import org.faultwright.publish.plan.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every paper, a grey printer, and type that is read at arm's length. */
class PrintTest {
    private static final double POINTS = 72 / 25.4;

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo));
    }

    /** ISO 216 and ANSI/ASME Y14.1; the places of all steps lie on the paper, and every step is there once. */
    @ParameterizedTest
    @CsvSource({ "card-pdf, 210, 297", "card-pdf-a5, 148, 210", "card-pdf-across, 297, 210", "card-pdf-letter, 215.9, 279.4" })
    void should_print_every_step_inside_the_paper(String export, double width, double height) throws IOException {
        for (Publication publication : published().toList()) {
            byte[] card = Samples.publish(export, publication).bytes();
            try (PDDocument pdf = Loader.loadPDF(card); CardPages pages = CardPages.open(card)) {
                for (PDPage page : pdf.getPages()) {
                    assertEquals(width, page.getMediaBox().getWidth() / POINTS, 0.2);
                    assertEquals(height, page.getMediaBox().getHeight() / POINTS, 0.2);
                }
                Map<String, CardPages.Place> places = pages.printed();
                new Plan(publication).placed().map(Placed::label).forEach(label -> {
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
        try (PDDocument pdf = Loader.loadPDF(Samples.publish("card-pdf", publication).bytes())) {
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
        try (PDDocument pdf = Loader.loadPDF(Samples.publish("card-pdf", publication).bytes())) {
            glyphs(pdf, (text, page) -> large.append(text.getFontSizeInPt() >= 10.99 ? text.getUnicode() : ""));
        }
        String read = CardText.even(large.toString());
        new Plan(publication).placed().forEach(placed -> {
            assertTrue(read.contains(CardText.even(Words.title(placed.step()))), placed.label());
            Result.expected(placed.step()).ifPresent(limit -> assertTrue(read.contains(CardText.even(limit.spelling())), placed.label()));
        });
    }

    /**
     * What a colour says is said by a word too, so that a grey print loses nothing. Of every colour on the page there is a grey that its
     * words stand out from by 4.5 to 1 (WCAG 2.2, 1.4.3), and the grounds of two signal words are told apart by the words in them.
     */
    @Test
    void should_keep_every_meaning_in_grey() throws IOException {
        byte[] card = Samples.publish("card-pdf", Samples.everything()).bytes();
        CardText text = CardText.of(card);
        for (String word : List.of("DANGER", "WARNING", "CAUTION", "NOTICE", "accept", "reject", "?")) {
            assertTrue(text.says(word), word);
        }
        Map<Integer, Integer> colours = new TreeMap<>();
        try (PDDocument pdf = Loader.loadPDF(card)) {
            for (int page = 0; page < pdf.getNumberOfPages(); page++) {
                BufferedImage picture = new PDFRenderer(pdf).renderImageWithDPI(page, 100, ImageType.RGB);
                for (int pixel : picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0, picture.getWidth())) {
                    colours.merge(pixel & 0xFFFFFF, 1, Integer::sum);
                }
            }
        }
        List<Integer> grounds = new ArrayList<>(colours.entrySet().stream().filter(one -> one.getValue() > 1500).map(Map.Entry::getKey).toList());
        assertTrue(grounds.size() >= 5, "grounds: " + grounds.size());
        for (int ground : grounds) {
            double grey = grey(ground);
            assertTrue(contrast(grey, 1) >= 4.5 || contrast(grey, 0) >= 4.5, Integer.toHexString(ground) + " in grey");
        }
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
        Plan plan = new Plan(publication);
        plan.steps().forEach(step -> {
            List<String> told = step.outcomes().stream().map(outcome -> Result.of(step, outcome, plan.scope(), LimitZones.of(plan.procedure(), step)))
                    .map(result -> result.word() + result.detail()).toList();
            assertEquals(told.size(), new HashSet<>(told).size(), step.name() + ": " + told);
        });
    }

    /** A step never stands without its note: signal word, number and what to do first, between its title and the next step's. */
    @ParameterizedTest
    @MethodSource("published")
    void should_print_every_note_that_is_due_at_its_step(Publication publication) {
        CardText card = CardText.of(publication);
        Plan plan = new Plan(publication);
        List<Note> numbered = List.copyOf(new Used(plan).notes().keySet());
        int looked = 0;
        for (Placed placed : plan.placed().toList()) {
            String heading = CardText.even(placed.label() + Words.kind(placed.step()) + Words.title(placed.step()));
            int from = card.all().indexOf(heading);
            for (Note note : placed.step().frame().notes().stream().flatMap(name -> plan.scope().note(name).stream()).toList()) {
                String number = "note" + (numbered.indexOf(note) + 1);
                boolean toldByHost = placed.run().caller().filter(host -> Stream.concat(Stream.of(host), plan.inside(host).stream()
                        .takeWhile(inner -> inner != placed)).anyMatch(before -> before.step().frame().notes().stream()
                                .anyMatch(name -> name.text().equals(note.name().text())))).isPresent();
                int signal = card.all().indexOf(note.word().name(), from);
                int at = card.all().indexOf(number, from);
                int first = card.all().indexOf(CardText.even(note.avoid().split("(?<=[.!?]) ")[0]), from);
                assertTrue(toldByHost || signal > 0 && signal - from < 700 && at > signal && first > signal && at - signal < 500,
                        placed.label() + " lacks " + note.name());
                looked++;
            }
        }
        assertTrue(looked > 2);
    }
}
