/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Library;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishedFiles;
import org.faultwright.publish.Samples;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;

class QualityReportTest {
    private static final Publication BROKEN = Samples.text("procedure Broken \"Broken one\" check A \"?\" { yes -> Nowhere }");

    /** Nothing of it is to be looked at. The lamp is given a code by some tests. */
    private static final String GOOD = """
            procedure Good "Lamp of the fan stays dark"
            equipment "Fan"
            revision 2 reviewed by "A. Ward" dated 2026-02-01
            complaints "dark"
            indicator Lamp "Lamp" { steady means "Good" 2 blinks means "Fuse open" source "Sheet 1" dated 2026-01-01 }
            part Fuse "Fuse"
            fault FuseOpen "Fuse open" { cases 1 shows Look 2 blinks, Try yes remedy Fit }
            observe Look "What does the lamp show?" at Lamp { confirms complaint takes 1 min steady -> Fine 2 blinks -> Fit anything else -> Unknown }
            do Fit "Fit a new fuse" { handles Fuse takes 2 min then -> Try }
            check Try "Is it lit?" { verifies repair takes 1 min yes -> Found no -> Unknown }
            conclude Found "Fuse open" { finds FuseOpen report "Fuse replaced." }
            conclude Fine "Nothing found" { finds nothing }
            conclude Unknown "Not found here" { refers to "the bench" }
            example "Fuse" of FuseOpen { Look 2 blinks, Try yes ends at Found }
            example "Fuse and more" { Look 2 blinks, Try no ends at Unknown }
            example "Fine" { Look steady ends at Fine }
            example "Else" { Look "anything else" ends at Unknown }
            """;

    private static PublishedFiles report(String export, Publication... publications) {
        return ((FolderExport) Exports.named(export).orElseThrow())
                .publish(new ProcedureFolder("Slipway", List.of(publications), Set.of()));
    }

