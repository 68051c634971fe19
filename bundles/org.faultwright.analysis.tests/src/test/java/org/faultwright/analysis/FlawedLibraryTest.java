/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The flawed procedures under {@code src/test/resources/flawed}: a comment {@code // expect rule-id, rule-id}
 * names the rules that must find something in the next line; anything unmarked that is found fails too.
 */
class FlawedLibraryTest {
    private static final Path FLAWED = Path.of("src", "test", "resources", "flawed");
    private static final String MARK = "// expect ";
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);

    static Stream<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(FLAWED)) {
            return all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList().stream();
        }
    }

    @ParameterizedTest
    @MethodSource("files")
    void should_find_what_is_marked_and_nothing_else(Path file) throws IOException {
        Set<String> expected = marks(file);

        Set<String> found = findings(file).stream()
                .map(finding -> place(finding.at().line(), finding.rule())).collect(Collectors.toCollection(TreeSet::new));

        assertEquals(String.join("\n", expected), String.join("\n", found));
    }

    @Test
    void should_make_every_rule_find_something() throws IOException {
        Set<String> all = RuleSet.all().stream().map(rule -> rule.header().id()).collect(Collectors.toCollection(TreeSet::new));

        Set<String> marked = new TreeSet<>();
        for (Path file : files().toList()) {
            marks(file).forEach(mark -> marked.add(mark.substring(mark.lastIndexOf(' ') + 1)));
        }

        assertEquals(String.join("\n", all), String.join("\n", marked));
    }

    private static List<Finding> findings(Path file) throws IOException {
        return new Checker(RuleSet.all(), Optional.of(TODAY)).check(ProcedureReader.overFiles().read(file));
    }

    private static Set<String> marks(Path file) throws IOException {
        Set<String> marks = new TreeSet<>();
        List<String> pending = new ArrayList<>();
        List<String> lines = Files.readAllLines(file);
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            if (line.startsWith(MARK)) {
                pending.addAll(List.of(line.substring(MARK.length()).split(",\\s*")));
            } else {
                int number = i + 1;
                pending.forEach(rule -> marks.add(place(number, rule)));
                pending.clear();
            }
        }
        return marks;
    }

    private static String place(int line, String rule) {
        return String.format("line %3d: %s", line, rule);
    }
}
