/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.EarlierRelease;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.Samples;
import org.faultwright.publish.exports.Exports;
import org.junit.jupiter.api.Test;

class SinceReleaseTest {
    private static final String TEXT = """
            procedure Timer "Kitchen timer" equipment "Ednor K2" revision 3 released by "R. Castellane" dated 2026-01-10
            complaints "silent"
            condition Supply { off, on } live when on starts off ends off
            point Rail "C7, plus side" carries up to 6 V
            note Hot caution { covers heat hazard "It gets hot." consequence "Burns." avoid "Wait a minute." }
            indicator Lamp "Red lamp" { 2 blinks means "Relay" 3 blinks means "Sensor" source "Sheet 1" }
            fault Relay "Relay stuck" { cases 3 shows Look dark, Volts below }
            begin at Look
            check Look "Is the lamp dark?" { confirms complaint needs Supply off takes 1 min dark -> Volts lit -> Nothing }
            measure Volts "Rail" { dc voltage at Rail expects 5 V +/- 5 % source "Sheet 1" notes Hot
                below -> RelayBad within -> Nothing above -> Nothing }
            measure Load "Load" { dc voltage at Rail under 100 mV -> RelayBad at least 100 mV -> Nothing }
            conclude RelayBad "Relay" { finds Relay }
            conclude Nothing "Nothing found" { finds nothing }
            example "One" of Relay { Look dark, Volts 4.1 V ends at RelayBad within 3 min }
            """;

    private static Procedure earlier(String text) {
        return Samples.text(text).procedure();
    }

    private static SinceRelease since(String was, String now) {
        return SinceRelease.of(earlier(was), earlier(now));
    }

