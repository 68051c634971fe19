/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.PlainText;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.Plan;
import org.faultwright.publish.plan.Section;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CardPaginationTest {
    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_keep_each_step_on_one_page_with_its_results(Publication publication) {
        CardText card = CardText.of(publication);
        Plan plan = new Plan(publication);
        int looked = 0;
        for (Section section : plan.sections()) {
            for (Step step : section.steps()) {
                String heading = CardText.even(plan.label(step) + step.title());
                String name = step.name().text();
                // closing steps share their title: 5 is not 35
                String needle = heading + kind(step) + (ClosingStep.is(step) ? CardText.even(name) : "");
                String page = card.pages().stream().filter(text -> text.contains(needle)).findFirst()
                        .orElseThrow(() -> new AssertionError("heading of " + name + " is split or missing"));
                String rest = page.substring(page.indexOf(needle) + heading.length());
                for (Outcome outcome : step.outcomes()) {
                    String result = CardText.even(Result.of(step, outcome, plan.scope(),
                            LimitZones.of(plan.procedure(), step)).word());
                    String target = outcome.target().map(to -> to.text()).map(to -> section.graph().isExit(
                            outcome.target().get()) ? CardText.even("back with: " + PlainText.phrase(to)) : CardText.even(to)).orElse("");
                    int at = rest.indexOf(result);
                    assertTrue(at >= 0, name + ": " + result + " is on another page");
                    rest = rest.substring(at + result.length());
                    int to = rest.indexOf(target);
                    assertTrue(to >= 0, name + ": the way to " + target + " is on another page");
                    rest = rest.substring(to + target.length());
                    looked++;
                }
            }
        }
        assertTrue(looked > 20);
    }

    private static String kind(Step step) {
        return CardText.even(Words.kind(step));
    }

    @Test
    void should_print_a_step_that_is_longer_than_a_page() {
        StringBuilder text = new StringBuilder("procedure Long check Many \"Which of these?\" { hint \"")
                .append("A long hint. ".repeat(200)).append("\"");
        IntStream.range(0, 90).forEach(i -> text.append(" result").append(i).append(" -> End"));
        CardText card = CardText.of(Samples.text(text + " } conclude End \"The end\" { finds nothing }"));
        assertTrue(card.pages().size() >= 4, "pages: " + card.pages().size());
        IntStream.range(0, 90).forEach(i -> assertTrue(card.all().contains("result" + i + "\u2192"), "result" + i));
        assertTrue(card.says("The end"));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_head_and_foot_every_page(Publication publication) {
        CardText card = CardText.of(publication);
        int count = card.pages().size();
        for (int i = 0; i < count; i++) {
            String page = card.pages().get(i);
            assertTrue(page.contains("Page" + (i + 1) + "of" + count), "page " + (i + 1));
            assertTrue(page.contains(publication.digest()), "page " + (i + 1));
            assertTrue(page.contains(CardText.even(publication.title() + publication.revision()))
                    || page.contains(CardText.even(publication.revision() + publication.title())), "page " + (i + 1));
        }
    }

    /** ISO 216: A4 is 210 mm × 297 mm. */
    @Test
    void should_print_on_a4() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(Samples.publish("card-pdf", Samples.everything()).bytes())) {
            for (PDPage page : pdf.getPages()) {
                assertEquals(210, page.getMediaBox().getWidth() / 72 * 25.4, 0.1);
                assertEquals(297, page.getMediaBox().getHeight() / 72 * 25.4, 0.1);
            }
        }
    }
}
