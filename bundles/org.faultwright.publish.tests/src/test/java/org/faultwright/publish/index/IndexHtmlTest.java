/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.index;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.htmlunit.WebClient;
import org.htmlunit.html.HtmlInput;
import org.htmlunit.html.HtmlPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class IndexHtmlTest {
    private static String index(Set<String> files, Publication... publications) {
        return new String(new IndexHtml().publish(new ProcedureFolder("Slipway", List.of(publications), files)).bytes(),
                StandardCharsets.UTF_8);
    }

    @Test
    void should_show_the_words_that_lead_to_a_card() {
        String page = index(Set.of("EdnorColdPlate.html"), Samples.everything());
        Samples.everything().procedure().complaints().forEach(complaint -> assertTrue(page.contains(
                complaint.value().replace("\"", "&quot;")), complaint.value()));
        Samples.everything().procedure().faults().forEach(fault -> assertTrue(page.contains(fault.title()), fault.title()));
        // the title of the procedure, and the word card
        assertEquals(2, page.split("href=\"EdnorColdPlate.html\"", -1).length - 1);
    }

    @Test
    void should_link_only_to_files_that_are_there() {
        assertFalse(index(Set.of(), Samples.everything()).contains("href"));
        String page = index(Set.of("EdnorColdPlate.pdf", "Another.html"), Samples.everything());
        assertEquals(1, page.split("href=", -1).length - 1);
        assertTrue(page.contains("href=\"EdnorColdPlate.pdf\""));
    }

    @Test
    void should_order_equipment_as_words_and_not_as_codes() {
        String page = index(Set.of(), Samples.text("procedure A equipment \"Zebra\""), Samples.text("procedure B equipment \"apple\""),
                Samples.text("procedure C equipment \"\u00C4pple\""), Samples.text("procedure D equipment \"Banana\""));
        assertTrue(page.indexOf("apple") < page.indexOf("\u00C4pple"));
        assertTrue(page.indexOf("\u00C4pple") < page.indexOf("Banana"));
        assertTrue(page.indexOf("Banana") < page.indexOf("Zebra"));
    }

    /** In a browser without a window (HtmlUnit), as somebody types. The page is opened from the file system. */
    @Test
    void should_find_one_of_three_thousand_by_complaint_equipment_code_fault_and_part(@TempDir Path folder) throws IOException {
        Publication[] many = IntStream.range(0, 3_000).mapToObj(IndexHtmlTest::made).toArray(Publication[]::new);
        Path file = Files.writeString(folder.resolve("index.html"), index(Set.of("Made7.html"), many));
        try (WebClient browser = new WebClient()) {
            browser.getOptions().setCssEnabled(false);
            HtmlPage page = browser.getPage(file.toUri().toURL());
            assertEquals("", shown(page, ""));
            assertEquals("1 procedure", shown(page, "squeals 1234"));
            assertEquals("1 procedure", shown(page, "ednor k2718"));
            assertEquals("1 procedure", shown(page, "LOOSE belt77 "));
            assertEquals("1 procedure", shown(page, "5 blinks overheated42"));
            assertEquals("1 procedure", shown(page, "f\u00FChler99"));
            assertEquals("1 procedure", shown(page, "fuhler99"));
            assertEquals("1 procedure", shown(page, "bearing pn-55"));
            assertEquals("3000 procedures, the first 200 are shown", shown(page, "squeals"));
            assertEquals("Nothing found. Try fewer words, or the beginning of one.", shown(page, "squeals nowhere"));
            assertEquals("", shown(page, " "));
        }
    }

    /** A slip of the finger is forgiven, a code is the same however it is spaced, part of another word is not meant, and the best one stands first. */
    @Test
    void should_forgive_slips_and_put_the_best_first(@TempDir Path folder) throws IOException {
        Publication drawer = Samples.text("procedure Drawer \"Till drawer is stuck\" equipment \"Lund T60-C\" complaints \"drawer stuck\", \"cannot print\" indicator Lamp { 3 blinks means \"Wait 5 s\" }");
        Publication iron = Samples.text("procedure Iron \"Soldering iron stays cold\" equipment \"Haven SI60\" complaints \"stays cold\", \"won't melt\" indicator Panel { 5 blinks means \"Sensor open\" }"
                + " part Triac \"Triac\" number \"CR2032\" fault Heater \"Heater open, E 01\" { cases 1 }");
        Path file = Files.writeString(folder.resolve("index.html"), index(Set.of("Drawer.html", "Iron.html"), drawer, iron));
        try (WebClient browser = new WebClient()) {
            browser.getOptions().setCssEnabled(false);
            HtmlPage page = browser.getPage(file.toUri().toURL());
            for (String typed : List.of("stais cold", "triak", "solderring iron", "heeter", "E01", "e 01", "E-01", "SI 60", "wont melt")) {
                type(page, typed);
                assertTrue(found(page).startsWith("1 procedure") && visible(page).get(0).contains("Soldering iron"), typed + ": " + found(page) + visible(page));
            }
            type(page, "5 blinks");
            assertTrue(visible(page).get(0).contains("Soldering iron"), found(page) + visible(page));
            for (String typed : List.of("drawer stcuk", "T60C", "t60 c", "cannot print")) {
                type(page, typed);
                assertTrue(visible(page).get(0).contains("Till drawer"), typed + ": " + found(page) + visible(page));
            }
            for (String typed : List.of("ink", "CR2O33", "\"", "44", "printer of nothing", "((", "\\")) {
                type(page, typed);
                assertEquals(0, visible(page).size(), typed + visible(page));
            }
        }
    }

    /** Whoever presses Enter by habit is taken to no card. */
    @Test
    void should_open_a_card_by_enter_only_where_one_is_left(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("A.html"), "<title>card A</title>");
        Files.writeString(folder.resolve("B.html"), "<title>card B</title>");
        Path file = Files.writeString(folder.resolve("index.html"), index(Set.of("A.html", "B.html"), Samples.text("procedure A \"Lamp dark\" complaints \"dark\""),
                Samples.text("procedure B \"Lamp flickers\" complaints \"flickers\"")));
        try (WebClient browser = new WebClient()) {
            browser.getOptions().setCssEnabled(false);
            for (String typed : List.of("", "lamp", "nothing")) {
                HtmlPage page = browser.getPage(file.toUri().toURL());
                type(page, typed);
                page.getHtmlElementById("search").type(org.htmlunit.javascript.host.event.KeyboardEvent.DOM_VK_RETURN);
                assertTrue(browser.getCurrentWindow().getEnclosedPage().getUrl().toString().endsWith("index.html"), typed);
            }
            HtmlPage page = browser.getPage(file.toUri().toURL());
            type(page, "flickers");
            page.getHtmlElementById("search").type(org.htmlunit.javascript.host.event.KeyboardEvent.DOM_VK_RETURN);
            browser.waitForBackgroundJavaScript(1_000);
            assertTrue(browser.getCurrentWindow().getEnclosedPage().getUrl().toString().endsWith("B.html"));
        }
    }

    private static void type(HtmlPage page, String words) {
        HtmlInput box = page.getHtmlElementById("search");
        box.setValue(words);
        box.fireEvent("input");
    }

    private static String found(HtmlPage page) {
        return page.getElementById("found").getTextContent();
    }

    private static List<String> visible(HtmlPage page) {
        return page.querySelectorAll("#procedures > article").stream().map(row -> (org.htmlunit.html.HtmlElement) row).filter(row -> !row.hasAttribute("hidden"))
                .map(row -> row.getTextContent()).toList();
    }

    private static Publication made(int i) {
        return Samples.text("procedure Made" + i + " \"Made " + i + "x\" equipment \"Ednor K" + i + "x\" complaints \"squeals " + i + "x\" "
                + "part Sensor \"F\u00FChler" + i + "x\" number \"PN-" + i + "x\" indicator Lamp { 5 blinks means \"overheated" + i + "x\" } "
                + "fault Belt \"Loose belt" + i + "x\" { } fault Fan \"Bearing dry\" { }");
    }

    private static String shown(HtmlPage page, String typed) {
        HtmlInput box = page.getHtmlElementById("search");
        box.setValue(typed.isEmpty() ? "" : typed.replaceAll("(\\d{2,}) ?$", "$1x"));
        box.fireEvent("input");
        return page.getElementById("found").getTextContent();
    }

    @Test
    void should_say_what_is_not_released_and_what_is_open() {
        String page = index(Set.of(), Samples.text("procedure P check A \"?\" { yes -> Nowhere }"),
                Samples.text("procedure Q revision 3 draft conclude End { finds nothing }"));
        assertTrue(page.contains("open error"), page);
        assertTrue(page.contains("Revision 3, draft"), page);
        assertTrue(page.contains("not released, do not work by it"), page);
    }

    /** A code is found by whoever sees it, and nobody looks for it on the card in vain. */
    @Test
    void should_tell_which_codes_the_card_has_no_result_for() {
        String page = index(Set.of(), Samples.text("procedure P indicator Lamp \"Lamp\" { 2 blinks means \"Low\" 5 blinks means \"Bank above 385 V\" } "
                + "observe Look \"?\" at Lamp { 2 blinks -> End anything else -> End } conclude End { finds nothing }"));
        assertTrue(page.contains("2 blinks: Low; 5 blinks: Bank above 385 V (on the card under &quot;anything else&quot;)"), page);
    }

    @Test
    void should_lead_to_what_changed_only_where_that_page_is() {
        Publication made = Samples.text("procedure Q \"Quiet\" conclude End { finds nothing }");
        assertTrue(index(Set.of("Q.html", "comparison.html"), made).contains("<a href=\"comparison.html\">What changed since the last release</a>"));
        assertFalse(index(Set.of("Q.html"), made).contains("comparison.html"));
    }

    @Test
    void should_name_each_file_by_what_it_is_for() {
        String page = index(Set.of("Q.html", "Q.bench.html", "Q.pdf", "Q.a5.pdf", "Q.across.pdf", "Q.letter.pdf", "Q.chart.pdf", "Q.tree.json", "quality.pdf"),
                Samples.text("procedure Q \"Quiet\" revision 3 reviewed by \"A. Ward\" dated 2026-01-02 conclude End { finds nothing }"));
        assertTrue(page.contains("<a href=\"Q.bench.html\">step by step, on a tablet or phone</a>"), page);
        assertTrue(page.contains("<a href=\"Q.letter.pdf\">card, Letter</a>"), page);
        assertTrue(page.contains("<a href=\"Q.tree.json\">data for other programs</a>"), page);
        assertTrue(page.contains("<a href=\"quality.pdf\">Quality report to print and sign</a>"), page);
        assertTrue(page.contains("Revision 3, reviewed, 2026-01-02: not released yet"), page);
        assertFalse(page.contains("<table"), page);
    }
}
