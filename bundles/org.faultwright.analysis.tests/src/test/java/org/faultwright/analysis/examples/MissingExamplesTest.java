/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Subject;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Examples proposed for whole procedures, the sound and the flawed, can be read and go as they say. */
class MissingExamplesTest {
    static Stream<Path> files() throws IOException {
        List<Path> folders = List.of(Path.of("..", "..", "procedures-demo"), Path.of("src", "test", "resources", "flawed"));
        Stream.Builder<Path> files = Stream.builder();
        for (Path folder : folders) {
            try (Stream<Path> all = Files.list(folder)) {
                all.filter(file -> file.toString().endsWith(".procedure")).sorted().forEach(files);
            }
        }
        return files.build();
    }

    @ParameterizedTest
    @MethodSource("files")
    void should_propose_examples_that_pass_and_try_more(Path file) throws IOException {
        Procedure before = (Procedure) ProcedureReader.overFiles().read(file);
        ExampleCoverage covered = ExampleCoverage.of(before);
        Optional<Fix> fix = MissingExamples.fix(new Subject(before, Optional.empty()), covered);
        if (fix.isEmpty()) {
            return;
        }

        Procedure after = (Procedure) ProcedureReader.overFiles().read(new SourceText(file.toString(), fix.get().applied()));

        ExampleCoverage now = ExampleCoverage.of(after);
        assertEquals(before.problems().size(), after.problems().size(), fix.get().applied());
        List<ExampleRun> fresh = now.runs().subList(covered.runs().size(), now.runs().size());
        assertTrue(!fresh.isEmpty());
        assertEquals(List.of(), fresh.stream().filter(run -> !run.passes()).map(run -> run.example().title().text()).toList());
        assertTrue(now.untried().size() < covered.untried().size() || now.unreached().size() < covered.unreached().size());
        assertEquals(Optional.empty(), MissingExamples.fix(new Subject(after, Optional.empty()), now), "nothing more to propose");
    }
}
