/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.publish.plan.CardSection;
import org.faultwright.publish.plan.PlacedStep;
import org.faultwright.publish.plan.UsedDeclarations;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The basics of WCAG 2.2 that can be told from the page alone. */
class CardHtmlTest {
    private static final String HTML = Samples.string("card-html", Samples.everything());

    private static List<String> found(String pattern) {
        List<String> found = new ArrayList<>();
        Matcher matcher = Pattern.compile(pattern).matcher(HTML);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    /** WCAG 3.1.1, 2.4.2. */
    @Test
    void should_state_language_and_title() {
        assertEquals(List.of("en"), found("<html lang=\"([a-z]+)\">"));
        assertEquals(List.of("Plate stays cold &amp; the display shows &lt; 40 \u00B0C"), found("<title>([^<]*)</title>"));
    }

    /** WCAG 1.3.1: one main heading, and no level left out. */
    @Test
    void should_nest_headings() {
        List<Integer> levels = found("<h([1-6])[ >]").stream().map(Integer::valueOf).toList();
        assertEquals(1, levels.stream().filter(level -> level == 1).count());
        assertEquals(1, levels.get(0));
        for (int i = 1; i < levels.size(); i++) {
            assertTrue(levels.get(i) - levels.get(i - 1) <= 1, "heading " + i + " of " + levels);
        }
        assertTrue(levels.size() > 30);
    }

    /** WCAG 1.3.1: each table has header cells that say what they head. */
    @Test
    void should_head_every_table() {
        List<String> tables = found("(?s)(<table.*?</table>)");
        assertTrue(tables.size() > 10);
        tables.forEach(table -> assertTrue(table.contains("<th"), table));
        long headers = found("(<th[ >])").size();
        assertEquals(headers, found("<th[^>]* scope=\"(row|col)\"").size());
    }

    @Test
    void should_give_each_id_once_and_lead_every_link_to_one() {
        List<String> ids = found(" id=\"([^\"]*)\"");
        Set<String> once = new HashSet<>(ids);
        assertEquals(ids.size(), once.size());
        List<String> links = found("href=\"#([^\"]*)\"");
        assertTrue(links.size() > 30);
        links.forEach(link -> assertTrue(once.contains(link), link));
    }

    @Test
    void should_depend_on_nothing_outside_the_file() {
        assertFalse(HTML.contains("http://"));
        assertFalse(HTML.contains("https://"));
        assertFalse(HTML.contains("url("));
        assertFalse(HTML.contains("@import"));
    }

    /**
     * WCAG 2.2, 1.4.3: 4.5 to 1 for text of this size. ANSI Z535.4 sets danger in white on red, warning in black on
     * orange, caution in black on yellow, notice in white on blue.
     */
    @ParameterizedTest
    @CsvSource({ "danger .word", "warning .word", "note.caution .word", "notice .word", "step h3 .number" })
    void should_set_words_in_enough_contrast(String style) {
        Matcher rule = Pattern.compile("(?s)\\." + Pattern.quote(style) + " \\{[^}]*?\\}").matcher(HTML);
        assertTrue(rule.find(), style);
        double ground = luminance(rule.group(), "background-color: #([0-9a-f]{6})");
        double ink = luminance(rule.group(), "[ ;{]color: #([0-9a-f]{6})");
        double contrast = (Math.max(ground, ink) + 0.05) / (Math.min(ground, ink) + 0.05);
        assertTrue(contrast >= 4.5, style + " has a contrast of " + contrast);
    }

    /** Relative luminance after WCAG 2.2, from sRGB (IEC 61966-2-1). */
    private static double luminance(String rule, String pattern) {
        Matcher colour = Pattern.compile(pattern).matcher(rule);
        assertTrue(colour.find(), rule);
        int rgb = Integer.parseInt(colour.group(1), 16);
        return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    private static String html(String text) {
        return Samples.string("card-html", Samples.text(text));
    }

    private static String words(String html) {
        return html.replaceAll("(?s)<style>.*</style>", " ").replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    /** Whoever has the page on a screen has all that is on paper. */
    @Test
    void should_say_what_the_card_on_paper_says() {
        Publication demo = Samples.demo(Samples.demos().get(0));
        String screen = CardText.even(words(Samples.string("card-html", demo)));
        CardText paper = CardText.of(demo);
        for (String part : List.of("Dangers: read before anything else", "What it can be", "Time to expect", "You will need", "Condition on arrival", "All steps",
                "Steps: begin at 1. Tick what you see, go where its arrow says", "Came from step", "Ends with:", "Close the job", "Which fault was it? Tick each that it may be.",
                "Parts used", "Remarks", "Before the unit leaves the bench", "Sources")) {
            assertTrue(screen.contains(CardText.even(part)), part);
            assertTrue(paper.says(part), part);
        }
        assertFalse(screen.contains(CardText.even("Set-up")));
        assertFalse(screen.contains("Remedydone"));
    }

    @Test
    void should_call_no_step_by_its_name_in_the_text() {
        for (Path file : Samples.demos()) {
            Publication demo = Samples.demo(file);
            String page = words(Samples.string("card-html", demo));
            demo.procedure().steps().stream().map(step -> step.name().text()).filter(name -> name.matches("[A-Z][a-z]+[A-Z].*"))
                    .forEach(name -> assertFalse(page.matches("(?s).*\\b" + name + "\\b.*"), name + " on the card of " + demo.title()));
        }
    }

    /** A place that is left out of the list of a danger is taken to be harmless. */
    @Test
    void should_list_every_place_that_reads_a_note() {
        for (Path file : Samples.demos()) {
            Publication demo = Samples.demo(file);
            String page = Samples.string("card-html", demo);
            CardPlan plan = TypesetPlan.of(demo);
            new UsedDeclarations(plan).notes().forEach((note, steps) -> {
                String list = steps(page, note.hazard());
                List<String> printed = plan.placed().filter(placed -> steps.contains(placed.step())).map(PlacedStep::label).toList();
                assertEquals(String.join(", ", printed), list, note.hazard() + " of " + demo.title());
                printed.forEach(label -> assertTrue(page.contains("id=\"step-" + label + "\""), label));
            });
        }
    }

    private static String steps(String page, String hazard) {
        Matcher note = Pattern.compile("(?s)<b>" + Pattern.quote(hazard.replace("'", "&#39;")) + "</b>.*?Steps? (<a .*?)\\.</p>").matcher(page);
        assertTrue(note.find(), hazard);
        return note.group(1).replaceAll("<[^>]*>", "");
    }

    private static final String BLINKING = """
            procedure B "B"
            condition Supply "Supply" { off, on } live when on starts off
            indicator Lamp "Lamp" { 2 blinks means "Level not reached" 5 blinks means "Bank above 385 V, charger locked" }
            observe Look "Look" at Lamp { sets Supply on 2 blinks -> End anything else -> Apart }
            perform Apart "Apart" by Tried { good -> End bad -> Look at most 1 times, else End }
            perform Again "Again" by Tried { good -> End bad -> End }
            routine Tried "Try" { exits good, bad
                check Try "Does it go?" { yes -> good no -> Wait }
                do Wait "Wait" { takes 1 min then -> More }
                check More "And now?" { yes -> good no -> bad }
                do Rest "Rest" { takes 2 min then -> More }
            }
            conclude End "End" { finds nothing }
            """;

    /** The one code that somebody should be warned of must not be hidden in what is left over. */
    @Test
    void should_tell_the_codes_that_go_with_anything_else() {
        assertTrue(words(html(BLINKING)).contains("anything else : also 5 blinks (Bank above 385 V, charger locked)"), words(html(BLINKING)));
    }

    /** Behind the arrow nobody reads on. */
    @Test
    void should_say_what_is_set_before_the_arrows() {
        String page = html(BLINKING);
        int step = page.indexOf("id=\"step-1\"");
        assertTrue(page.indexOf(">Then<", step) > step && page.indexOf(">Then<", step) < page.indexOf("class=\"results\"", step), page);
    }

    @Test
    void should_lead_on_from_a_conclusion_and_back_to_every_caller() {
        String page = html(BLINKING);
        assertTrue(Pattern.compile("<a class=\"way\" href=\"#close-the-job\"[^>]*>\u2192 Close the job</a>").matcher(page).find(), page);
        for (Path file : Samples.demos()) {
            CardPlan plan = TypesetPlan.of(Samples.demo(file));
            String card = Samples.string("card-html", Samples.demo(file));
            plan.sections().stream().filter(CardSection::isRoutine).forEach(section -> {
                String back = plan.callers(section).stream().map(PlacedStep::label).collect(Collectors.joining(", "));
                assertTrue(words(card).replace(" ,", ",").contains("back with: ") && words(card).replace(" ,", ",").contains("to " + back), section.letter() + " back to " + back);
            });
        }
    }

    /** WCAG 2.2, 1.4.10, and what would be read wrongly: 5.0 as 50. */
    @ParameterizedTest
    @CsvSource({ "boxes", "way", "more", "whole" })
    void should_never_break_what_is_read_as_one(String style) {
        assertTrue(Pattern.compile("\\." + style + " \\{[^}]*white-space: nowrap").matcher(HTML).find(), style);
        assertTrue(HTML.contains("class=\"" + style + "\""), style);
    }
}
