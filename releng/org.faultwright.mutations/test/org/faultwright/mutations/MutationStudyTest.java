/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The study itself: that it changes what it says, applies every kind, and counts what a defect known by heart does. */
class MutationStudyTest {
    private static final Path DEMO = Path.of("../../procedures-demo");

    private static List<Specimen> specimens;

    @BeforeAll
    static void readDemo() throws IOException {
        specimens = MutationStudy.specimens(DEMO);
    }

    @Test
    void should_know_at_least_forty_kinds_of_defect_each_with_a_place_in_the_demo() {
        List<Kind> defects = MutationStudy.kinds().stream().filter(kind -> !kind.isHarmless()).toList();

        assertTrue(defects.size() >= 40);
        assertTrue(MutationStudy.kinds().stream().filter(Kind::isHarmless).count() >= 20, "changes that do no harm");
        assertTrue(defects.stream().filter(Kind::isDangerous).count() >= 20, "dangerous ones");
        assertEquals(List.of(), MutationStudy.kinds().stream()
                .filter(kind -> specimens.stream().allMatch(specimen -> kind.seeds().apply(specimen).findAny().isEmpty()))
                .map(Kind::title).toList());
    }

    @Test
    void should_name_every_kind_once_and_expect_only_rules_that_exist() {
        List<Kind> kinds = MutationStudy.kinds();
        Set<String> rules = RuleSet.all().stream().map(rule -> rule.header().id()).collect(Collectors.toSet());

        assertEquals(kinds.size(), kinds.stream().map(Kind::title).distinct().count());
        assertEquals(List.of(), kinds.stream().flatMap(kind -> Stream.concat(kind.found().stream(), kind.besides().stream()))
                .filter(rule -> !rules.contains(rule)).distinct().sorted().toList());
    }

    @Test
    void should_change_the_text_of_every_seed_there_and_nowhere_else() {
        for (Kind kind : MutationStudy.kinds()) {
            specimens.forEach(specimen -> kind.seeds().apply(specimen).forEach(seed -> seed.texts().forEach((file, text) -> {
                String before = seed.edits().stream().map(edit -> edit.at().source()).filter(source -> source.name().equals(file))
                        .findFirst().orElseThrow().content();
                assertFalse(text.equals(before), kind.title());
                int changed = seed.edits().stream().filter(edit -> edit.at().source().name().equals(file))
                        .mapToInt(edit -> edit.replacement().length() - edit.at().length()).sum();
                assertEquals(before.length() + changed, text.length(), kind.title());
            })));
        }
    }

    @Test
    void should_count_a_defect_known_by_heart() {
        Specimen labels = specimens.stream().filter(specimen -> specimen.name().equals("OllenbyFaintLabels")).findFirst().orElseThrow();
        Step open = labels.procedure().steps().stream().filter(step -> step.name().text().equals("OpenLid")).findFirst().orElseThrow();
        Kind notOpened = Kind.of("not opened", Set.of("need-not-established"), specimen -> StateDefects.leftOut(open, specimen).stream());
        Kind notLookedFor = Kind.of("not opened", Set.of("unknown-unit"), notOpened.seeds());

        List<MutationStudy.Result> found = new MutationStudy(List.of(labels), 1).results(notOpened);
        List<MutationStudy.Result> missed = new MutationStudy(List.of(labels), 1).results(notLookedFor);

        assertEquals(List.of(true, true), List.of(found.get(0).found(), found.get(0).there()));
        assertFalse(missed.get(0).found());
        assertTrue(missed.get(0).unexpected().stream().anyMatch(finding -> finding.rule().equals("need-not-established")), "counts as a false alarm");
    }

    /** A need that every path brings anyway guards later changes alone: leaving it out is counted apart, with the reason. */
    @Test
    void should_count_apart_what_changes_nothing() {
        Specimen labels = specimens.stream().filter(specimen -> specimen.name().equals("OllenbyFaintLabels")).findFirst().orElseThrow();
        Kind needs = MutationStudy.kinds().stream().filter(kind -> kind.title().equals("a need left out")).findFirst().orElseThrow();

        MutationStudy.Result result = new MutationStudy(List.of(labels), 1).results(needs).get(0);

        assertTrue(result.seed().equal().orElseThrow().matches("every path brings \\w+ \\w+ anyway"));
        assertEquals(List.of(false, false, false), List.of(result.isCounted(), result.isMissed(), result.found()));
    }

    @Test
    void should_find_nothing_new_where_nothing_was_changed() {
        for (Specimen specimen : specimens) {
            Step first = specimen.procedure().steps().get(0);

            List<Finding> found = specimen.newFindings(Seed.in(first, SpecimenEdits.insertBefore(first.at(), " "))).stream()
                    .filter(finding -> !finding.rule().equals("changed-after-release")).toList();

            assertEquals(List.of(), found, specimen.name());
        }
    }
}
