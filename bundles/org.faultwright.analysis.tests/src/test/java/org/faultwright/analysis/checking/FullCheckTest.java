/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Texts;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A full check takes in the libraries, and loses nothing that any rule says. */
class FullCheckTest {
    private static final Optional<LocalDate> TODAY = Optional.of(LocalDate.of(2026, 6, 1));

    static List<Path> procedures() throws IOException {
        try (Stream<Path> flawed = Files.walk(Path.of("src", "test", "resources", "flawed"));
                Stream<Path> demo = Files.walk(Path.of("..", "..", "procedures-demo"))) {
            return Stream.concat(flawed, demo).filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
    }

    /** What a rule reports in the text of a library would be lost otherwise: it is told of the library, whoever uses it. */
    @ParameterizedTest
    @MethodSource("procedures")
    void should_tell_every_finding_of_a_procedure_in_its_own_text_or_in_that_of_a_library(Path file) throws IOException {
        if (ProcedureReader.overFiles().read(file) instanceof Procedure procedure) {
            CheckedProcedure checked = new FullCheck(TODAY).check(procedure);
            for (Finding finding : new Checker(RuleSet.all(), TODAY).check(procedure)) {
                assertTrue(checked.findings().contains(finding) || checked.inLibraries().stream().anyMatch(one ->
                        one.rule().equals(finding.rule()) && one.at().equals(finding.at())), finding.toString());
            }
        }
    }

    @Test
    void should_find_what_is_wrong_in_a_library_of_a_library_once() {
        String wrong = "library Deep \"Deep\" note Shock danger { covers shock hazard \"Live\" }";
        Procedure procedure = (Procedure) Texts.document("procedure P uses House, Deep conclude End \"E\" { finds nothing }",
                Map.of("House", "library House \"House\" uses Deep", "Deep", wrong));
        List<Finding> found = new FullCheck(Optional.empty()).check(procedure).inLibraries();

        assertEquals(1, found.stream().filter(finding -> finding.rule().equals("incomplete-note")).count(), found.toString());
        assertEquals(0, found.stream().filter(finding -> finding.rule().equals("unknown-name")).count(), found.toString());
    }

    @Test
    void should_end_where_libraries_use_each_other() {
        Procedure procedure = (Procedure) Texts.document("procedure P uses One conclude End \"E\" { finds nothing }",
                Map.of("One", "library One \"One\" uses Other", "Other", "library Other \"Other\" uses One"));

        assertEquals(procedure, new FullCheck(Optional.empty()).check(procedure).procedure());
    }
}
