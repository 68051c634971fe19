/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.checking;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Marks;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.Texts;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.ReadingProblem;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Walks the rule set and its pages: none missing, none double, every example true, every fix a cure. */
class RulePagesTest {
    /** What the examples are read as, so that a library of that name stands in its own file. */
    private static final String FILE = "HarbourBench.procedure";
    private static final Optional<LocalDate> TODAY = Optional.of(LocalDate.of(2026, 6, 1));

    private static List<Finding> findings(Rule rule, String text) {
        return new Checker(List.of(rule), TODAY).check(Texts.document(FILE, text));
    }

    @Test
    void should_have_ids_that_are_unique_and_well_formed() {
        Set<String> ids = new HashSet<>();
        for (RuleHeader header : RuleIndex.headers()) {
            assertTrue(ids.add(header.id()), "two rules have the id " + header.id());
            assertTrue(header.id().matches("[a-z0-9]+(-[a-z0-9]+)*"), header.id());
            assertTrue(header.summary().matches("[A-Z].*\\."), "the summary of " + header.id() + " is no sentence");
        }
        assertTrue(ids.size() >= 40, "only " + ids.size() + " rules were found");
    }

    @Test
    void should_have_exactly_one_page_for_each_rule() throws IOException, URISyntaxException {
        Set<String> rules = RuleIndex.headers().stream().map(RuleHeader::id).collect(Collectors.toCollection(TreeSet::new));
        assertEquals(rules, pages());
    }

    private static Set<String> pages() throws IOException, URISyntaxException {
        URI one = RulePages.class.getResource("/org/faultwright/analysis/rules/pages/unknown-name.md").toURI();
        if (one.getScheme().equals("jar")) {
            try (var archive = java.nio.file.FileSystems.newFileSystem(one, Map.of())) {
                return names(archive.provider().getPath(one).getParent());
            }
        }
        return names(Path.of(one).getParent());
    }

    private static Set<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString().replaceFirst("\\.md$", ""))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void should_have_one_class_for_each_rule() {
        List<String> classes = RuleSet.all().stream().map(rule -> rule.getClass().getName()).toList();
        assertEquals(classes.size(), Set.copyOf(classes).size());
        // the rule that tries its order with all others stands with what runs them
        classes.forEach(name -> assertTrue(name.startsWith("org.faultwright.analysis.rules.") || name.equals(BetterOrder.class.getName()), name));
    }

    @Test
    void should_list_every_rule_under_its_group() {
        List<RuleHeader> grouped = RuleIndex.byGroup().values().stream().flatMap(List::stream).toList();
        assertEquals(Set.copyOf(RuleIndex.headers()), Set.copyOf(grouped));
        assertEquals(RuleIndex.headers().size(), grouped.size());
    }

    @TestFactory
    Stream<DynamicTest> should_say_why_and_what_to_do() {
        return RuleSet.all().stream().map(rule -> DynamicTest.dynamicTest(rule.header().id(), () -> {
            RulePage page = page(rule);
            assertTrue(page.prose().size() >= 2, "the page needs a paragraph on why and one on what to do");
            assertFalse(page.bad().isBlank(), "a bad example");
            assertFalse(page.good().isBlank(), "a good example");
            assertTrue(page.markdown().startsWith("# " + rule.header().id() + "\n"), page.markdown());
        }));
    }

    private static RulePage page(Rule rule) {
        return RulePages.page(rule.header().id()).orElseThrow(() -> new AssertionError("no page"));
    }

    @TestFactory
    Stream<DynamicTest> should_find_in_the_bad_example_what_it_is_marked_with() {
        return RuleSet.all().stream().map(rule -> DynamicTest.dynamicTest(rule.header().id(), () -> {
            String bad = page(rule).bad();
            List<String> marked = Marks.in(bad).sorted();
            assertFalse(marked.isEmpty(), "the bad example marks nothing");
            assertEquals(marked, Marks.of(findings(rule, bad)));
        }));
    }

    @TestFactory
    Stream<DynamicTest> should_find_nothing_in_the_good_example() {
        return RuleSet.all().stream().map(rule -> DynamicTest.dynamicTest(rule.header().id(), () -> {
            String good = page(rule).good();
            assertEquals(List.of(), findings(rule, good).stream().map(Finding::message).toList());
            assertEquals(List.of(), problems(good));
        }));
    }

    @TestFactory
    Stream<DynamicTest> should_be_cured_by_every_fix() {
        List<DynamicTest> tests = new ArrayList<>();
        for (Rule rule : RuleSet.all()) {
            String bad = page(rule).bad();
            for (Finding finding : findings(rule, bad)) {
                finding.fixes().forEach(fix -> tests.add(DynamicTest.dynamicTest(rule.header().id() + ": " + fix.title(),
                        () -> assertCured(rule, bad, finding, fix))));
            }
        }
        assertTrue(tests.size() >= 20, "only " + tests.size() + " fixes were tried");
        return tests.stream();
    }

    private static void assertCured(Rule rule, String bad, Finding finding, Fix fix) {
        String fixed = fix.applied();
        Document document = Texts.document(FILE, fixed);
        List<String> left = new Checker(List.of(rule), TODAY).check(document).stream().map(Finding::message).toList();
        long before = findings(rule, bad).stream().filter(one -> one.message().equals(finding.message())).count();
        assertTrue(left.stream().filter(finding.message()::equals).count() < before, () -> "still found in\n" + fixed);
        assertTrue(document.problems().size() <= problems(bad).size(), () -> document.problems() + " in\n" + fixed);
    }

    private static List<String> problems(String text) {
        return Texts.document(FILE, text).problems().stream().map(ReadingProblem::message).toList();
    }

    @TestFactory
    Stream<DynamicTest> should_write_findings_as_sentences() {
        return RuleSet.all().stream().map(rule -> DynamicTest.dynamicTest(rule.header().id(), () -> {
            for (Finding finding : findings(rule, page(rule).bad())) {
                assertTrue(finding.message().endsWith(".") || rule.header().id().equals("unreadable-text"),
                        finding.message());
                assertTrue(finding.advice().endsWith("."), finding.advice());
                assertEquals(rule.header().id(), finding.rule());
            }
        }));
    }
}
