/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.junit.jupiter.api.Test;

/**
 * The help page that walks through the flawed bench tells what the rules say of it today. Its paragraphs are
 * written by hand; what follows each is written by this test with {@code -Dfaultwright.renew=true}.
 */
class FlawedBenchPageTest {
    private static final Path FLAWED = Path.of("src", "test", "resources", "flawed");
    private static final Path PAGE = Path.of("..", "org.faultwright.workbench", "help", "flawed-bench.md");
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 1);
    /** Every file has it, since hardly any has examples; the page tells it once. */
    private static final String EVERYWHERE = "outcome-untried";
    private static final String TOLD_IN = "Examples.procedure";
    private static final int LONGEST_WAY = 12;
    private static final Pattern GENERATED = Pattern.compile(" *- .*");

    @Test
    void should_tell_what_the_rules_say_of_each_file() throws IOException {
        List<String> sections = new ArrayList<>(List.of(Files.readString(PAGE).replace("\r\n", "\n").split("(?m)^(?=## )")));
        Map<String, String> hand = new LinkedHashMap<>();
        sections.stream().skip(1).forEach(section -> hand.put(section.lines().findFirst().orElseThrow().substring(3), section));
        assertEquals(files(), new TreeSet<>(hand.keySet()), "a section for each file, and none without one");

        StringBuilder page = new StringBuilder(sections.get(0));
        for (Map.Entry<String, String> section : hand.entrySet()) {
            page.append(section.getValue().lines().filter(line -> !GENERATED.matcher(line).matches())
                    .collect(Collectors.joining("\n")).strip()).append("\n\n").append(told(section.getKey())).append('\n');
        }
        String now = page.toString().strip() + "\n";
        if (Boolean.getBoolean("faultwright.renew")) {
            Files.writeString(PAGE, now);
        }
        assertEquals(now, Files.readString(PAGE).replace("\r\n", "\n"));
    }

    @Test
    void should_name_every_rule_and_no_other() throws IOException {
        Set<String> named = Pattern.compile("(?m)^- `([a-z0-9-]+)`, ").matcher(Files.readString(PAGE)).results()
                .map(found -> found.group(1)).collect(Collectors.toCollection(TreeSet::new));

        assertEquals(RuleSet.all().stream().map(rule -> rule.header().id()).collect(Collectors.toCollection(TreeSet::new)),
                named);
    }

    @Test
    void should_have_a_paragraph_by_hand_in_every_section() throws IOException {
        for (String section : Files.readString(PAGE).split("(?m)^## ")) {
            assertTrue(section.lines().skip(1).filter(line -> !GENERATED.matcher(line).matches())
                    .anyMatch(line -> line.length() > 40), section);
        }
    }

    private static Set<String> files() throws IOException {
        try (var all = Files.walk(FLAWED)) {
            Set<String> found = new TreeSet<>();
            for (Path file : all.filter(file -> file.toString().endsWith(".procedure")).toList()) {
                if (!findings(file).isEmpty()) {
                    found.add(FLAWED.relativize(file).toString().replace('\\', '/'));
                }
            }
            return found;
        }
    }

    private static List<Finding> findings(Path file) throws IOException {
        return new Checker(RuleSet.all(), Optional.of(TODAY)).check(ProcedureReader.overFiles().read(file));
    }

    private static String told(String name) throws IOException {
        Path file = FLAWED.resolve(name);
        List<String> lines = Files.readAllLines(file);
        StringBuilder told = new StringBuilder();
        for (Finding finding : findings(file)) {
            if (finding.rule().equals(EVERYWHERE) && !name.equals(TOLD_IN)) {
                continue;
            }
            int line = finding.at().line();
            told.append("- `").append(finding.rule()).append("`, ").append(finding.severity().name().toLowerCase(Locale.ROOT))
                    .append(", line ").append(line).append(": `").append(lines.get(line - 1).strip()).append("`\n")
                    .append("  - ").append(finding.message()).append('\n');
            if (!finding.path().isEmpty()) {
                told.append("  - Path: ").append(finding.path().stream().limit(LONGEST_WAY)
                        .map(PathStep::toString).collect(Collectors.joining(", ")))
                        .append(finding.path().size() > LONGEST_WAY ? ", \u2026" : "").append('\n');
            }
            told.append("  - To do: ").append(finding.advice()).append('\n');
        }
        return told.toString().stripTrailing() + "\n";
    }
}