    private static String page(Optional<EarlierRelease> release, Optional<LocalDate> day, Publication... publications) {
        ProcedureFolder folder = new ProcedureFolder("Bench", List.of(publications), Set.of(), List.of(), release, day, 60);
        return new String(((FolderExport) Exports.named("quality-html").orElseThrow()).publish(folder).bytes(), StandardCharsets.UTF_8)
                .replaceAll("(?s)<style>.*</style>", " ").replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    @Test
    void should_say_that_only_what_nobody_reads_has_changed() {
        SinceRelease same = since(TEXT, TEXT);
        SinceRelease commented = since(TEXT, TEXT + "\n// a remark\n");

        assertEquals("Unchanged, letter by letter.", same.inShort());
        assertEquals(List.of(), commented.differences());
        assertTrue(commented.inShort().startsWith("Nothing has changed that the procedure says"), commented.inShort());
        assertFalse(commented.hidesAChange());
    }

    @Test
    void should_notice_a_change_under_the_same_revision() {
        String changed = TEXT.replace("+/- 5 %", "+/- 8 %");

        assertTrue(since(TEXT, changed).hidesAChange());
        assertFalse(since(TEXT, changed.replace("revision 3", "revision 4")).hidesAChange());
        assertTrue(SinceRelease.record(earlier(TEXT)).startsWith("Revision 3, released 2026-01-10 by R. Castellane, digest "));
    }

    @Test
    void should_put_lost_protection_before_everything_and_name_what_is_new_or_gone() throws PublishingRefused {
        Publication changed = Samples.text(TEXT.replace("+/- 5 %", "+/- 8 %").replace(" notes Hot", ""));
        EarlierRelease release = EarlierRelease.of(List.of(earlier(TEXT), earlier(TEXT.replace("Timer", "Old"))));

        String page = page(Optional.of(release), Optional.empty(), changed, Samples.everything());

        int lost = page.indexOf("Protection removed, weakened or reworded since the last release");
        int limits = page.indexOf("Limits and readings changed since the last release");
        assertTrue(lost > 0 && limits > lost, page);
        assertTrue(page.contains("Removed, Kitchen timer: step 2 “Rail”: notes read: no longer “It gets hot.”"), page);
        assertTrue(page.contains("Kitchen timer: step 2 “Rail”: limit: 5 V +/- 5 % → 5 V +/- 8 % (wider: 4.6 V to 5.4 V, was 4.75 V to 5.25 V)"), page);
        assertTrue(page.contains("The revision still has the same number."), page);
        assertTrue(page.contains("Procedures gone since the last release (1) “Kitchen timer”, Ednor K2, revision 3, released"), page);
        assertTrue(page.contains("Compared with Revision 3, released 2026-01-10 by R. Castellane"), page);
    }

    /** A title that is also the name of its thing is no name there: "Supply" was said, and what is said now is not put in its place. */
    @Test
    void should_tell_a_title_that_was_as_it_stood() {
        String was = "procedure P \"P\" condition Supply \"Supply\" { off, on } starts off do A \"A\" { sets Supply on then -> End } conclude End { finds nothing }";
        List<ToldDifference> told = ToldDifference.of(since(was, was.replace("\"Supply\"", "\"Supply at plug\"")), step -> Optional.empty());

        assertEquals(1, told.size(), told.toString());
        assertEquals("Supply", told.get(0).was());
        assertEquals("Supply at plug", told.get(0).now());
    }

    @Test
    void should_look_at_calibration_and_sources_only_on_a_day() {
        Publication made = Samples.everything();
        String undated = page(Optional.empty(), Optional.empty(), made);
        String late = page(Optional.empty(), Optional.of(LocalDate.of(2040, 1, 1)), made);

        assertTrue(undated.contains("No day was given"), undated);
        assertFalse(undated.contains("Calibration past"), undated);
        assertTrue(late.contains("Calibration past or within 60 days of its end on 2040-01-01"), late);
        assertTrue(late.contains("ran out on "), late);
        assertTrue(late.contains("Sources older than 60 months on 2040-01-01"), late);
    }

    @Test
    void should_refuse_two_texts_of_one_procedure() {
        String message = assertThrows(PublishingRefused.class, () -> EarlierRelease.of(List.of(earlier(TEXT), earlier(TEXT)))).getMessage();

        assertTrue(message.contains("\"Timer\"") && message.endsWith("released."), message);
    }

    private static String front(String page) {
        return page.substring(0, page.indexOf("What is signed"));
    }

    /** Another name hides nothing: the procedure is known by its unit, its complaints and its steps. */
    @Test
    void should_compare_a_procedure_that_is_called_otherwise() throws PublishingRefused {
        Publication renamed = Samples.text(TEXT.replace("procedure Timer", "procedure Clock").replace(" notes Hot", ""));
        String page = front(page(Optional.of(EarlierRelease.of(List.of(earlier(TEXT)))), Optional.empty(), renamed));

        assertTrue(page.contains("Kitchen timer: renamed, was “Timer”, compared with it."), page);
        assertTrue(page.contains("notes read: no longer “It gets hot.”"), page);
        assertFalse(page.contains("protection lost since the last release"), page);
        assertTrue(page.contains("None found: procedures gone since the last release"), page);
    }

    @Test
    void should_not_take_another_procedure_of_the_same_unit_for_it() throws PublishingRefused {
        Publication other = Samples.text("procedure Bell \"Bell rings without end\" equipment \"Ednor K2\" complaints \"rings\" begin at A check A \"?\" { yes -> E no -> E } conclude E \"End\" { finds nothing }");
        String page = front(page(Optional.of(EarlierRelease.of(List.of(earlier(TEXT)), "release-3")), Optional.empty(), other));

        assertTrue(page.contains("Nothing was compared (1) None of the texts was in the earlier release (release-3)"), page);
        assertFalse(page.contains("protection lost since the last release"), page);
        assertFalse(page.contains("changed limits"), page);
        assertTrue(page.contains("Procedures gone since the last release (1) “Kitchen timer”"), page);
    }

    /** What was refused for its errors is the first thing said, and is not gone. */
    @Test
    void should_say_what_was_left_out_before_everything() throws PublishingRefused {
        Procedure refused = earlier(TEXT.replace("procedure Timer", "procedure Broken"));
        ProcedureFolder folder = new ProcedureFolder("Bench", List.of(Samples.text(TEXT)), Set.of(), List.of(),
                Optional.of(EarlierRelease.of(List.of(earlier(TEXT), refused))), Optional.empty(), 60)
                .without(List.of(new ProcedureFolder.LeftOut(refused, "2 open errors, the first at line 7: No.")), new ProcedureFolder.Imprint("Faultwright 9", LocalDate.of(2026, 5, 1)));
        for (String form : List.of("quality-html", "index-html")) {
            String page = new String(((FolderExport) Exports.named(form).orElseThrow()).publish(folder).bytes(), StandardCharsets.UTF_8)
                    .replaceAll("(?s)<style>.*</style>", " ").replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
            assertTrue(page.contains("Left out because of open errors"), page);
            assertTrue(page.contains("2 open errors, the first at line 7: No."), page);
            assertFalse(page.contains("Gone since the last release"), page);
            assertFalse(page.contains("Procedures gone since the last release ("), page);
        }
        String page = front(new String(((FolderExport) Exports.named("quality-html").orElseThrow()).publish(folder).bytes(), StandardCharsets.UTF_8).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " "));
        assertTrue(page.contains("1 procedure was left out because of open errors."), page);
        assertTrue(page.contains("None found:") && page.contains("open errors in what was looked at"), page);
        assertTrue(page.contains("Made by Faultwright 9 on 2026-05-01."), page);
    }

