/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.faultwright.commandline.CommandResult.call;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command as a user calls it. */
class FaultwrightTest {
    private static final String CLEAN = """
            procedure FanNoise "Fan rattles"
            equipment "Bench fan" boards "A"
            revision 1 draft
            complaints "makes a noise"
            fault LooseGuard "Guard loose" { cases 1 shows Listen rattle, Again yes remedy Tighten }
            begin at Listen
            check Listen "Switch on and listen. Does it rattle?" {
                confirms complaint takes 1 min
                rattle -> Tighten
                quiet -> NotHeard
            }
            do Tighten "Tighten the four screws of the guard" { takes 2 min then -> Again }
            check Again "Listen again, one minute. Is it quiet?" {
                verifies repair takes 1 min
                yes -> Mended
                no -> HandOn
            }
            conclude Mended "Guard tightened" { finds LooseGuard report "The guard was loose." }
            conclude NotHeard "Noise not heard" { finds nothing report "Ran for one minute, quiet." }
            conclude HandOn "Not solved here" { refers to "the senior technician" report "Guard tight, still noisy." }
            example "Loose" of LooseGuard { Listen rattle, Again yes ends at Mended within 10 min }
            example "Quiet" { Listen quiet ends at NotHeard }
            example "Worse" { Listen rattle, Again no ends at HandOn }
            """;

    @TempDir
    private Path folder;

    private Path file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void should_find_nothing_in_a_clean_procedure() throws IOException {
        CommandResult answer = call("check", file("FanNoise.procedure", CLEAN));

        assertEquals(0, answer.status(), answer.out());
        assertTrue(answer.out().contains("1 file checked: nothing found."), answer.out());
    }

    @Test
    void should_tell_how_it_is_called_to_who_asks_for_help() {
        assertEquals(call("--help").out(), call("help").out());
        CommandResult publish = call("help", "publish");
        assertEquals(0, publish.status(), publish.err());
        assertEquals(call("publish", "--help").out(), publish.out());
        CommandResult unknown = call("help", "polish");
        assertEquals(2, unknown.status());
        assertTrue(unknown.err().contains("There is no command \"polish\"; say check, new,") && unknown.err().contains(" or serve."), unknown.err());
    }

    @Test
    void should_mark_the_spot_and_say_what_to_do() throws IOException {
        CommandResult answer = call("check", file("FanNoise.procedure", CLEAN.replace("quiet -> NotHeard", "quiet -> NotHerd")));

        assertEquals(1, answer.status());
        assertTrue(answer.out().contains("line 10, column 14: error (unknown-name)"), answer.out());
        assertTrue(answer.out().contains("^^^^^^^"), answer.out());
        assertTrue(answer.out().contains("To do: "), answer.out());
        assertTrue(answer.out().contains("NotHeard"), "the near name is proposed");
    }

