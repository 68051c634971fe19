/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.procedure.Hazard;
import org.faultwright.publish.Caution;
import org.faultwright.publish.Hostile;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Samples;
import org.htmlunit.CollectingAlertHandler;
import org.htmlunit.WebClient;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.HtmlFileInput;
import org.htmlunit.html.HtmlInput;
import org.htmlunit.html.HtmlPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BenchPageTest {
    private static final Pattern SCRIPT = Pattern.compile("(?s)<script([^>]*)>(.*?)</script>");

    private static String html(Publication publication) {
        return Samples.string("bench-html", publication);
    }

    static Stream<Path> demos() {
        return Samples.demos().stream();
    }

    /** Every demo procedure has some 40 steps with those of its routines. */
    @ParameterizedTest
    @MethodSource("demos")
    void should_keep_a_page_under_150_kB(Path demo) {
        assertTrue(Samples.publish("bench-html", Samples.demo(demo)).bytes().length < 150_000, demo.toString());
    }

    /** The sum that the policy names is that of the one script that is code (Content Security Policy Level 3, 4.2.5). */
    @Test
    void should_let_one_script_run_and_nothing_be_fetched() throws Exception {
        for (String html : List.of(html(Samples.everything()), html(Hostile.publication()))) {
            List<String> code = new ArrayList<>();
            Matcher scripts = SCRIPT.matcher(html);
            while (scripts.find()) {
                if (scripts.group(1).isEmpty()) {
                    code.add(scripts.group(2));
                } else {
                    assertTrue(scripts.group(1).matches(" type=\"application/json\" id=\"(tree|pictures)\""), scripts.group(1));
                }
            }
            assertEquals(1, code.size());
            String sum = Base64.getEncoder().encodeToString(MessageDigest.getInstance("SHA-256").digest(code.get(0).getBytes(StandardCharsets.UTF_8)));
            assertTrue(html.contains("default-src &#39;none&#39;; script-src &#39;sha256-" + sum + "&#39;; style-src &#39;sha256-"), sum);
            assertFalse(html.contains("unsafe"));
            assertFalse(html.replace("https://www.w3.org", "").matches("(?s).*https?://.*"), "an address");
        }
    }

    @Test
    void should_carry_hostile_words_as_data_that_ends_nothing() {
        String html = html(Hostile.publication());
        assertEquals(3, html.split("</script>", -1).length - 1);
        assertFalse(html.contains("<script>alert"));
        assertFalse(html.contains("<img src=x"));
        assertFalse(html.contains("\u2028"));
        Matcher data = Pattern.compile("(?s)id=\"tree\">(.*?)</script>").matcher(html);
        assertTrue(data.find());
        JsonObject tree = JsonParser.parseString(data.group(1)).getAsJsonObject();
        assertEquals(Hostile.publication().procedure().title(), tree.get("title").getAsString());
    }

    /** The page has words of its own for hazards, since a tree has only those of the language. */
    @Test
    void should_call_every_hazard_as_the_card_does() {
        String page = Samples.string("bench-html", Samples.everything());
        for (Hazard hazard : Hazard.values()) {
            assertTrue(page.contains(hazard.word() + ": \"" + hazard.inWords() + "\"") || page.contains("\"" + hazard.word() + "\": \"" + hazard.inWords() + "\""),
                    hazard.name());
        }
    }

    @Test
    void should_say_the_cautions_and_what_to_do_where_no_script_may_run() {
        String still = SCRIPT.matcher(html(Samples.everything())).replaceAll("");
        assertTrue(still.contains(Caution.SENTENCES.replace("'", "&#39;")));
        assertTrue(still.contains("scripts are switched off"));
    }

    /** The page in a browser without a window; its alerts would tell of a script that is not ours. */
    private static final class Browser implements AutoCloseable {
        final List<String> alerts = new ArrayList<>();
        final WebClient client = new WebClient();
        final Path file;
        HtmlPage page;

        Browser(Publication publication, Path folder) throws IOException {
            client.getOptions().setCssEnabled(false);
            client.setAlertHandler(new CollectingAlertHandler(alerts));
            file = folder.resolve("page.bench.html");
            Files.write(file, Samples.publish("bench-html", publication).bytes());
            page = client.getPage(file.toUri().toURL());
        }

        String title() {
            return page.querySelector("h1").getTextContent();
        }

        /** Presses the first button that can be pressed and begins with these words, a digit before them left aside; a second after the last. */
        void press(String words) throws IOException {
            script("var later = Date.now() + 1000; Date.now = function () { return later; };");
            pressAtOnce(words);
        }

        Object script(String code) {
            return page.executeJavaScript(code).getJavaScriptResult();
        }

        /** With what this leaves in the store of the browser. */
        void load(String stored) throws IOException {
            page.getWebClient().getPage("about:blank");
            page = client.getPage(file.toUri().toURL());
            script("for (var i = 0; i < localStorage.length; i++) { localStorage.setItem(localStorage.key(i), " + new Gson().toJson(stored) + "); }");
            page = (HtmlPage) page.refresh();
        }

        void pressAtOnce(String words) throws IOException {
            for (Object one : page.querySelectorAll("button")) {
                DomElement button = (DomElement) one;
                if (!button.hasAttribute("disabled") && button.getTextContent().replaceFirst("^[1-9] ", "").startsWith(words)) {
                    button.click();
                    return;
                }
            }
            throw new AssertionError("no button \"" + words + "\" at: " + page.querySelector("#app").getTextContent());
        }

        void type(String reading) throws IOException {
            ((HtmlInput) page.querySelector("input.reading")).type(reading);
        }

        String words() {
            return page.querySelector("#app").getTextContent();
        }

        @Override
        public void close() {
            client.close();
        }
    }

    private static final String PROCEDURE = """
            procedure Walked "A rail is low"
            equipment "Invented unit"
            revision 2 draft
            condition Supply "Supply" { off, on } live when on starts off ends off
            instrument Meter "Meter" { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm }
            point Rail "Rail" carries up to 400 V dc
            note Shock danger { covers shock hazard "Mains inside." consequence "It kills." avoid "Trained people only." }
            fault Low "Regulator weak" { cases 3 shows Look dim, Read below remedy Mend }
            fault Lamp "Lamp worn" { cases 1 shows Look dim, Read within remedy Swap }
            begin at Look
            check Look "How bright is the lamp?" { confirms complaint takes 1 min dim -> PowerUp bright normal -> NotSeen }
            do PowerUp "Switch on" { notes Shock sets Supply on takes 1 min then -> Read }
            measure Read "Rail" { dc voltage at Rail using Meter range 6 V expects 5 V +/- 5 % notes Shock needs Supply on takes 2 min
              below -> Off within -> OffToo above -> Elsewhere doubtful -> Read at most 2 times else Elsewhere }
            do Off "Switch off" { sets Supply off wait 30 s takes 40 s then -> Mend }
            do OffToo "Switch off" { sets Supply off takes 10 s then -> Swap }
            do Mend "Fit a regulator" { takes 5 min then -> Mended }
            do Swap "Fit a lamp" { takes 5 min then -> Swapped }
            conclude Mended "Regulator replaced" { finds Low report "New regulator." }
            conclude Swapped "Lamp replaced" { finds Lamp report "New lamp." }
            conclude NotSeen "Not seen" { finds nothing report "Nothing found." }
            conclude Elsewhere "Handed on" { refers to "Senior technician" report "Referred." }
            """;

    @Test
    void should_be_walked_by_clicking_with_a_comma_a_note_a_wait_and_a_way_back(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            assertTrue(browser.words().contains(Caution.FIRST));
            assertTrue(browser.words().contains("Nothing leaves this device"));
            browser.press("Begin");
            assertTrue(browser.title().endsWith("How bright is the lamp?"), browser.title());
            browser.press("Dim");
            assertTrue(browser.words().contains("Read the note first."), browser.words());
            browser.press("I have read this");
            browser.press("Done");
            // what became live by this step had been told at it: the note is not due again
            assertTrue(browser.words().contains("DANGER"), browser.words());
            browser.type("4,2");
            assertTrue(browser.words().contains("4.2\u00A0V: below."), browser.words());
            assertTrue(browser.words().contains("What it still can be: 2 of 2"), browser.words());
            browser.press("Below: go on");
            assertTrue(browser.words().contains("What it still can be: 1 of 2"), browser.words());
            assertTrue(browser.words().contains("Wait 30 s"), browser.words());
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
            browser.type("4.735");
            assertTrue(browser.words().contains("4.735\u00A0V: doubtful: too near the limit for this instrument to decide."), browser.words());
            browser.press("Doubtful: go on");
            browser.type("nothing");
            assertTrue(browser.words().contains("is no number: type digits with a comma or a point."), browser.words());
            ((HtmlInput) browser.page.querySelector("input.reading")).setValue("");
            browser.type("5");
            browser.press("Within: go on");
            browser.press("Done");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Lamp replaced"), browser.title());
            assertTrue(browser.words().contains("New lamp."));
            assertTrue(browser.words().contains("Supply off"));
            assertEquals(List.of(), browser.alerts);
        }
    }

    @Test
    void should_go_on_where_it_stood_when_the_browser_was_closed(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            browser.press("Begin");
            browser.press("Dim");
            browser.press("I have read this");
            browser.press("Done");
            browser.page = (HtmlPage) browser.page.refresh();
            assertTrue(browser.words().contains("A walk was begun here"), browser.words());
            assertTrue(browser.words().contains("The unit should be Supply on"), browser.words());
            browser.press("Go on");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
            browser.press("Stop here");
            browser.press("Begin anew");
            browser.press("Forget it and begin anew");
            assertFalse(browser.words().contains("A walk was begun here"));
        }
    }

    @Test
    void should_correct_a_result_with_everything_after_it_taken_back(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            browser.press("Begin");
            browser.press("Dim");
            browser.press("I have read this");
            browser.press("Done");
            browser.press("Correct");
            assertTrue(browser.words().contains("Take this result back, and the one after it?"), browser.words());
            browser.press("Take back");
            assertTrue(browser.title().endsWith("How bright is the lamp?"), browser.title());
            assertTrue(browser.words().contains("Nothing done yet"), browser.words());
            browser.press("I have made it so");
            browser.press("Dim");
            assertTrue(browser.words().contains("Read the note first."), "a note taken back is due again");
        }
    }

    private static void toTheRail(Browser browser) throws IOException {
        browser.press("Begin");
        browser.press("Dim");
        browser.press("I have read this");
        browser.press("Done");
    }

    @Test
    void should_have_the_unit_seen_to_and_the_note_read_again_when_a_result_is_taken_back_that_made_it_live(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            toTheRail(browser);
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Switch on"), browser.title());
            assertTrue(browser.words().contains("It was last Supply on"), browser.words());
            assertTrue(browser.words().contains("Here it must be Supply off"), browser.words());
            assertTrue(browser.words().contains("See to the unit first."), browser.words());
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("How bright is the lamp?"), browser.title());
            assertTrue(browser.words().contains("Here it must be Supply off"), "it is live still, two steps back");
            browser.page = (HtmlPage) browser.page.refresh();
            browser.press("Go on");
            assertTrue(browser.words().contains("It was last Supply on"), "nor does closing the browser switch it off");
            browser.press("I have made it so");
            browser.press("Dim");
            assertFalse(browser.words().contains("It was last"), browser.words());
            assertTrue(browser.words().contains("Read the note first."), browser.words());
        }
    }

    @Test
    void should_have_the_note_read_again_where_a_step_before_the_unit_became_live_is_corrected(@TempDir Path folder) throws IOException {
        String twice = PROCEDURE.replace("bright normal -> NotSeen }", "bright normal -> NotSeen }\n"
                + "do First \"Look at the plug\" { notes Shock takes 1 min then -> Second }\ndo Second \"Close the cover\" { notes Shock takes 1 min then -> PowerUp }")
                .replace("dim -> PowerUp", "dim -> First");
        try (Browser browser = new Browser(Samples.text(twice), folder)) {
            browser.press("Begin");
            browser.press("Dim");
            browser.press("I have read this");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Close the cover"), browser.title());
            assertTrue(browser.words().contains("DANGER"), browser.words());
            browser.press("Done");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
            browser.press("\u2190 Back");
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Close the cover"), browser.title());
            browser.press("I have made it so");
            assertTrue(browser.words().contains("Read the note first."), browser.words());
            browser.press("I have read this");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Switch on"), browser.title());
            assertTrue(browser.words().contains("DANGER"), browser.words());
        }
    }

    /** Whoever goes back to the step that switches off is not told to switch on first; what needs it live says so, behind its note. */
    @Test
    void should_ask_nobody_to_make_live_what_the_step_does_not_need(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            toTheRail(browser);
            browser.type("4,2");
            browser.press("Below: go on");
            browser.press("I have waited long enough");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Fit a regulator"), browser.title());
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Switch off"), browser.title());
            assertFalse(browser.words().contains("Here it must be"), browser.words());
            assertTrue(browser.words().contains("You went back. The unit was last Supply off"), browser.words());
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
            assertTrue(browser.words().contains("Here it must be Supply on"), browser.words());
            assertTrue(browser.words().contains("Read the note first."), "the note stands before the unit is made live");
            assertThrows(AssertionError.class, () -> browser.press("I have made it so"));
            browser.press("I have read this");
            browser.press("I have made it so");
            browser.type("4,2");
            browser.press("Below: go on");
            assertTrue(browser.title().endsWith("Switch off"), browser.title());
            assertFalse(browser.words().contains("You went back"), browser.words());
        }
    }

    /** The walk takes the unit to be live where nobody said so: that goes along to the step that needs it. */
    @Test
    void should_ask_for_what_was_not_seen_to_where_a_later_step_needs_it(@TempDir Path folder) throws IOException {
        String asked = PROCEDURE.replace("sets Supply on takes 1 min then -> Read", "sets Supply on takes 1 min then -> Hear")
                .replace("do Off ", "check Hear \"Does it hum?\" { takes 1 min yes -> Read no -> Read }\ndo Off ");
        try (Browser browser = new Browser(Samples.text(asked), folder)) {
            toTheRail(browser);
            browser.press("Yes");
            browser.type("4,2");
            browser.press("Below: go on");
            browser.press("I have waited long enough");
            browser.press("Done");
            browser.press("\u2190 Back");
            browser.press("\u2190 Back");
            browser.press("\u2190 Back");
            assertTrue(browser.title().endsWith("Does it hum?"), browser.title());
            assertFalse(browser.words().contains("Here it must be"), browser.words());
            browser.press("I have read this");
            browser.press("No");
            assertTrue(browser.title().endsWith("Rail") && browser.words().contains("Here it must be Supply on"), browser.words());
            browser.page = (HtmlPage) browser.page.refresh();
            browser.press("Go on");
            assertTrue(browser.words().contains("Here it must be Supply on"), browser.words());
        }
    }

    @Test
    void should_have_the_notes_of_the_step_read_again_after_the_browser_was_closed(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            toTheRail(browser);
            assertTrue(browser.words().contains("DANGER"), browser.words());
            browser.page = (HtmlPage) browser.page.refresh();
            browser.press("Go on");
            assertTrue(browser.words().contains("Read the note first."), browser.words());
        }
    }

    @Test
    void should_forget_which_notes_were_read_when_begun_anew(@TempDir Path folder) throws IOException {
        String noted = PROCEDURE.replace("{ confirms complaint takes 1 min", "{ notes Shock confirms complaint takes 1 min");
        try (Browser browser = new Browser(Samples.text(noted), folder)) {
            browser.press("Begin");
            browser.press("I have read this");
            browser.press("Stop here");
            browser.press("Begin anew");
            browser.press("Forget it and begin anew");
            browser.press("Begin");
            assertTrue(browser.words().contains("Read the note first."), browser.words());
        }
    }

    @Test
    void should_take_the_second_of_two_quick_presses_for_the_page_before(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            browser.press("Begin");
            browser.press("Dim");
            browser.pressAtOnce("I have read this");
            assertTrue(browser.words().contains("Read the note first."), "the note came under a finger that pressed something else");
            browser.press("I have read this");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
        }
    }

    @Test
    void should_walk_in_one_window_alone_and_lose_nothing_that_another_kept(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            HtmlPage first = browser.page;
            HtmlPage second = (HtmlPage) browser.client.openWindow(browser.file.toUri().toURL(), "second").getEnclosedPage();
            browser.page = second;
            toTheRail(browser);
            browser.page = first;
            browser.press("Begin");
            assertTrue(browser.words().contains("This procedure was taken up in another window"), browser.words());
            browser.press("Take it up here");
            browser.press("Go on");
            assertTrue(browser.title().endsWith("Rail"), browser.title());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "{", "null", "[]", "7", "{\"begun\":5,\"moves\":[]}", "{\"begun\":\"2026-03-01T08:00:00Z\",\"moves\":[null]}",
        "{\"begun\":\"2026-99-01T08:00:00Z\",\"moves\":[],\"job\":null}",
        "{\"begun\":\"2026-03-01T08:00:00Z\",\"moves\":[{\"outcome\":\"dim\"}],\"job\":null,\"ticks\":null,\"takenBack\":5,\"remarks\":{}}",
        "{\"begun\":\"2026-03-01T08:00:00Z\",\"moves\":[{\"outcome\":\"dim\",\"at\":\"2026-03-01T08:01:00Z\",\"seconds\":1,\"value\":{\"a\":1}}],\"waiting\":7,\"back\":{\"was\":3}}" })
    void should_live_on_with_whatever_stands_in_the_store_of_the_browser(String stored, @TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            browser.press("Begin");
            browser.load(stored);
            if (browser.words().contains("A walk was begun here")) {
                browser.press("Go on");
            } else {
                browser.press("Begin");
            }
            assertTrue(browser.title().endsWith("How bright is the lamp?"), browser.words());
            browser.press("Bright");
            assertTrue(browser.title().endsWith("Not seen"), browser.words());
            assertTrue(browser.words().contains("Save the record"), browser.words());
        }
    }

    private static final String SUM = """
            procedure Summed "Two rails"
            equipment "Invented unit"
            revision 1 draft
            instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm
              resistance up to 10 MOhm resolution 1 kohm accuracy 1 % of reading + 2 digits }
            point P "Rail" carries up to 60 V dc
            begin at A
            measure A "First" { dc voltage at P using Meter takes 1 min then -> B }
            measure B "Second" { dc voltage at P using Meter takes 1 min then -> C }
            calculate C "Sum" { value A + B expects 10 V +/- 5 % takes 1 min within -> Leak outside -> A at most 3 times, else Still }
            measure Leak "Insulation" { resistance at P using Meter takes 1 min over 1 MOhm -> Gone at most 1 MOhm -> Still }
            conclude Gone "Gone" { finds nothing report "x" }
            conclude Still "Still" { refers to "x" report "x" }
            """;

    @Test
    void should_compute_from_no_reading_of_an_earlier_visit(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(SUM), folder)) {
            browser.press("Begin");
            browser.type("3");
            browser.press("Written down: go on");
            browser.type("4");
            browser.press("Written down: go on");
            assertTrue(browser.words().contains("Reading of step 1 (3 V) + reading of step 2 (4 V)"), browser.words());
            browser.press("Outside: go on");
            browser.press("Written down");
            browser.type("6");
            browser.press("Written down: go on");
            assertTrue(browser.title().endsWith("Sum"), browser.words());
            assertFalse(browser.words().contains("eading of step"), "step 1 was done without a number: " + browser.words());
            browser.type("9.9");
            browser.press("Within: go on");
            browser.type("2");
            assertTrue(browser.words().contains("2\u00A0M\u03A9: over 1 MOhm."), browser.words());
        }
    }

    @Test
    void should_call_a_row_of_a_table_doubtful_that_lies_too_near_its_limit(@TempDir Path folder) throws IOException {
        String table = """
                procedure Rails "Rails"
                equipment "Invented unit"
                revision 1 draft
                decision rule guarded
                instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm }
                point P "Rail P" carries up to 30 V dc
                point Q "Rail Q" carries up to 30 V dc
                begin at V
                measure V "Rails" { dc voltage using Meter range 60 V at P expects 5 V +/- 5 % at Q expects 12 V +/- 5 % takes 1 min
                  all within -> Gone any outside -> Still }
                conclude Gone "Gone" { finds nothing report "x" }
                conclude Still "Still" { refers to "x" report "x" }
                """;
        try (Browser browser = new Browser(Samples.text(table), folder)) {
            browser.press("Begin");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(0)).type("5.24");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(1)).type("12");
            assertTrue(browser.words().contains("\u2713 within. Doubtful: too near the limit for this instrument to decide."), browser.words());
            assertTrue(browser.words().contains("All within, doubtful."), browser.words());
            browser.press("All within: go on");
            assertTrue(browser.words().contains(", doubtful"), browser.words());
            browser.press("\u2190 Back");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(0)).type("5.1");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(1)).type("12");
            assertTrue(browser.words().contains("All within."), browser.words());
            assertFalse(browser.words().contains("Doubtful"), browser.words());
        }
    }

    @Test
    void should_count_a_voltage_that_proves_a_charge_absent_without_its_sign(@TempDir Path folder) throws IOException {
        String dead = """
                procedure Dead "Is it dead?"
                equipment "Invented unit"
                revision 1 draft
                condition Charge "Stored charge" { present, absent } charged when present starts present proved at A, B at most 5 V
                instrument Meter "Meter" { dc voltage up to 600 V resolution 10 mV accuracy 0.5 % of reading + 2 digits input 10 Mohm }
                point A "Bank A" carries up to 400 V dc
                point B "Bank B" carries up to 400 V dc
                begin at Both
                measure Both "Both banks" { dc voltage using Meter range 600 V at A expects at most 5 V at B expects at most 5 V
                  takes 1 min all within -> One proves Charge absent any outside -> Still }
                measure One "Bank A again" { dc voltage at A using Meter range 600 V takes 1 min
                  at most 5 V -> Gone proves Charge absent over 5 V -> Still }
                conclude Gone "Gone" { finds nothing report "x" }
                conclude Still "Still" { refers to "x" report "x" }
                """;
        try (Browser browser = new Browser(Samples.text(dead), folder)) {
            browser.press("Begin");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(0)).type("-380");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(1)).type("2");
            assertTrue(browser.words().contains("Any outside."), browser.words());
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(0)).setValue("");
            ((HtmlInput) browser.page.querySelectorAll("input.reading").get(0)).type("-4");
            browser.press("All within: go on");
            browser.type("-380");
            assertTrue(browser.words().contains("-380\u00A0V: over 5 V."), browser.words());
        }
    }

    @Test
    void should_go_back_past_what_is_entered_at_once(@TempDir Path folder) throws IOException {
        String entered = """
                procedure Entered "Entered"
                equipment "Invented unit"
                revision 1 draft
                routine Inner "Inner" { exits seen, unseen begin at Look check Look "Look" { takes 1 min yes -> seen no -> unseen } }
                begin at Go
                perform Go "Go in" by Inner { seen -> Gone unseen -> Still }
                conclude Gone "Gone" { finds nothing report "x" }
                conclude Still "Still" { refers to "x" report "x" }
                """;
        try (Browser browser = new Browser(Samples.text(entered), folder)) {
            browser.press("Begin");
            assertTrue(browser.title().endsWith("Look"), browser.words());
            browser.press("\u2190 Back");
            assertTrue(browser.words().contains("A walk was begun here"), browser.words());
        }
    }

    @Test
    void should_hold_results_back_until_the_wait_is_over_or_cut(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            toTheRail(browser);
            browser.type("4,2");
            browser.press("Below: go on");
            assertTrue(browser.words().contains("Wait first."), browser.words());
            assertThrows(AssertionError.class, () -> browser.press("Done"));
            browser.press("I have waited long enough");
            browser.press("Done");
            assertTrue(browser.title().endsWith("Fit a regulator"), browser.title());
        }
    }

    @Test
    void should_not_take_a_key_that_is_held_for_a_press(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            browser.press("Begin");
            String key = "var later = Date.now() + 1000; Date.now = function () { return later; }; var one = new KeyboardEvent('keydown',"
                    + " { key: '1', bubbles: true, cancelable: true, repeat: %s }); document.querySelector('h1').dispatchEvent(one);";
            browser.script(key.formatted("true"));
            assertTrue(browser.title().endsWith("How bright is the lamp?"), browser.title());
            browser.script(key.formatted("false"));
            assertTrue(browser.title().endsWith("Switch on"), browser.title());
        }
    }

    /** As the card does: 13 min 10 s are 14 min on both. */
    @Test
    void should_round_times_up_as_the_card_does(@TempDir Path folder) throws IOException {
        String shorter = PROCEDURE.replace("wait 30 s takes 40 s", "takes 10 s");
        assertFalse(shorter.equals(PROCEDURE));
        try (Browser browser = new Browser(Samples.text(shorter), folder)) {
            browser.press("Begin");
            assertTrue(browser.words().contains("To go 1 min to 14 min"), browser.words());
        }
    }

    @Test
    void should_say_what_is_to_be_set_first_what_a_meter_over_its_range_means_and_how_long_it_takes_yet(@TempDir Path folder) throws IOException {
        String forgot = PROCEDURE.replace("{ notes Shock sets Supply on takes 1 min", "{ notes Shock takes 1 min");
        try (Browser browser = new Browser(Samples.text(forgot), folder)) {
            browser.press("Begin");
            // 1 min of looking; at most it, 1 min of switching on, three readings of 2 min, 40 s of switching off and 5 min of mending
            assertTrue(browser.words().contains("To go 1 min to 14 min"), browser.words());
            browser.press("Dim");
            browser.press("I have read this");
            browser.press("Done");
            assertTrue(browser.words().contains("Supply on, to be set first"), browser.words());
            browser.press("OL");
            assertTrue(browser.words().contains("OL: above."), browser.words());
            browser.press("Above: go on");
            assertTrue(browser.title().endsWith("Handed on"), browser.title());
            assertFalse(browser.words().contains("To go"), browser.words());
        }
    }

    @Test
    void should_refuse_the_record_of_another_procedure_in_the_page(@TempDir Path folder) throws Exception {
        try (Browser browser = new Browser(Samples.text(PROCEDURE), folder)) {
            Path other = Files.writeString(folder.resolve("other.record.json"), """
                    {"$schema":"urn:faultwright:walk-record:1","procedure":{"id":"Other"},"steps":[],"begun":"2026-03-01T08:00:00Z"}""");
            ((HtmlFileInput) browser.page.getElementById("open")).setFiles(other.toFile());
            browser.page.getElementById("open").fireEvent("change");
            browser.client.waitForBackgroundJavaScript(2000);
            assertTrue(browser.words().contains("This record is of Other, and this page walks Walked: open it in the page of its own procedure."),
                    browser.words());
        }
    }

    @Test
    void should_show_hostile_words_as_words_and_run_none(@TempDir Path folder) throws IOException {
        try (Browser browser = new Browser(Hostile.publication(), folder)) {
            assertTrue(browser.title().startsWith("</title></style><script>alert(1)</script>"), browser.title());
            browser.press("Begin");
            browser.press("I have read this");
            assertTrue(browser.words().contains("<img src=x onerror=alert(2)>"));
            browser.press("Anything else");
            assertEquals(List.of(), browser.alerts);
            assertEquals(0, browser.page.querySelectorAll("#app img, #app script, #app iframe").size());
        }
    }
}
