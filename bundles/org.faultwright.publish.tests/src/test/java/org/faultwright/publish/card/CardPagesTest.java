/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Arrays;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripperByArea;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.CardPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CardPagesTest {
    private static final Publication EVERYTHING = Samples.everything();
    private static final byte[] CARD = Samples.publish("card-pdf", EVERYTHING).bytes();

    @Test
    void should_draw_every_page_at_the_size_asked_for() throws IOException {
        try (CardPages pages = CardPages.open(CARD)) {
            assertEquals(CardText.of(CARD).pages().size(), pages.count());
            for (int page = 0; page < pages.count(); page++) {
                BufferedImage picture = pages.picture(page, 60);
                // ISO 216: A4 is 210 mm × 297 mm
                assertEquals(210 / 25.4 * 60, picture.getWidth(), 1);
                assertEquals(297 / 25.4 * 60, picture.getHeight(), 1);
                assertEquals(210 / 25.4 * 72, pages.size(page).getWidth(), 1);
                assertTrue(ink(picture) > 500, "ink: " + ink(picture));
            }
            assertEquals(pages.picture(0, 60).getWidth() * 2.0, pages.picture(0, 120).getWidth(), 2);
        }
    }

    private static long ink(BufferedImage picture) {
        return Arrays.stream(picture.getRGB(0, 0, picture.getWidth(), picture.getHeight(), null, 0,
                picture.getWidth())).filter(pixel -> (pixel & 0xFFFFFF) != 0xFFFFFF).count();
    }

    static Stream<Publication> published() {
        return Stream.concat(Stream.of(EVERYTHING), Samples.demos().stream().map(Samples::demo));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_know_where_each_step_stands(Publication publication) throws IOException {
        byte[] card = Samples.publish("card-pdf", publication).bytes();
        CardPages pages = CardPages.open(card);
        CardPlan plan = TypesetPlan.of(publication);
        assertEquals(plan.places().keySet(), pages.places().keySet());
        assertTrue(pages.places().keySet().stream().anyMatch(name -> name.matches("\\w+/\\w+")));
        try (PDDocument pdf = Loader.loadPDF(card)) {
            plan.placed().forEach(placed -> {
                String words = CardText.even(text(pdf, pages.printed().get(placed.label())));
                assertTrue(words.contains(CardText.even(placed.label() + placed.step().title())),
                        placed.label() + ": " + words);
            });
            plan.places().forEach((path, anchor) -> assertEquals(pages.printed().get(anchor.substring(5)), pages.places().get(path)));
        }
    }

    private static String text(PDDocument pdf, CardPages.Place place) {
        try {
            PDFTextStripperByArea stripper = new PDFTextStripperByArea();
            stripper.setSortByPosition(true);
            Rectangle2D area = place.area();
            stripper.addRegion("step", new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight()));
            stripper.extractRegions(pdf.getPage(place.page()));
            return stripper.getTextForRegion("step");
        } catch (IOException damaged) {
            throw new AssertionError(damaged);
        }
    }

    @Test
    void should_refuse_what_is_no_pdf() {
        assertThrows(IOException.class, () -> CardPages.open(new byte[] { 1, 2, 3 }));
    }

    @Test
    void should_say_that_it_was_closed() throws IOException {
        CardPages pages = CardPages.open(CARD);
        pages.close();
        pages.close();
        IOException refused = assertThrows(IOException.class, () -> pages.picture(0, 20));
        assertTrue(refused.getMessage().contains("closed"), refused.getMessage());
    }
}
