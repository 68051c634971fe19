/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.Published;
import org.faultwright.publish.Samples;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;

class QualityReportTest {
    private static final Publication BROKEN = Samples.text("procedure Broken \"Broken one\" check A \"?\" { yes -> Nowhere }");

    private static Published report(String export, Publication... publications) {
        return ((FolderExport) Exports.named(export).orElseThrow())
                .publish(new ProcedureFolder("Slipway", List.of(publications), Set.of()));
    }

    private static String words(Published page) {
        return new String(page.bytes(), StandardCharsets.UTF_8).replaceAll("(?s)<style>.*</style>", " ")
                .replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    private static JsonObject json(Publication... publications) {
        return JsonParser.parseString(new String(report("quality-json", publications).bytes(), StandardCharsets.UTF_8))
                .getAsJsonObject();
    }

    private static JsonObject procedure(JsonObject report, int index) {
        return report.getAsJsonArray("procedures").get(index).getAsJsonObject();
    }

    private static String share(JsonObject procedure, String key) {
        return procedure.getAsJsonObject(key).get("some") + " of " + procedure.getAsJsonObject(key).get("all");
    }

    /** Counted by hand in EdnorColdPlate.procedure. */
    @Test
    void should_count_what_can_be_counted_by_hand() {
        JsonObject everything = procedure(json(Samples.everything()), 0);
        assertEquals("13 of 13", share(everything, "limitsWithSource"));
        assertEquals("2 of 2", share(everything, "codesWithResult"));
        assertEquals("2 of 2", share(everything, "examplesThatPass"));
        assertEquals("2 of 4", share(everything, "conclusionsTried"));
        assertEquals(3, everything.getAsJsonArray("faults").size());
        // weights 12.5, 3 and 5
        assertEquals(12.5 / 20.5, everything.getAsJsonArray("faults").get(0).getAsJsonObject().get("share").getAsDouble(), 1e-12);
        assertEquals(0, everything.getAsJsonObject("findings").get("error").getAsInt());
    }

    @Test
    void should_put_the_procedure_with_most_to_mend_first() {
        JsonObject report = json(Samples.everything(), BROKEN);
        assertEquals("Broken", procedure(report, 0).get("id").getAsString());
        assertTrue(report.getAsJsonObject("findings").get("error").getAsInt() > 0);
    }

    @Test
    void should_say_in_sentences_what_to_look_at_first() {
        String page = words(report("quality-html", Samples.everything(), BROKEN));
        int first = page.indexOf("Look at these, the gravest first");
        assertTrue(first > 0);
        String rest = page.substring(first, page.indexOf("Each procedure"));
        assertTrue(rest.indexOf("Open errors (") < rest.indexOf("Not tried by any example ("), rest);
        assertTrue(rest.contains("Broken one: line 1: "), rest);
        assertTrue(rest.contains("no case of &quot;Sensor open&quot;, &quot;Heating element open&quot;."), rest);
    }

    @Test
    void should_say_so_when_there_is_nothing_to_look_at() {
        Publication good = Samples.demo(Samples.demos().stream()
                .filter(file -> file.toString().contains("HavendyneColdIron")).findFirst().orElseThrow());
        String page = words(report("quality-html", good));
        assertTrue(page.contains("Nothing to look at first") && page.contains("None found: open errors; "), page.substring(0, 2000));
        assertEquals("HavendyneColdIron.quality.html", report("quality-html", good).fileName());
    }

    @Test
    void should_list_every_finding_in_the_details() {
        String page = words(report("quality-html", BROKEN));
        assertFalse(BROKEN.findings().isEmpty());
        BROKEN.findings().forEach(finding -> {
            assertTrue(page.contains(finding.rule()), finding.rule());
            assertTrue(page.contains(finding.message().replace("&", "&amp;").replace("\"", "&quot;")), finding.message());
        });
    }

    @Test
    void should_say_the_caution_and_declare_nothing_free_of_danger() {
        for (String export : List.of("quality-html", "quality-json")) {
            assertTrue(new String(report(export, Samples.everything()).bytes(), StandardCharsets.UTF_8)
                    .contains("licensed practice come first"), export);
        }
    }

    @Test
    void should_report_on_an_empty_folder() {
        assertTrue(words(report("quality-html")).contains("0 procedures"));
        assertEquals("quality.pdf", report("quality-pdf").fileName());
        assertFalse(json().has("procedures"));
    }

    /** Two faults alike at every step asked, and a measurement that nothing leads to and that would separate them. */
    @Test
    void should_say_what_would_separate_faults_and_which_path_is_the_worst() {
        Publication alike = Samples.text("""
                procedure Alike "Alike" revision 1 draft
                point Rail "C7" carries up to 6 V
                fault One "First" { cases 1 shows Look no, Volts below }
                fault Two "Second" { cases 1 shows Look no, Volts within }
                begin at Look
                check Look "Lit?" { confirms complaint takes 2 min yes -> Fine no -> Wait }
                do Wait "Wait" { takes 7 min then -> Both }
                measure Volts "Rail" { dc voltage at Rail expects 5 V +/- 5 % below -> Both within -> Fine above -> Fine }
                conclude Both "Either" { finds One }
                conclude Fine "Nothing found" { finds nothing }
                """);
        String page = words(report("quality-html", alike));
        assertTrue(page.contains("Nothing tells apart: First, Second. &quot;Rail&quot; would, but nothing leads there."), page);
        assertTrue(page.contains("Worst in time, 9 min in 3 steps: &quot;Lit?&quot; (no), &quot;Wait&quot; (done), &quot;Either&quot;."), page);
        assertTrue(page.contains("Results that no example takes: &quot;Lit?&quot; with yes or no."), page);
        assertTrue(page.contains("Without a source: &quot;Rail&quot;."), page);
        assertTrue(page.contains("Sign-off of this procedure"), page);
        assertEquals("Volts", procedure(json(alike), 0).getAsJsonArray("notToldApart").get(0).getAsJsonObject()
                .getAsJsonArray("wouldSeparate").get(0).getAsString());
    }

    /** What is read first is told by titles, as on the card: neither the names of steps nor an unheeded code are left to the reader. */
    @Test
    void should_call_steps_by_their_titles_and_name_codes_that_no_step_tells_apart() {
        Publication timer = Samples.text("""
                procedure Timer "Timer" revision 1 draft
                indicator Panel "Lamp" { 3 blinks means "Hot" 5 blinks means "Bank over 385 V" }
                fault Relay "Relay" { cases 3 shows ReadLamp 3 blinks }
                begin at ReadLamp
                observe ReadLamp "What does the lamp show?" at Panel { 3 blinks -> RelayBad anything else -> Fine }
                conclude RelayBad "Relay replaced" { finds Relay }
                conclude Fine "Nothing found" { finds nothing }
                """);
        String page = words(report("quality-html", timer));
        String first = page.substring(page.indexOf("Look at these"), page.indexOf("Each procedure"));
        assertTrue(first.contains("&quot;What does the lamp show?&quot; has no outcome for &quot;5 blinks&quot; (Bank over 385 V)."), first);
        assertTrue(first.contains("conclusions &quot;Relay replaced&quot;, &quot;Nothing found&quot;."), first);
        assertTrue(first.contains("Released, but for 1 draft"), first);
        assertFalse(first.contains("ReadLamp"), first);
        assertTrue(page.indexOf("Appendix: all of them together") > page.indexOf("Sign-off of this procedure"), page);
    }

    @Test
    void should_add_the_findings_of_all_procedures_by_rule() {
        JsonObject report = json(Samples.everything(), BROKEN, Samples.text("procedure Worse check A \"?\" { yes -> Gone }"));
        int sum = report.getAsJsonObject("findingsByRule").entrySet().stream().mapToInt(rule -> rule.getValue().getAsInt()).sum();
        int all = report.getAsJsonObject("findings").entrySet().stream().mapToInt(severity -> severity.getValue().getAsInt()).sum();
        assertEquals(all, sum);
        assertTrue(report.getAsJsonObject("unitsWritten").size() > 3);
        assertTrue(report.getAsJsonObject("sources").size() > 0);
    }
}