    @Test
    void should_say_the_same_as_json() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN.replace("quiet -> NotHeard", "quiet -> NotHerd"));

        CommandResult answer = call("check", "--json", file);

        JsonObject json = JsonParser.parseString(answer.out()).getAsJsonObject();
        assertEquals(1, answer.status());
        assertEquals(1, json.get("files").getAsInt());
        JsonObject finding = json.getAsJsonArray("findings").asList().stream().map(one -> one.getAsJsonObject())
                .filter(one -> one.get("rule").getAsString().equals("unknown-name")).findFirst().orElseThrow();
        int offset = finding.get("offset").getAsInt();
        String text = Files.readString(file);
        assertEquals("NotHerd", text.substring(offset, offset + finding.get("length").getAsInt()));
        assertEquals("error", finding.get("severity").getAsString());
    }

    @ParameterizedTest
    @CsvSource({"advice, 1", "warning, 0", "error, 0"})
    void should_exit_by_the_least_severity_asked_for(String least, int status) throws IOException {
        String untried = CLEAN.substring(0, CLEAN.indexOf("example \"Worse\""));

        assertEquals(status, call("check", "--fail-on", least, file("FanNoise.procedure", untried)).status());
    }

    @Test
    void should_hold_calibration_dates_against_a_day_given() throws IOException {
        Path file = file("Rail.procedure", """
                procedure Rail "Rail"
                instrument Meter "Meter" {
                    dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits
                    calibrated every 12 months until 2027-03-31
                }
                measure Volts "Rail" { dc voltage using Meter under 1 V -> End at least 1 V -> End }
                conclude End "End" { finds nothing }
                """);

        assertFalse(call("check", "--as-of", "2027-03-30", file).out().contains("calibration-expired"));
        assertTrue(call("check", "--as-of", "2027-04-01", file).out().contains("calibration-expired"));
    }

    @Test
    void should_publish_cards_and_trees() throws IOException {
        Path into = folder.resolve("cards/new");

        CommandResult answer = call("publish", file("FanNoise.procedure", CLEAN), "--into", into);

        assertEquals(0, answer.status(), answer.err());
        assertEquals("%PDF", new String(Files.readAllBytes(into.resolve("FanNoise.pdf")), 0, 4, StandardCharsets.US_ASCII));
        assertEquals("FanNoise", JsonParser.parseString(Files.readString(into.resolve("FanNoise.tree.json")))
                .getAsJsonObject().get("id").getAsString());
        assertTrue(answer.out().contains("written into " + into), answer.out());
    }

    @Test
    void should_refuse_to_print_errors_unless_a_draft_is_asked_for() throws IOException {
        Path broken = file("FanNoise.procedure", CLEAN.replace("quiet -> NotHeard", "quiet -> NotHerd"));
        Path into = folder.resolve("cards");

        CommandResult refused = call("publish", broken, "--into", into, "--as", "card-html");
        assertEquals(1, refused.status());
        assertTrue(refused.err().contains("unknown-name"), refused.err());
        assertFalse(Files.exists(into.resolve("FanNoise.html")));

        CommandResult draft = call("publish", broken, "--into", into, "--as", "card-html", "--drafts");
        assertEquals(0, draft.status(), draft.err());
        assertTrue(Files.readString(into.resolve("FanNoise.html")).contains("DRAFT"));
    }

    @Test
    void should_write_nothing_over_a_procedure_of_the_same_name() throws IOException {
        file("One.procedure", CLEAN);
        file("Two.procedure", CLEAN);

        CommandResult answer = call("publish", folder, "--into", folder.resolve("out"), "--as", "tree-json");

        assertEquals(1, answer.status());
        assertTrue(answer.err().contains("would overwrite"), answer.err());
    }

    @Test
    void should_begin_a_file_and_never_write_over_one() throws IOException {
        Path codes = file("codes.csv", "code,meaning\n3 blinks,Head too cold\n");
        Path faults = file("faults.csv", "fault,cases,Look\nFuse blown,3,dark\nCable broken,1,clear\n");
        Path fan = folder.resolve("FanStill.procedure");

        assertEquals(0, call("new", fan).status());
        assertEquals(0, call("check", "--fail-on", "advice", fan).status());
        String written = Files.readString(fan);
        assertTrue(call("new", fan).err().contains("is there already"));
        assertEquals(written, Files.readString(fan));
        assertEquals(0, call("new", folder.resolve("Bench"), "--library").status());
        assertEquals(0, call("new", folder.resolve("Codes.procedure"), "--codes", codes).status());
        assertEquals(0, call("new", folder.resolve("Faults.procedure"), "--faults", faults).status());
        assertEquals(0, call("check", "--fail-on", "error", folder).status());
        for (List<String> wrong : List.of(List.of("new", folder + "/9Fan"), List.of("new", folder + "/no/Fan"),
                List.of("new", folder + "/Fan", "--codes", folder + "/nowhere.csv"), List.of("new", folder + "/Fan", "--codes", faults.toString()),
                List.of("new", folder + "/Fan", "--library", "--codes", codes.toString()))) {
            CommandResult answer = call(wrong.toArray());
            assertEquals(2, answer.status(), wrong.toString());
            assertEquals(1, answer.err().strip().lines().count(), answer.err());
        }
        assertFalse(Files.exists(folder.resolve("Fan.procedure")));
    }

    @Test
    void should_explain_a_rule_and_a_limit() throws IOException {
        assertTrue(call("explain").out().contains("hole-between-bands"));
        assertTrue(call("explain", "hole-between-bands").out().contains("# hole-between-bands"));
        assertTrue(call("explain", "needs").out().contains("needs CONDITION VALUE"));
        assertTrue(call("explain", "arrow").out().contains("# Outcomes and arrows"));
        assertTrue(call("explain", "neds").err().contains("or \"needs\"?"), call("explain", "neds").err());
        Path file = file("Rail.procedure", """
                procedure Rail "Rail"
                instrument Meter "Meter" { dc voltage up to 60 V resolution 10 mV accuracy 0.5 % of reading + 2 digits }
                point P "TP1"
                measure Volts "Rail" { dc voltage at P using Meter expects 24 V +/- 5 % within -> End outside -> End }
                conclude End "End" { finds nothing }
                """);

        CommandResult answer = call("explain", file, "Volts");

        assertEquals(0, answer.status(), answer.err());
        // by hand: 0.5 % of 22.8 V + 2 x 10 mV = 0.134 V; /sqrt(3) = 77.4 mV; JCGM 100:2008, 4.3.7
        assertTrue(answer.out().contains("134 mV") && answer.out().contains("77.4 mV"), answer.out());
    }

    @Test
    void should_list_the_fixes_that_were_tried_and_change_nothing() throws IOException {
        String text = CLEAN.replace("within 10 min", "within 10");
        Path file = file("FanNoise.procedure", text);

        CommandResult answer = call("fix", file);

        assertEquals(1, answer.status(), answer.out());
        assertTrue(answer.out().contains("Add the unit min"), answer.out());
        assertEquals(text, Files.readString(file));
    }

    @Test
    void should_apply_the_fixes_of_all_findings_of_one_rule_and_of_one_place() throws IOException {
        String text = CLEAN.replace("within 10 min", "within 10");
        int line = text.substring(0, text.indexOf("within 10")).split("\n", -1).length;
        for (List<String> which : List.of(List.of("--all"), List.of("--rule", "missing-unit"), List.of("--at", "" + line))) {
            Path file = file("FanNoise.procedure", text);
            List<Object> arguments = new java.util.ArrayList<>(List.of("fix", file));
            arguments.addAll(which);

            CommandResult answer = call(arguments.toArray());

            assertEquals(0, answer.status(), answer.out() + answer.err());
            assertTrue(answer.out().contains("1 fix applied."), answer.out());
            assertEquals(CLEAN, Files.readString(file), which.toString());
        }
    }

    @Test
    void should_show_the_changed_lines_of_a_fix_and_leave_the_file() throws IOException {
        String text = CLEAN.replace("within 10 min", "within 10");
        Path file = file("FanNoise.procedure", text);

        CommandResult answer = call("fix", "--all", "--dry-run", file);

        assertEquals(1, answer.status());
        assertTrue(answer.out().contains("-     ") || answer.out().contains("  - "), answer.out());
        assertTrue(answer.out().contains("within 10 min"), answer.out());
        assertEquals(text, Files.readString(file));
    }

    @Test
    void should_say_in_one_sentence_what_fix_does_not_understand() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN);

        assertEquals(List.of(2, 2, 2, 2, 1), List.of(call("fix", "--rule", "missing-unti", file).status(),
                call("fix", "--at", "twelve", file).status(), call("fix", "--all", "--at", "1", file).status(),
                call("fix", folder.resolve("Nothing.procedure")).status(), call("fix", "--at", "1", file).status()));
        assertTrue(call("fix", "--rule", "missing-unti", file).err().contains("missing-unit"));
    }

    @Test
    void should_format_without_changing_meaning_and_only_look_when_asked() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN);

        assertEquals(1, call("format", "--dry-run", file).status());
        assertEquals(CLEAN, Files.readString(file));
        assertEquals(0, call("format", file).status());
        assertEquals(0, call("format", "--dry-run", file).status());
        assertEquals(0, call("check", file).status());
    }

    @Test
    void should_leave_a_text_alone_that_it_cannot_read() throws IOException {
        Path file = file("Broken.procedure", "procedure Broken \"x\" check {{{ \"");

        assertEquals(1, call("format", file).status());
        assertEquals("procedure Broken \"x\" check {{{ \"", Files.readString(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"frobnicate", "check", "check nowhere.procedure", "publish nowhere --into x", "check --fail-on much x",
        "check --as-of tomorrow x", "explain no-such-rule", "explain nowhere.procedure Step", "publish x", "--what"})
    void should_answer_a_wrong_call_in_one_sentence_and_with_2(String line) {
        CommandResult answer = call((Object[]) line.split(" "));

        assertEquals(2, answer.status(), answer.out() + answer.err());
        assertEquals(1, answer.err().strip().lines().count(), answer.err());
        assertTrue(answer.err().startsWith("faultwright: "), answer.err());
    }

    @Test
    void should_refuse_an_unknown_form_and_a_file_for_a_folder() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN);

        assertTrue(call("publish", file, "--into", folder, "--as", "card-stone").err().contains("choose from card-pdf"));
        assertEquals(2, call("publish", file, "--into", file).status());
    }

    @Test
    void should_survive_hostile_files() throws IOException {
        Files.write(folder.resolve("Binary.procedure"), new byte[] {0, 1, 2, (byte) 0xff, (byte) 0xfe, '"', '{', 0});
        file("Empty.procedure", "");
        file("Deep.procedure", "procedure D \"d\" calculate X \"x\" { value " + "(".repeat(20_000));
        file("Long.procedure", "procedure L \"" + "x".repeat(100_000) + "\"");
        file("../FanNoise.procedure".replace("../", ""), CLEAN);

        CommandResult answer = call("check", folder);

        assertEquals(1, answer.status());
        assertTrue(answer.out().lines().allMatch(line -> line.length() < 2000), "long lines are shortened");
        assertTrue(answer.out().contains("5 files checked"), answer.out().substring(Math.max(0, answer.out().length() - 300)));
    }

    @Test
    void should_tell_what_changed_since_the_last_release() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN);
        Path out = folder.resolve("out");
        assertEquals(0, call("publish", file, "--into", out, "--as", "procedure-text").status());
        Files.writeString(file, CLEAN.replace("Tighten the four screws", "Tighten the six screws"));

        // into the same folder: the old texts are read before the new ones are written
        CommandResult answer = call("publish", file, "--into", out, "--since", out, "--as", "procedure-text,quality-json");

        assertEquals(0, answer.status(), answer.err());
        String report = Files.readString(out.resolve("FanNoise.quality.json"));
        assertTrue(report.contains("\"was\": \"Tighten the four screws of the guard\""), report);
        assertTrue(report.contains("\"now\": \"Tighten the six screws of the guard\""), report);
    }

    @Test
    void should_lead_from_the_index_to_what_changed_since_a_release() throws IOException {
        Path out = folder.resolve("cards");
        Path file = file("FanNoise.procedure", CLEAN);
        assertEquals(0, call("publish", file, "--into", out, "--as", "procedure-text,index-html").status());
        assertFalse(Files.exists(out.resolve("comparison.html")), "nothing was compared");
        assertFalse(Files.readString(out.resolve("index.html")).contains("comparison.html"));
        Files.writeString(file, CLEAN.replace("Tighten the four screws", "Tighten the six screws"));

        CommandResult answer = call("publish", file, "--into", out, "--since", out, "--as", "procedure-text,index-html");

        assertEquals(0, answer.status(), answer.err());
        assertTrue(Files.readString(out.resolve("index.html")).contains("<a href=\"comparison.html\">What changed since the last release</a>"));
        String page = Files.readString(out.resolve("comparison.html"));
        assertTrue(page.contains("Tighten the four screws of the guard") && page.contains("Tighten the six screws of the guard"), page);
    }

    @Test
    void should_not_tell_a_procedure_as_gone_that_nobody_asked_to_publish() throws IOException {
        Path release = folder.resolve("release");
        Path file = file("FanNoise.procedure", CLEAN);
        Path other = file("FanStill.procedure", CLEAN.replaceFirst("FanNoise \"Fan rattles\"", "FanStill \"Fan stands still\""));
        assertEquals(0, call("publish", file, other, "--into", release, "--as", "procedure-text").status());

        assertEquals(0, call("publish", file, "--into", folder.resolve("one"), "--since", release, "--as", "index-html").status());
        Files.delete(other);
        assertEquals(0, call("publish", folder, "--into", folder.resolve("all"), "--since", release, "--as", "index-html").status());

        assertFalse(Files.readString(folder.resolve("one/comparison.html")).contains("Fan stands still"));
        assertTrue(Files.readString(folder.resolve("all/comparison.html")).contains("Fan stands still"));
    }

    @Test
    void should_compare_two_texts_by_what_they_mean() throws IOException {
        Path old = file("FanNoise.procedure", CLEAN);
        Path now = file("Later.procedure", CLEAN.replace("Tighten the four screws", "Tighten the six screws"));
        Path out = folder.resolve("page");

        CommandResult same = call("compare", old, old);
        CommandResult different = call("compare", old, now, "--page", out);

        assertEquals(0, same.status(), same.err());
        assertTrue(same.out().contains("Unchanged, letter by letter."), same.out());
        assertEquals(1, different.status(), different.err());
        assertTrue(different.out().contains("Tighten the four screws of the guard \u2192 Tighten the six screws of the guard"), different.out());
        assertTrue(Files.readString(out.resolve("comparison.html")).contains("Tighten the six screws of the guard"));
    }

    @Test
    void should_compare_a_folder_with_what_was_published_from_it() throws IOException {
        file("FanNoise.procedure", CLEAN);
        Path out = folder.resolve("out");
        assertEquals(0, call("publish", folder, "--into", out, "--as", "procedure-text,library-text").status());
        file("Other.procedure", CLEAN.replace("FanNoise", "Other"));

        CommandResult answer = call("compare", out, folder);

        assertEquals(1, answer.status(), answer.err());
        assertTrue(answer.out().contains("\"FanNoise\": Unchanged, letter by letter."), answer.out());
        assertTrue(answer.out().contains("New, so not compared: "), answer.out());
    }

    /** What cannot be compared whole is not compared by halves. */
    @Test
    void should_refuse_an_earlier_release_that_lacks_a_library_or_is_none() throws IOException {
        file("House.procedure", "library House \"House\" note Hot danger { covers heat hazard \"Hot.\" consequence \"Burns.\" avoid \"Wait.\" }");
        Path now = file("FanNoise.procedure", CLEAN.replace("complaints", "uses House complaints"));
        Path old = Files.createDirectory(folder.resolve("old"));
        Files.copy(now, old.resolve("FanNoise.procedure.txt"));
        Path readme = Files.writeString(folder.resolve("README.md"), "# Read me\n" + CLEAN);
        for (Path bad : List.of(old, readme)) {
            CommandResult answer = call("publish", now, "--drafts", "--into", folder.resolve("out"), "--as", "quality-html", "--since", bad);
            assertEquals(2, answer.status(), answer.out());
            assertEquals(1, answer.err().lines().count(), answer.err());
            assertTrue(answer.err().contains(bad.equals(old) ? "uses the library House" : "is no procedure"), answer.err());
            assertFalse(Files.exists(folder.resolve("out")));
        }
        CommandResult months = call("publish", now, "--into", folder.resolve("out"), "--as", "quality-html", "--source-age", "-3");
        assertEquals(2, months.status(), months.out());
    }

    @Test
    void should_say_which_procedures_a_report_does_not_look_at() throws IOException {
        file("FanNoise.procedure", CLEAN);
        file("Worse.procedure", "procedure Worse \"Worse one\" check A \"?\" { yes -> Gone }");
        Path out = folder.resolve("out");
        CommandResult answer = call("publish", folder, "--into", out, "--as", "quality-json,quality-html");
        assertEquals(1, answer.status(), answer.err());
        String page = Files.readString(out.resolve(Files.exists(out.resolve("quality.html")) ? "quality.html" : "FanNoise.quality.html"));
        assertTrue(page.contains("1 procedure was left out because of open errors.") && page.contains("Worse one"), page);
    }

    @Test
    void should_compare_with_a_published_tree_by_the_text_it_was_made_from() throws IOException {
        file("FanNoise.procedure", CLEAN);
        Path out = folder.resolve("out");
        assertEquals(0, call("publish", folder, "--into", out, "--as", "procedure-text,library-text,tree-json").status());
        Path now = file("Later.procedure", CLEAN.replace("Tighten the four screws", "Tighten the six screws"));
        Path tree = out.resolve("FanNoise.tree.json");

        CommandResult compared = call("compare", tree, now);
        assertEquals(1, compared.status(), compared.err());
        assertTrue(compared.out().contains("four screws of the guard \u2192 Tighten the six"), compared.out());

        Files.writeString(out.resolve("FanNoise.procedure.txt"), CLEAN.replace("four screws", "five screws"));
        CommandResult another = call("compare", tree, now);
        assertEquals(2, another.status(), another.out());
        assertTrue(another.err().contains("is not the text that \"FanNoise.tree.json\" was made from"), another.err());

        Files.delete(out.resolve("FanNoise.procedure.txt"));
        CommandResult alone = call("compare", tree, now);
        assertEquals(2, alone.status(), alone.out());
        assertTrue(alone.err().contains("FanNoise.procedure.txt\" is not there"), alone.err());
        assertEquals(1, alone.err().lines().count(), alone.err());
    }

    @Test
    void should_say_in_a_sentence_what_cannot_be_compared() throws IOException {
        Path good = file("FanNoise.procedure", CLEAN);
        Path empty = Files.createDirectory(folder.resolve("empty"));
        for (Path bad : List.of(empty, folder.resolve("nowhere"), file("Notes.txt", "Dear customer, your fan is ready."))) {
            CommandResult answer = call("compare", bad, good);

            assertEquals(2, answer.status(), answer.out());
            assertTrue(answer.err().contains(bad.getFileName().toString()), answer.err());
            assertEquals(1, answer.err().lines().count(), answer.err());
        }
    }

    @Test
    void should_say_in_a_sentence_why_nothing_can_be_compared() throws IOException {
        Path file = file("FanNoise.procedure", CLEAN);
        Path out = folder.resolve("out");
        Path empty = Files.createDirectory(folder.resolve("empty"));
        for (Path since : List.of(empty, folder.resolve("nowhere"), file("FanNoise.tree.json", "{ not JSON"))) {
            CommandResult answer = call("publish", file, "--into", out, "--since", since);

            assertEquals(2, answer.status(), answer.out());
            assertTrue(answer.err().contains(since.getFileName().toString()), answer.err());
            assertEquals(1, answer.err().lines().count(), answer.err());
            assertFalse(Files.exists(out));
        }
    }

    @Test
    void should_check_and_publish_the_demo() {
        Path demo = demo();

        CommandResult checked = call("check", demo);
        assertEquals(0, checked.status(), checked.out());
        CommandResult published = call("publish", demo, "--into", folder.resolve("demo"), "--as", "tree-json");
        assertEquals(0, published.status(), published.err());
        assertTrue(List.of(folder.resolve("demo").toFile().list()).size() >= 8);
    }

    @Test
    void should_draft_the_steps_from_a_fault_table_alone() throws IOException {
        Path table = file("Pump.procedure", """
                procedure Pump "Pump does not start"
                equipment "Bench pump" boards "A"
                revision 1 draft
                complaints "dead"
                fault Fuse "Fuse blown" { cases 30 shows LookFuse open remedy NewFuse }
                fault Motor "Motor seized" { cases 10 shows LookFuse whole, TurnShaft stuck remedy NewMotor }
                fault Switch "Switch worn" { cases 5 shows LookFuse whole, TurnShaft free remedy NewSwitch }
                """);
        Path draft = folder.resolve("Draft.procedure");

        CommandResult answer = call("draft", table, "--into", draft);

        assertEquals(0, answer.status(), answer.err());
        CommandResult checked = call("check", "--fail-on", "error", draft);
        assertEquals(0, checked.status(), checked.out());
        assertTrue(Files.readString(draft).contains("LookFuse"));
        assertEquals(2, call("draft", table, "--into", draft).status(), "a file that is there is not written over");
        assertEquals(1, call("draft", file("Bare.procedure", "procedure Bare \"x\"")).status());
        assertEquals(2, call("draft", demo().resolve("library/HarbourNotes.procedure")).status());
    }

    @Test
    void should_write_no_draft_that_has_an_error_and_say_which() throws IOException {
        Path table = file("Fan.procedure", """
                procedure Fan "Fan stands still"
                equipment "Bench fan"
                revision 1 draft
                complaints "dead"
                condition Supply { off, on } live when on starts off ends off
                condition Cover { fitted, removed } starts fitted ends fitted
                point Rail "Rail" carries up to 325 V dc
                part Board "Board"
                fault Fuse "Fuse blown" { cases 30 shows LookFuse open remedy NewFuse }
                fault Motor "Motor seized" { cases 10 shows LookFuse whole remedy NewMotor }
                do NewFuse "Fit a fuse" { needs Supply on, Cover removed handles Board takes 1 min }
                """);
        Path into = folder.resolve("Into.procedure");

        CommandResult answer = call("draft", table, "--into", into);

        assertEquals(1, answer.status(), answer.err());
        assertFalse(Files.exists(into));
        assertTrue(answer.err().contains("No draft is written") && answer.err().contains("live-work: \"NewFuse\""), answer.err());
        assertEquals(1, call("draft", demo().resolve("LundavikTillDrawer.procedure")).status(), "it is whole");
        assertEquals(2, call("draft", folder.resolve("nowhere.procedure")).status());
        CommandResult broken = call("draft", file("Broken.procedure", "procedure Broken \"x\"\nfault { { \u0000 shows ->"));
        assertEquals(1, broken.status());
        assertTrue(broken.err().contains("cannot be read") && !broken.err().contains("Exception"), broken.err());
    }

    @Test
    void should_print_the_whole_order_with_its_reasons_and_write_it_once() throws IOException {
        Path till = file("LundavikTillDrawer.procedure", Files.readString(demo().resolve("LundavikTillDrawer.procedure")));
        Files.createDirectories(folder.resolve("library"));
        for (String library : List.of("HarbourBench", "HarbourNotes")) {
            Files.copy(demo().resolve("library/" + library + ".procedure"), folder.resolve("library/" + library + ".procedure"));
        }

        CommandResult answer = call("order", till);

        assertEquals(1, answer.status(), answer.err());
        assertTrue(answer.out().contains("12.3 min saved") && answer.out().contains("KeyLook first settles 45 % of the cases in 10 s.")
                && answer.out().contains("(Cover) stays shut for KeyLook") && answer.out().contains("taken out: DeadForLatch"), answer.out());
        assertEquals(0, call("order", "--write", till).status());
        String written = Files.readString(till);
        assertTrue(call("order", "--write", till).out().contains("no better order"));
        assertEquals(written, Files.readString(till), "written twice it is the same");
        assertEquals(0, call("check", "--fail-on", "warning", till).status());
    }

    @Test
    void should_say_what_stands_in_the_way_of_an_order() throws IOException {
        CommandResult iron = call("order", demo().resolve("HavendyneColdIron.procedure"));
        assertTrue(iron.out().contains("not proposed, because of:") && iron.out().contains("\"SeeIt\" leads into the middle of these steps"), iron.out());

        Path broken = file("Broken.procedure", "procedure Broken \"x\"\nfault A { shows S yes }\nfault B { shows S no }\ncheck S \"S\" { yes -> no -> }");
        CommandResult unread = call("order", "--write", broken);
        assertTrue(unread.err().contains("Broken.procedure is not studied, because it has words that cannot be read, the first in line 4"), unread.err());
        assertEquals(1, unread.status());
        CommandResult library = call("order", demo().resolve("library"));
        assertTrue(library.err().contains("only libraries") && library.status() == 2, library.err());
        assertEquals(2, call("order", folder.resolve("nowhere.procedure")).status());
    }

    @Test
    void should_not_say_that_no_fix_is_known_of_words_that_it_cannot_read() throws IOException {
        Path unread = file("Unread.procedure", "procedure Unread \"x\"\ncheck A {{{\n");
        for (CommandResult answer : List.of(call("fix", unread), call("fix", "--all", unread), call("fix", "--all", "--dry-run", unread))) {
            assertEquals(1, answer.status(), answer.out());
            assertTrue(answer.out().contains("Unread.procedure, line 2: here") && answer.out().contains("words cannot be read"), answer.out());
        }
        Path locked = folder.resolve("Locked.procedure");
        Files.createDirectory(locked);
        assertEquals(2, call("fix", locked).status());
    }

    @Test
    void should_say_the_same_when_a_folder_is_checked_again() throws IOException {
        Path text = file("Again.procedure", "procedure Again \"x\"\nuses Shared\ncheck A \"a\" { yes -> Nowhere }\n");
        file("Shared.procedure", "library Shared \"s\"\n");
        for (List<String> form : List.of(List.<String>of(), List.of("--json"), List.of("--sarif"), List.of("--quick"), List.of("--as-of", "2026-01-01"))) {
            List<Object> asked = new java.util.ArrayList<>(List.of("check", folder));
            asked.addAll(form);
            CommandResult first = call(asked.toArray());
            CommandResult again = call(asked.toArray());
            asked.add("--no-cache");
            assertEquals(first, again);
            assertEquals(first, call(asked.toArray()));
        }
        Files.writeString(text, "procedure Again \"x\"\nuses Shared\ncheck A \"a\" { yes -> Elsewhere }\n");
        assertTrue(call("check", folder).out().contains("Elsewhere"));
        assertTrue(call("check", text).out().contains("1 library that it uses"));
        assertTrue(call("check", text).out().contains("1 library that it uses"));
    }

    @Test
    void should_say_in_a_sentence_what_it_cannot_read_of_an_editor() {
        String notJson = "{\"jsonrpc\":,";
        java.io.InputStream in = System.in;
        System.setIn(new java.io.ByteArrayInputStream(("Content-Length: " + notJson.length() + "\r\n\r\n" + notJson).getBytes(StandardCharsets.UTF_8)));
        try {
            CommandResult answer = call("serve");
            assertEquals(1, answer.status());
            assertTrue(answer.err().startsWith("faultwright: A message of the editor cannot be read") && answer.err().lines().count() == 1, answer.err());
        } finally {
            System.setIn(in);
        }
        assertTrue(call("serve", "--help").out().contains("left without \"shutdown\""));
    }

    @Test
    void should_end_new_lines_as_the_file_does() throws IOException {
        String text = "procedure Lines \"x\"\r\nmeasure V \"V\" { dc voltage expects 5 +/- 5 % within -> D outside -> D }\r\nconclude D \"d\" { finds nothing }\r\n";
        Path windows = file("Lines.procedure", text);
        assertEquals(0, call("fix", "--all", windows).status());
        String fixed = Files.readString(windows);
        assertTrue(fixed.contains("revision 1 draft\r\n") && fixed.contains("expects 5 V") && !fixed.replace("\r\n", "").contains("\n"), fixed);

        Path table = file("Table.procedure", "procedure Table \"x\"\r\ncomplaints \"dead\"\r\nfault A \"A\" { cases 1 shows S yes remedy RA }\r\n"
                + "fault B \"B\" { cases 1 shows S no remedy RB }\r\n");
        Path into = folder.resolve("Drafted.procedure");
        assertEquals(0, call("draft", table, "--into", into).status());
        assertFalse(Files.readString(into).replace("\r\n", "").contains("\n"), Files.readString(into));
    }

    @Test
    void should_say_of_a_day_what_is_wrong_with_it() {
        for (String command : List.of("check", "fix", "publish")) {
            CommandResult answer = call(command, "--as-of", "tomorrow", demo());
            assertEquals(2, answer.status());
            assertTrue(answer.err().contains("\"tomorrow\" is no day; write year, month and day") && !answer.err().contains("java"), answer.err());
        }
    }

    @Test
    void should_not_end_in_good_order_where_the_output_is_cut_off() {
        assertEquals(2, cutOff("No space left on device").status());
        assertTrue(cutOff("No space left on device").err().contains("not complete (No space left on device)"));
        assertEquals(new CommandResult(1, "", ""), cutOff("Broken pipe"), "whoever closes a pipe has read enough");
    }

    private static CommandResult cutOff(String reason) {
        Faultwright.Output output = new Faultwright.Output(new OutputStream() {
            @Override
            public void write(int one) throws IOException {
                throw new IOException(reason);
            }
        });
        StringWriter err = new StringWriter();
        PrintWriter out = new PrintWriter(output, true);
        out.println("found");
        int status = output.finish(1, new PrintWriter(err, true));
        return new CommandResult(status, "", err.toString());
    }

    @Test
    void should_leave_out_the_search_for_a_better_order_when_in_a_hurry() {
        Path slow = demo().resolve("LundavikTillDrawer.procedure");

        assertTrue(call("check", slow).out().contains("better-order"));
        assertFalse(call("check", "--quick", slow).out().contains("better-order"));
    }

    private static Path demo() {
        Path up = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(up.resolve("procedures-demo"))) {
            up = up.getParent();
        }
        return up.resolve("procedures-demo");
    }

    @ParameterizedTest
    @ValueSource(strings = {"check", "new", "publish", "explain", "fix", "order", "draft", "compare", "tally", "format", "serve"})
    void should_break_no_example_of_a_call_at_the_width_of_a_terminal(String command) {
        CommandResult help = call(command, "--help");

        assertEquals(0, help.status());
        List<String> given = List.of(Faultwright.commandLine().getSubcommands().get(command).getCommandSpec().usageMessage().description());
        given.stream().filter(line -> line.startsWith("  ")).forEach(line -> assertTrue(help.out().lines().anyMatch(line::equals), line));
    }

    @Test
    void should_name_no_file_where_none_is_written() throws IOException {
        CommandResult answer = call("publish", file("FanNoise.procedure", CLEAN), "--into", folder.resolve("out"), "--as", "quality-json");

        assertEquals(0, answer.status(), answer.err());
        assertTrue(answer.out().startsWith("1 of 1  FanNoise\nFanNoise.quality.json\n"), answer.out());
        answer = call("publish", folder.resolve("FanNoise.procedure"), "--into", folder.resolve("out"), "--as", "tree-json");
        assertTrue(answer.out().startsWith("1 of 1  FanNoise: FanNoise.tree.json\n1 file written"), answer.out());
    }
}
