/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.publish.Exports;
import org.faultwright.publish.FolderExport;
import org.faultwright.publish.ProcedureFolder;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.Samples;
import org.faultwright.publish.tree.TreeJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SinceReleaseTest {
    private static final String TEXT = """
            procedure Timer "Kitchen timer" equipment "Merrow K2" revision 3 released by "R. Castellane" dated 2026-01-10
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

    private static EarlierTree earlier(String text) {
        try {
            return EarlierTree.read("Timer.tree.json", Samples.string("tree-json", Samples.text(text)));
        } catch (PublishingRefused wrong) {
            throw new AssertionError(wrong);
        }
    }

    private static SinceRelease since(String was, String now) {
        return SinceRelease.of(earlier(was), Samples.text(now));
    }

    /** Each edit of the text with what a reader is told. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', value = {
        "+/- 5 % | +/- 8 % | Limits and readings | Volts: limit | 5 V +/- 5 % | 5 V +/- 8 %",
        "expects 5 V | expects 5000 mV | Limits and readings | Volts: limit | 5 V +/- 5 % | 5000 mV +/- 5 % (the same value)",
        "Sheet 1\" notes | Sheet 2\" notes | Limits and readings | Volts: source | Sheet 1 | Sheet 2",
        "within -> Nothing | within -> RelayBad | Ways on | Volts within: leads to | Nothing | RelayBad",
        "lit -> Nothing | lit -> Nothing at most 2 times, else RelayBad | Ways on | Look lit: bound | – | at most 2 times, else RelayBad",
        "lit -> Nothing | lit -> Nothing odd -> RelayBad | Ways on | Look result odd | – | leads to RelayBad",
        "notes Hot | hint \"Look\" notes Hot | Steps | Volts: hint | – | Look",
        " notes Hot | | Safety and set-up | Volts: notes read | Hot | –",
        "Wait a minute. | Wait an hour. | Safety and set-up | Hot: avoid | Wait a minute. | Wait an hour.",
        "caution { | warning { | Safety and set-up | Hot: signal word | caution | warning",
        "ends off | ends on | Safety and set-up | Supply: ends | off | on",
        "cases 3 | cases 4 | Faults | Relay: cases | 3 | 4",
        "shows Look dark | shows Look lit | Faults | Relay shows at Look | dark | lit",
        "begin at | fault Fuse \"Fuse blown\" { cases 1 } begin at | Faults | Fault Fuse | – | Fuse blown",
        "up to 6 V | up to 9 V | Instruments and points | Rail: voltage carried | up to 6 V, dc voltage | up to 9 V, dc voltage",
        "Volts 4.1 V | Volts 4.2 V | Examples | One shows at Volts | 4.1 V | 4.2 V",
        "Merrow K2 | Merrow K3 | Title and record | equipment | Merrow K2 | Merrow K3",
        "under 100 mV -> RelayBad at least 100 mV | under 90 mV -> RelayBad at least 90 mV | Limits and readings | Load under 90 mV: limit | under 100 mV | under 90 mV",
        "takes 1 min | takes 60 s | Steps | Look: time | 1 min | 60 s (the same value)",
        "check Look | check Look | | | | ",
    })
    void should_tell_what_changed(String from, String to, String area, String what, String was, String now) {
        String changed = TEXT.replace(from, to == null ? "" : to);

        List<Change> changes = since(TEXT, changed).changes();

        if (area == null) {
            assertEquals(List.of(), changes);
        } else {
            assertTrue(changes.stream().anyMatch(change -> change.area().title().equals(area) && change.what().equals(what)
                    && change.was().equals(was) && change.now().equals(now)), () -> changes.toString());
        }
    }

    @Test
    void should_tell_the_new_and_the_gone_the_other_way_round() {
        String more = TEXT.replace("begin at", "fault Fuse \"Fuse blown\" { cases 1 } begin at");

        assertEquals(List.of(new Change(Change.Area.FAULTS, "Fault Fuse", "Fuse blown", Change.ABSENT)),
                since(more, TEXT).changes());
    }

    @Test
    void should_know_a_step_that_has_only_another_name() {
        assertEquals(List.of(new Change(Change.Area.STEPS, "Step SeeIt: name", "Look", "SeeIt")),
                since(TEXT, TEXT.replace("Look", "SeeIt")).changes());
    }

    @Test
    void should_say_that_only_what_nobody_reads_has_changed() {
        SinceRelease same = since(TEXT, TEXT);
        SinceRelease commented = since(TEXT, TEXT + "\n// a remark\n");

        assertEquals("Unchanged, letter by letter.", same.inShort());
        assertEquals(List.of(), commented.changes());
        assertTrue(commented.inShort().startsWith("Nothing that a card or tree says has changed"), commented.inShort());
        assertFalse(commented.hidesAChange());
    }

    @Test
    void should_notice_a_change_under_the_same_revision() {
        String changed = TEXT.replace("+/- 5 %", "+/- 8 %");

        assertTrue(since(TEXT, changed).hidesAChange());
        assertFalse(since(TEXT, changed.replace("revision 3", "revision 4")).hidesAChange());
        assertTrue(earlier(TEXT).words().startsWith("Revision 3, released 2026-01-10 by R. Castellane, digest "));
    }

    @Test
    void should_print_the_changes_and_name_what_is_new_or_gone() throws PublishingRefused {
        Publication changed = Samples.text(TEXT.replace("+/- 5 %", "+/- 8 %"));
        EarlierRelease release = EarlierRelease.of(List.of(earlier(TEXT), earlier(TEXT.replace("Timer", "Old"))));
        ProcedureFolder folder = new ProcedureFolder("Bench", List.of(changed, Samples.everything()), Set.of(), List.of(),
                Optional.of(release));

        String page = new String(((FolderExport) Exports.named("quality-html").orElseThrow()).publish(folder).bytes(),
                StandardCharsets.UTF_8).replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");

        assertTrue(page.contains("Kitchen timer: 1 change (Limits and readings 1). The revision still has the same number. "
                + "Volts: limit (5 V +/- 5 % → 5 V +/- 8 %)."), page);
        assertTrue(page.contains("Old: In the earlier release, and not in this report."), page);
        assertTrue(page.contains("New: the earlier release has no tree of it."), page);
        assertTrue(page.contains("Held against Revision 3, released 2026-01-10 by R. Castellane"), page);
    }

    /** Whatever stands in a member, the comparison ends and tells that it differs. */
    @ParameterizedTest
    @ValueSource(strings = { "\"steps\": 7", "\"steps\": [7, null]", "\"steps\": [{}, {}]", "\"steps\": [{\"id\": {\"a\": []}}]",
        "\"faults\": {\"id\": \"x\"}", "\"revision\": \"4\"", "\"digest\": []", "\"notes\": [{\"id\": null}]",
        "\"unheard\": {\"of\": [1, {\"deep\": true}]}", "\"title\": \"<script>\"" })
    void should_bear_a_tree_that_somebody_has_changed(String member) throws PublishingRefused {
        String tree = "{\"$schema\": \"" + TreeJson.SCHEMA + "\", \"id\": \"Timer\", " + member + "}";

        SinceRelease since = SinceRelease.of(EarlierTree.read("x", tree), Samples.text(TEXT));

        assertTrue(since.changes().size() > 5);
        assertTrue(since.earlier().words().length() > 5);
    }

    @ParameterizedTest
    @ValueSource(strings = { "", "{", "[]", "7", "null", "{}", "{\"id\": \"Timer\"}", "{\"$schema\": \"other\", \"id\": \"Timer\"}",
        "{\"$schema\": {}}" })
    void should_refuse_in_one_sentence_what_is_no_tree(String json) {
        assertOneSentence(assertThrows(PublishingRefused.class, () -> EarlierTree.read("Timer.tree.json", json)).getMessage(),
                "Timer.tree.json");
    }

    @Test
    void should_refuse_a_tree_too_deep_to_read() {
        String deep = "[".repeat(200_000);
        assertOneSentence(assertThrows(PublishingRefused.class, () -> EarlierTree.read("deep", deep)).getMessage(), "deep");
    }

    @Test
    void should_refuse_a_place_without_trees(@TempDir Path folder) throws IOException {
        assertOneSentence(refused(folder), folder.toString());
        assertOneSentence(refused(folder.resolve("missing")), "missing");
        Files.write(folder.resolve("bytes.tree.json"), new byte[] { (byte) 0xff, (byte) 0xfe, 0 });
        assertOneSentence(refused(folder), "bytes.tree.json");
    }

    @Test
    void should_refuse_two_trees_of_one_procedure(@TempDir Path folder) throws IOException, PublishingRefused {
        String tree = Samples.string("tree-json", Samples.text(TEXT));
        Files.writeString(folder.resolve("a.tree.json"), tree);
        assertEquals("Timer", EarlierRelease.in(folder).trees().get(0).procedure());
        assertEquals("Timer", EarlierRelease.in(folder.resolve("a.tree.json")).trees().get(0).procedure());
        Files.writeString(folder.resolve("b.tree.json"), tree);
        assertOneSentence(refused(folder), "both trees of Timer");
    }

    private static String refused(Path place) {
        return assertThrows(PublishingRefused.class, () -> EarlierRelease.in(place)).getMessage();
    }

    private static void assertOneSentence(String message, String names) {
        assertTrue(message.contains(names), message);
        assertTrue(message.endsWith(".") && !message.contains("\n") && !message.contains("Exception"), message);
    }
}
