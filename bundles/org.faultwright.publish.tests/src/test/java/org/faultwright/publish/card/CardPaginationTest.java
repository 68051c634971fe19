/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.StepRun;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CardPaginationTest {
    static Stream<Publication> published() {
        return Stream.concat(Stream.of(Samples.everything()), Samples.demos().stream().map(Samples::demo));
    }

    @ParameterizedTest
    @MethodSource("published")
    void should_keep_each_step_on_one_page_with_its_outcomes(Publication publication) {
        CardText card = CardText.of(publication);
        CardPlan plan = TypesetPlan.of(publication);
        List<String> pages = steps(card.pages());
        int looked = 0;
        for (PlacedStep placed : plan.placed().toList()) {
            Step step = placed.step();
            String heading = CardText.even(placed.label() + Wording.title(step));
            String name = placed.label() + " " + step.name().text();
            String page = pages.stream().filter(text -> text.contains(heading)).findFirst()
                    .orElseThrow(() -> new AssertionError("heading of " + name + " is split or missing"));
            String rest = page.substring(page.indexOf(heading) + heading.length());
            boolean read = plan.inside(placed).isEmpty() && PaperOutcomes.only(step).isEmpty();
            for (Outcome outcome : read ? step.outcomes() : List.<Outcome>of()) {
                String result = CardText.even(Wording.BOX + CardResult.of(step, outcome, plan.scope(),
                        LimitZones.of(plan.procedure(), step)).word());
                int at = rest.indexOf(result);
                assertTrue(at >= 0, name + ": " + result + " is on another page");
                rest = rest.substring(at + result.length());
                String target = outcome.target().map(to -> target(placed, to)).orElse("");
                int to = rest.indexOf(target);
                assertTrue(to >= 0, name + ": the way to " + target + " is on another page");
                rest = rest.substring(to + target.length());
                looked++;
            }
        }
        assertTrue(looked > 20);
    }

    /** The pages from the first step on; what is before it has the titles of steps too. */
    private static List<String> steps(List<String> pages) {
        String all = String.join("\f", pages);
        int first = all.indexOf(CardText.even(CardText.STEPS));
        return List.of((all.substring(0, first).replaceAll("[^\f]", "") + all.substring(first)).split("\f", -1));
    }

    private static String target(PlacedStep placed, Name name) {
        StepRun.Target target = placed.run().target(name);
        return target instanceof StepRun.To to ? Wording.ARROW + to.step().label()
                : target instanceof StepRun.Back back ? CardText.even("back with: " + PlainText.phrase(back.exit())) : "";
    }

    /** Whoever reads "p. 3" turns the page; who reads none stays. */
    @ParameterizedTest
    @MethodSource("published")
    void should_name_the_page_of_an_arrow_just_where_it_leaves_its_own(Publication publication) throws IOException {
        byte[] card = Samples.publish("card-pdf", publication).bytes();
        Map<String, Integer> pages = new HashMap<>();
        CardPlan plan = TypesetPlan.of(publication);
        Map<String, CardPages.Place> places = CardPages.open(card).printed();
        plan.placed().forEach(placed -> pages.put(placed.label(), places.get(placed.label()).page() + 1));
        Pattern arrow = Pattern.compile(Wording.ARROW + " ?([A-Z]*[0-9]+[a-z]*)\\b(?: p\\. ([0-9]+))?");
        List<String> text = withoutChart(CardText.of(publication).spaced());
        int leaving = 0;
        int staying = 0;
        for (int i = 0; i < text.size(); i++) {
            Matcher found = arrow.matcher(text.get(i));
            while (found.find()) {
                Integer page = pages.get(found.group(1));
                if (page != null && found.group(2) != null) {
                    assertEquals(page, Integer.valueOf(found.group(2)), found.group());
                    assertNotEquals(i + 1, page, found.group());
                    leaving++;
                } else if (page != null) {
                    assertEquals(i + 1, page, "on page " + (i + 1) + ": " + found.group());
                    staying++;
                }
            }
        }
        assertTrue(leaving > 5, "leaving: " + leaving);
        assertTrue(staying > 5, "staying: " + staying);
    }

    /** The drawing of all steps, which may run over pages, says where each stands by its number alone. */
    private static List<String> withoutChart(List<String> pages) {
        String page = "\f";
        String all = String.join(page, pages);
        int from = all.indexOf("All steps");
        int to = all.indexOf(CardText.STEPS, from);
        String chart = all.substring(from, to);
        return List.of((all.substring(0, from) + chart.replaceAll("[^\f]", "") + all.substring(to)).split(page, -1));
    }

    @Test
    void should_print_a_step_that_is_longer_than_a_page() {
        StringBuilder text = new StringBuilder("procedure Long check Many \"Which of these?\" { hint \"")
                .append("A long hint. ".repeat(200)).append("\"");
        IntStream.range(0, 90).forEach(i -> text.append(" result").append(i).append(" -> End"));
        CardText card = CardText.of(Samples.text(text + " } conclude End \"The end\" { finds nothing }"));
        assertTrue(card.pages().size() >= 2, "pages: " + card.pages().size());
        IntStream.range(0, 90).forEach(i -> assertTrue(card.all().contains("result" + i), "result" + i));
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