    /** Nobody who signs knows the names of the text. */
    @Test
    void should_say_changed_arrows_and_codes_by_titles() throws PublishingRefused {
        String was = TEXT.replace("check Look", "observe See \"Which code?\" at Lamp { 2 blinks -> Look 3 blinks -> Look }\ncheck Look");
        Publication now = Samples.text(was.replace("revision 3", "revision 4").replace("lit -> Nothing", "lit -> Load").replace("means \"Sensor\"", "means \"Ready\""));
        String page = front(page(Optional.of(EarlierRelease.of(List.of(earlier(was)))), Optional.empty(), now));

        assertTrue(page.contains("Arrows changed since the last release (1)"), page);
        assertTrue(page.contains("“Is the lamp dark?”, lit: leads to: step"), page);
        assertTrue(page.contains("“Red lamp”, code 3 blinks: meaning: Sensor → Ready"), page);
    }

    /** However much changed: nothing of the first side is a bare number. */
    @Test
    void should_show_the_worst_of_each_group_or_say_where_it_stands() throws PublishingRefused {
        StringBuilder steps = new StringBuilder();
        for (int i = 1; i <= 40; i++) {
            steps.append("measure M%d \"Rail %d\" { dc voltage at Rail expects 5 V +/- %s source \"Sheet 1\" notes Hot below -> RelayBad within -> %s above -> Nothing }%n"
                    .formatted(i, i, i == 40 ? "2 %" : "5 %", i < 40 ? "M" + (i + 1) : "Nothing"));
        }
        String was = TEXT.replace("-> RelayBad at least 100 mV -> Nothing }", "-> RelayBad at least 100 mV -> M1 }").replace("conclude RelayBad", steps + "conclude RelayBad");
        String now = was.replace(" notes Hot", "").replace("+/- 5 %", "+/- 4 %").replace("+/- 2 %", "+/- 3 %").replace("above -> Nothing", "above -> RelayBad").replace("\"Rail ", "\"The rail ");
        String page = page(Optional.of(EarlierRelease.of(List.of(earlier(was)))), Optional.empty(), Samples.text(now));
        String front = front(page);
        String behind = page.substring(page.indexOf("Name Date Signature"), page.indexOf("Each procedure"));

        assertTrue(front.contains("Protection removed, weakened or reworded since the last release (82) Removed, Kitchen timer: "), front);
        assertTrue(front.contains("Limits and readings changed since the last release (41) Kitchen timer: step 45 \u201CThe rail 40\u201D: limit: 5 V +/- 2 % \u2192 5 V +/- 3 % (wider"), front);
        assertTrue(front.contains("Changed without a new revision number (1): behind the signatures"), front);
        String counted = behind.substring(behind.indexOf("What was only counted in front"));
        assertTrue(counted.contains("Changed without a new revision number (1) Kitchen timer: "), counted);
        assertTrue(front.contains("1 of 1 procedure was in it; ") && front.contains("differences, in \u201CKitchen timer\u201D."), front);
    }

    @Test
    void should_name_the_procedures_that_differ_where_they_are_few_and_else_those_that_do_not() throws PublishingRefused {
        List<Procedure> then = new ArrayList<>();
        List<Publication> few = new ArrayList<>();
        List<Publication> most = new ArrayList<>();
        for (int i = 1; i <= 9; i++) {
            String text = TEXT.replace("procedure Timer \"Kitchen timer\"", "procedure Timer" + i + " \"Timer " + i + "\"").replace("Ednor K2", "Ednor K" + i);
            then.add(earlier(text));
            few.add(Samples.text(i == 4 ? text.replace("+/- 5 %", "+/- 8 %") : text));
            most.add(Samples.text(i == 4 ? text : text.replace("+/- 5 %", "+/- 8 %")));
        }
        String one = front(page(Optional.of(EarlierRelease.of(then)), Optional.empty(), few.toArray(Publication[]::new)));
        assertTrue(one.contains("9 of 9 procedures were in it; 1 difference, in \u201CTimer 4\u201D; the others do not differ."), one);
        String eight = front(page(Optional.of(EarlierRelease.of(then)), Optional.empty(), most.toArray(Publication[]::new)));
        assertTrue(eight.contains("9 of 9 procedures were in it; 8 differences, some in each but \u201CTimer 4\u201D."), eight);
        String none = front(page(Optional.of(EarlierRelease.of(then)), Optional.empty(), then.stream().map(Procedure::source).map(text -> Samples.text(text.content())).toArray(Publication[]::new)));
        assertTrue(none.contains("9 of 9 procedures were in it; none differs."), none);
    }
}