    private static String words(PublishedFiles page) {
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
        String page = words(report("quality-html", Samples.text(GOOD)));
        assertTrue(page.contains("Nothing to look at first") && page.contains("None found: open errors; "), page.substring(0, 2000));
        assertTrue(page.contains("Nothing stands out."), page);
        assertTrue(page.contains("Units consistent: yes."), page);
        assertEquals("Good.quality.html", report("quality-html", Samples.text(GOOD)).fileName());
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
        assertTrue(page.contains("Nothing tells apart: First, Second. 5 \u201CRail\u201D would, but nothing leads there."), page);
        assertTrue(page.contains("No path takes longer than 9 min. The longest in time: 3 steps: 1 no, 2, 3."), page);
        assertTrue(page.contains("Results that no example takes: 1 \u201CLit?\u201D: yes, no."), page);
        assertTrue(page.contains("Without a source: 5 \u201CRail\u201D."), page);
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
        assertTrue(first.contains("at step 1 \u201CWhat does the lamp show?\u201D no result is \u201C5 blinks\u201D, which means \u201CBank over 385 V\u201D;"), first);
        assertTrue(first.contains("2 conclusions: step 2, 3."), first);
        assertTrue(page.contains("Conclusions that no example reaches: 2 \u201CRelay replaced\u201D; 3 \u201CNothing found\u201D."), page);
        assertTrue(first.contains("Released: none, all are drafts"), first);
        assertFalse(first.contains("ReadLamp"), first);
        assertTrue(page.indexOf("Appendix: counts that nobody signs") > page.indexOf("Sign-off of this procedure"), page);
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

    private static String front(String page) {
        return page.substring(0, page.indexOf("What is signed"));
    }

    /** The worst that a report can do is to call a card good in which a lamp tells of a danger and nobody listens. */
    @Test
    void should_put_a_code_of_danger_that_no_result_names_on_the_first_page() {
        String page = words(report("quality-html", Samples.text(GOOD.replace("2 blinks means \"Fuse open\"", "2 blinks means \"Fuse open\" 5 blinks means \"Bank above 385 V, charger locked\""))));
        assertFalse(page.contains("Nothing stands out"), page);
        assertFalse(page.contains("Nothing to look at first"), page);
        assertTrue(front(page).contains("at step 1 \u201CWhat does the lamp show?\u201D no result is \u201C5 blinks\u201D, which means \u201CBank above 385 V,"
                + " charger locked\u201D; it goes with \u201Canything else\u201D to step "), front(page));
    }

    @Test
    void should_not_cry_wolf_over_a_code_that_says_ready() {
        String page = words(report("quality-html", Samples.text(GOOD.replace("2 blinks means \"Fuse open\"", "2 blinks means \"Fuse open\" 7 blinks means \"Warming up\""))));
        assertTrue(page.contains("Nothing to look at first"), front(page));
        assertTrue(page.contains("no result is \u201C7 blinks\u201D, which means \u201CWarming up\u201D"), page);
    }

    /** However many there are. */
    @Test
    void should_name_every_code_of_danger_in_front() {
        StringBuilder codes = new StringBuilder("2 blinks means \"Fuse open\"");
        for (int i = 3; i < 10; i++) {
            codes.append(' ').append(i).append(" blinks means \"Too hot ").append(i).append('"');
        }
        String front = front(words(report("quality-html", Samples.text(GOOD.replace("2 blinks means \"Fuse open\"", codes)))));
        for (int i = 3; i < 10; i++) {
            assertTrue(front.contains("Too hot " + i), front);
        }
    }

    /** Where they fill more than a side: what is signed and the signature stay on the first one, which says how many follow. */
    @Test
    void should_sign_on_the_first_side_and_count_what_follows_there() {
        StringBuilder codes = new StringBuilder("2 blinks means \"Fuse open\"");
        int many = 63;
        for (int i = 3; i < 3 + many; i++) {
            codes.append(' ').append(i).append(" blinks means \"Too hot ").append(i).append("x\"");
        }
        Publication made = Samples.text(GOOD.replace("2 blinks means \"Fuse open\"", codes));
        String page = words(report("quality-html", made));
        String front = page.substring(0, page.indexOf("Name Date Signature"));
        String behind = page.substring(front.length(), page.indexOf("Each procedure"));
        int first = 0;
        for (int i = 3; i < 3 + many; i++) {
            String danger = "Too hot " + i + "x";
            assertTrue(front.contains(danger) != behind.contains(danger), danger);
            first += front.contains(danger) ? 1 : 0;
        }
        assertTrue(first > 5 && first < many, first + " in front");
        assertTrue(front.contains((many - first) + " more of the gravest points stand behind the signatures"), front);
        assertTrue(behind.contains("(" + (many - first) + " more of " + many + ")"), behind);
        List<String> sides = sides(report("quality-pdf", made));
        for (String words : List.of("Local codes, the maker's instructions", "What is signed", "read them before you sign", "Completeness and units checked (QA)", "Released:")) {
            assertTrue(sides.get(0).contains(words), words + ": " + sides.get(0));
        }
        assertTrue(sides.get(1).contains("More of the gravest, to be read before signing"), sides.get(1));
        assertTrue(String.join(" ", sides.subList(1, 3)).contains("Too hot " + (2 + many) + "x"), sides.get(2));
    }

    /** What QA meets first of the demo: with the caution, on one side, and nothing left over on the second. */
    @Test
    void should_sign_the_demo_on_the_first_side() {
        List<String> sides = sides(report("quality-pdf", Samples.demos().stream().map(Samples::demo).toArray(Publication[]::new)));
        assertTrue(sides.get(0).contains("Local codes, the maker's instructions") && sides.get(0).contains("Released: those ticked above"), sides.get(0));
        assertTrue(sides.get(1).contains("Each procedure"), sides.get(1));
        assertFalse(String.join(" ", sides).contains("behind the signatures"));
    }

    /** Titles and decisions that need two lines in the table of what is signed take room from what is said above it. */
    @Test
    void should_sign_long_titles_on_the_first_side() {
        String title = GOOD.substring(GOOD.indexOf('"') + 1, GOOD.indexOf('"', GOOD.indexOf('"') + 1));
        for (int many = 1; many <= 9; many++) {
            List<Publication> made = new ArrayList<>();
            for (int i = 0; i < many; i++) {
                made.add(Samples.text(GOOD.replace("procedure Good", "procedure Good" + i)
                        .replace("\"" + title + "\"", "\"Number " + i + ": the lamp is dark and the fan stands still, or so the slip that came with it says\"")
                        .replace("2 blinks means", "3 blinks means \"Too hot " + i + "\" 4 blinks means \"Bank above 385 V " + i + "\" 2 blinks means")));
            }
            List<String> sides = sides(report("quality-pdf", made.toArray(Publication[]::new)));
            assertTrue(sides.get(0).contains("Completeness and units checked (QA)") && sides.get(0).contains("Released: those ticked above"), many + ": " + sides.get(0));
        }
    }

    private static List<String> sides(PublishedFiles pdf) {
        try (PDDocument document = Loader.loadPDF(pdf.bytes())) {
            List<String> sides = new ArrayList<>();
            for (int side = 1; side <= document.getNumberOfPages(); side++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(side);
                stripper.setEndPage(side);
                sides.add(stripper.getText(document).replaceAll("\\s+", " "));
            }
            return sides;
        } catch (IOException damaged) {
            throw new UncheckedIOException(damaged);
        }
    }

    @Test
    void should_let_no_signature_release_a_draft() {
        String page = words(report("quality-html", Samples.text(GOOD), Samples.text(GOOD.replace("procedure Good", "procedure Raw").replace("reviewed by \"A. Ward\" dated 2026-02-01", "draft"))));
        String record = page.substring(page.indexOf("What is signed"), page.indexOf("Each procedure"));
        assertTrue(record.contains("2, draft, nobody, no date"), record);
        assertTrue(record.contains("draft: not to be released"), record);
        assertEquals(1, record.split("\u2610 accepted \u2610 sent back", -1).length - 1, record);
        assertTrue(record.contains("Released: those ticked above, never a draft"), record);
        assertTrue(page.contains("Not to be released"), page);
        String alone = words(report("quality-html", Samples.text(GOOD.replace("reviewed by \"A. Ward\" dated 2026-02-01", "draft"))));
        assertTrue(alone.contains("Released: none, all are drafts"), alone);
    }

    @Test
    void should_list_the_libraries_with_their_digests_and_whose_digest_covers_them() {
        String page = words(report("quality-html", Samples.everything()));
        Samples.everything().procedure().libraries().forEach(library -> assertTrue(page.contains(ContentDigest.of(library).substring(0, 12)), page));
        assertTrue(page.contains("The digest of a procedure is reckoned over its libraries too"), page);
    }

    /** The claim of the page, held against the digest itself. */
    @Test
    void should_change_the_digest_of_a_procedure_with_its_library() {
        Procedure procedure = Samples.everything().procedure();
        Library library = procedure.libraries().get(0);
        Library changed = new Library(new SourceText(library.source().name(), library.source().content() + "// one word more"), library.name(), library.title(), library.uses(),
                library.libraries(), library.own(), library.statedRule(), library.closesBy(), library.problems(), library.at());
        assertNotEquals(ContentDigest.of(procedure), ContentDigest.of(procedure.with(List.of(changed), procedure.own())));
    }

    @Test
    void should_name_steps_as_on_the_card_and_by_no_name_of_the_text() {
        for (Path file : Samples.demos()) {
            Publication demo = Samples.demo(file);
            String page = words(report("quality-html", demo));
            demo.procedure().steps().stream().map(step -> step.name().text()).filter(name -> name.matches("[A-Z][a-z]+[A-Z].*")).forEach(name ->
                    assertFalse(page.matches("(?s).*\\b" + name + "\\b.*"), name + " in the report of " + demo.title()));
        }
    }

    @Test
    void should_tell_sources_without_a_year() {
        String page = words(report("quality-html", Samples.text(GOOD.replace("source \"Sheet 1\" dated 2026-01-01", "source \"EN 50678, class I\""))));
        assertTrue(front(page).contains("Sources without a year or an edition (1) \u201CEN 50678, class I\u201D."), front(page));
        String two = words(report("quality-html", Samples.text(GOOD.replace("source \"Sheet 1\" dated 2026-01-01", "source \"EN 50678, class I\"")),
                Samples.text(GOOD.replace("source \"Sheet 1\" dated 2026-01-01", "source \"House rule\""))));
        assertTrue(front(two).contains("Sources without a year or an edition (2) \u201CEN 50678, class I\u201D. \u201CHouse rule\u201D."), front(two));
        assertFalse(words(report("quality-html", Samples.text(GOOD.replace("source \"Sheet 1\" dated 2026-01-01", "source \"EN 50678:2020, class I\""))))
                .contains("Sources without a year or an edition ("));
    }

    @Test
    void should_say_how_to_ask_for_what_was_not_looked_at() {
        String page = words(report("quality-html", Samples.text(GOOD)));
        assertEquals(2, page.split("--as-of 2026-05-01", -1).length - 1, page);
        assertEquals(2, page.split("--since", -1).length - 1, page);
    }

    @Test
    void should_put_what_nobody_signs_at_the_end() {
        String page = words(report("quality-html", Samples.everything(), Samples.text(GOOD)));
        assertTrue(page.indexOf("Appendix: counts that nobody signs") > page.lastIndexOf("Sign-off of this procedure"));
    }

    /** Advice that stands in front nevertheless. */
    @Test
    void should_put_a_mains_repair_without_protective_tests_in_front() {
        String mains = """
                procedure Iron "Iron" equipment "Orlin K1" class I revision 1 draft complaints "cold"
                condition Cover { fitted, removed } ends fitted
                point Element "Element" carries up to 230 V ac rms category 2
                fault Dead "Element open" { cases 1 remedy Swap }
                begin at Lift
                do Lift "Lift the cover" { sets Cover removed then -> Swap }
                do Swap "Fit a new element" { then -> Close }
                do Close "Fit the cover" { sets Cover fitted then -> Mended }
                conclude Mended "Element replaced" { finds Dead }
                """;
        String page = front(words(report("quality-html", Samples.text(mains))));
        assertTrue(page.contains("A mains unit is repaired inside and handed back untested (1)"), page);
        assertTrue(front(words(report("quality-html", Samples.text(GOOD)))).contains("mains repairs without the protective tests"), page);
    }
}
