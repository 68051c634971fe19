/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.faultwright.commandline.CommandResult.call;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.ContentDigest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TallyCommandTest {
    private static final String TEXT = """
            procedure FanNoise "Fan rattles" // a { in a remark
            equipment "Bench fan" boards "A"
            revision 1 draft
            complaints "makes a noise"
            fault LooseGuard "Guard loose {" { shows Listen rattle, Again yes remedy Tighten }
            fault WornBearing "Bearing worn" { cases 3 shows Listen rattle, Again no, Oil quiet remedy Oil }
            begin at Listen
            check Listen "Switch on and listen. Does it rattle?" {
                confirms complaint
                takes 1 min
                rattle -> Tighten
                quiet -> NotHeard
            }
            do Tighten "Tighten the four screws of the guard" { takes 2 min then -> Again }
            check Again "Listen again, one minute. Is it quiet?" { verifies repair takes 1 min yes -> Mended no -> Oil }
            check Oil "Oil it, listen" { verifies repair takes 4 min quiet -> Oiled loud -> HandOn }
            conclude Mended "Guard tightened" { finds LooseGuard report "The guard was loose." }
            conclude Oiled "Bearing oiled" { finds WornBearing report "The bearing was dry." }
            conclude NotHeard "Noise not heard" { finds nothing report "Ran for one minute, quiet." }
            conclude HandOn "Not solved here" { refers to "the senior technician" report "Guard tight, still noisy." }
            """;

    @TempDir
    private Path folder;
    private Path procedure;
    private String digest;

    @BeforeEach
    void write() throws IOException {
        procedure = Files.writeString(folder.resolve("FanNoise.procedure"), TEXT);
        digest = ContentDigest.of(ProcedureReader.overFiles().read(procedure));
    }

    /** A guard that was loose: three steps, 300 s each. */
    private void guard(int number) throws IOException {
        record(number, "Mended", "Listen rattle", "Tighten done", "Again yes");
    }

    private void record(int number, String conclusion, String... results) throws IOException {
        StringBuilder steps = new StringBuilder();
        for (String result : results) {
            String[] words = result.split(" ");
            steps.append(steps.length() == 0 ? "" : ",").append("{\"step\":\"").append(words[0]).append("\",\"outcome\":\"").append(words[1])
                    .append("\",\"ended\":\"2026-03-01T08:00:00Z\",\"seconds\":300}");
        }
        Files.writeString(folder.resolve(String.format("%03d.record.json", number)), String.format("""
                {"$schema":"urn:faultwright:walk-record:1","schemaVersion":"1.0","id":"urn:uuid:00000000-0000-4000-8000-%012d",
                "procedure":{"id":"FanNoise","revision":{"number":1,"status":"draft"},"digest":"sha256:%s"},
                "begun":"2026-03-01T08:00:00Z","steps":[%s]%s}""", number, digest, steps,
                conclusion.isEmpty() ? "" : ",\"conclusion\":\"" + conclusion + "\""));
    }

    @Test
    void should_show_what_the_text_could_say_and_change_nothing() throws IOException {
        for (int i = 0; i < 6; i++) {
            guard(i);
        }
        record(6, "Oiled", "Listen rattle", "Tighten done", "Again no", "Oil quiet");
        record(7, "", "Listen rattle");

        CommandResult answer = call("tally", folder, "--for", procedure);

        assertEquals(1, answer.status(), answer.err());
        assertTrue(answer.out().contains("8 records, 1 of them not finished: they count for times alone."), answer.out());
        assertTrue(answer.out().contains("LooseGuard: cases 7, 1 of the text and 6 of the records"), answer.out());
        assertTrue(answer.out().contains("WornBearing: cases 4, 3 of the text and 1 of the records"), answer.out());
        assertTrue(answer.out().contains("Dirichlet"), answer.out());
        assertTrue(answer.out().contains("Listen: takes 5 min, the median of 8 visits, where the text says 1 min"), answer.out());
        assertFalse(answer.out().contains("Oil: takes"), "one visit says nothing");
        assertEquals(TEXT, Files.readString(procedure));
    }

    @Test
    void should_write_what_it_showed_when_asked_and_count_those_records_no_longer() throws IOException {
        for (int i = 0; i < 6; i++) {
            guard(i);
        }

        CommandResult written = call("tally", folder, "--for", procedure, "--write");

        assertEquals(0, written.status(), written.out() + written.err());
        String text = Files.readString(procedure);
        assertTrue(text.contains("fault LooseGuard \"Guard loose {\" {\n    cases 7 shows"), text);
        assertTrue(text.contains("    takes 5 min\n    rattle"), text);
        assertTrue(text.contains("// a { in a remark"), text);
        CommandResult again = call("tally", folder, "--for", procedure);
        assertEquals(2, again.status());
        assertEquals(6, again.err().lines().filter(line -> line.endsWith("is not counted: it was made from another text of the same revision.")).count(), again.err());
    }

    @Test
    void should_propose_one_part_alone() throws IOException {
        for (int i = 0; i < 6; i++) {
            guard(i);
        }
        assertFalse(call("tally", folder, "--for", procedure, "--only", "cases").out().contains("takes 5 min"));
        assertFalse(call("tally", folder, "--for", procedure, "--only", "takes").out().contains("LooseGuard: cases"));
    }

    @Test
    void should_tell_results_that_nobody_expected() throws IOException {
        record(0, "Oiled", "Listen rattle", "Tighten done", "Again no", "Oil quiet");
        record(1, "NotHeard", "Listen quiet");
        String changed = TEXT.replace("fault WornBearing \"Bearing worn\" { cases 3 shows Listen rattle,", "fault WornBearing \"Bearing worn\" { cases 3 shows Listen quiet,");
        Files.writeString(procedure, changed);
        digest = ContentDigest.of(ProcedureReader.overFiles().read(procedure));
        record(0, "Oiled", "Listen rattle", "Tighten done", "Again no", "Oil quiet");
        record(1, "NotHeard", "Listen quiet");

        CommandResult answer = call("tally", folder, "--for", procedure);

        assertTrue(answer.out().contains("WornBearing showed Listen rattle in 1 record"), answer.out());
        assertTrue(answer.out().contains("Ended without a fault: NotHeard 1"), answer.out());
    }

    @Test
    void should_refuse_each_bad_record_with_a_sentence_and_write_nothing_beside_them() throws IOException {
        for (int i = 0; i < 6; i++) {
            guard(i);
        }
        Files.writeString(folder.resolve("bad.record.json"), "{ not JSON");
        Files.copy(folder.resolve("001.record.json"), folder.resolve("twice.record.json"));

        CommandResult answer = call("tally", folder, "--for", procedure, "--write");

        assertEquals(2, answer.status());
        assertTrue(answer.err().contains("bad.record.json is not counted: it is not JSON, or it is damaged."), answer.err());
        assertTrue(answer.err().contains("twice.record.json is not counted: it is the same record as"), answer.err());
        assertTrue(answer.err().contains("Nothing is written, because 2 records were refused; take them out and write then."), answer.err());
        assertEquals(TEXT, Files.readString(procedure));
    }

    @Test
    @DisabledOnOs(OS.WINDOWS) // which has no pipes among its files
    void should_refuse_what_is_too_large_or_has_no_end_and_count_the_rest() throws Exception {
        guard(1);
        Files.writeString(folder.resolve("large.record.json"), " ".repeat(2_000_001));
        assertEquals(0, new ProcessBuilder("mkfifo", folder.resolve("pipe.record.json").toString()).start().waitFor());

        CommandResult answer = assertTimeoutPreemptively(Duration.ofMinutes(2), () -> call("tally", folder, "--for", procedure));

        assertEquals(2, answer.status());
        assertTrue(answer.out().startsWith("1 record."), answer.out());
        assertTrue(answer.err().contains("large.record.json is not counted: it is too large to be a record of a walk."), answer.err());
        assertTrue(answer.err().contains("pipe.record.json is not counted: it is no file with an end."), answer.err());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "\"schemaVersion\":\"1.0\",      |",
        "\"schemaVersion\":\"1.0\"       | \"schemaVersion\":\"2.0\"",
        "\"begun\":\"2026-03-01T08:00:00Z\" | \"begun\":\"yesterday\"",
        "\"ended\":\"2026-03-01T08:00:00Z\" | \"ended\":8",
        "\"seconds\":300                  | \"seconds\":-300",
        "\"outcome\":\"rattle\"           | \"outcome\":\"quiet\"",
        "\"conclusion\":\"Mended\"        | \"conclusion\":\"Oiled\"" })
    void should_refuse_what_the_schema_of_records_refuses_and_what_is_no_walk(String sound, String damaged) throws IOException {
        guard(1);
        Path record = folder.resolve("001.record.json");
        String text = Files.readString(record);
        assertTrue(text.contains(sound));
        Files.writeString(record, text.replace(sound, damaged == null ? "" : damaged));

        CommandResult answer = call("tally", folder, "--for", procedure);

        assertEquals(2, answer.status(), answer.out());
        assertTrue(answer.err().contains("001.record.json is not counted: it does not fit the steps of its procedure: it was changed or damaged."), answer.err());
    }

    @Test
    void should_not_take_a_brace_in_a_remark_for_that_of_the_fault_nor_a_time_below_the_wait() throws IOException {
        String remarked = TEXT.replace("fault LooseGuard \"Guard loose {\" {", "fault LooseGuard \"Guard loose {\" // see {sheet 3}\n/* or { */ {")
                .replace("{ takes 2 min then", "{ wait 260 s takes 10 min then").replace("takes 1 min\n", "takes 5 min\n").replace("takes 1 min yes", "takes 5 min yes");
        Files.writeString(procedure, remarked);
        digest = ContentDigest.of(ProcedureReader.overFiles().read(procedure));
        for (int i = 0; i < 6; i++) {
            guard(i);
            Path record = folder.resolve(String.format("%03d.record.json", i));
            Files.writeString(record, Files.readString(record).replace("\"outcome\":\"done\",\"ended\":\"2026-03-01T08:00:00Z\",\"seconds\":300",
                    "\"outcome\":\"done\",\"ended\":\"2026-03-01T08:00:00Z\",\"seconds\":265"));
        }

        CommandResult answer = call("tally", folder, "--for", procedure, "--write");

        assertEquals(0, answer.status(), answer.out() + answer.err());
        String text = Files.readString(procedure);
        assertTrue(text.contains("// see {sheet 3}\n/* or { */ {\n    cases 7 shows"), text);
        assertTrue(text.contains("wait 260 s takes 5 min then"), text);
    }

    @Test
    void should_say_what_is_wrong_with_the_call() throws IOException {
        assertEquals(2, call("tally", folder, "--for", procedure).status());
        assertTrue(call("tally", folder, "--for", procedure).err().contains("There is no file ending in .record.json there"));
        assertEquals(2, call("tally", folder.resolve("none.record.json"), "--for", procedure).status());
        assertEquals(2, call("tally", folder).status());
        Path library = Files.writeString(folder.resolve("L.procedure"), "library L \"Nothing\"");
        assertTrue(call("tally", folder, "--for", library).err().contains("is a library; name a procedure."));
    }

    @ParameterizedTest
    @CsvSource({"Nowhere.procedure, ''", "'', nowhere.record.json"})
    void should_say_what_to_do_about_a_file_that_is_not_there(String noProcedure, String noRecord) throws IOException {
        guard(1);
        Path text = noProcedure.isEmpty() ? procedure : folder.resolve(noProcedure);
        Path records = noRecord.isEmpty() ? folder : folder.resolve(noRecord);

        CommandResult answer = call("tally", records, "--for", text);

        Path missing = noProcedure.isEmpty() ? records : text;
        assertEquals(2, answer.status());
        assertEquals("faultwright: There is no readable file " + missing + "; check the spelling and where you are.\n", answer.err());
    }
}
