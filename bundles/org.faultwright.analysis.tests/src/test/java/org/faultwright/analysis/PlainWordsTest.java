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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.junit.jupiter.api.Test;

/**
 * How findings are worded: names and the words of the language stand in straight quotation marks, and an outcome is called
 * an outcome. Tried on every message of the flawed bench and of the rule pages.
 */
class PlainWordsTest {
    private static final Path FLAWED = Path.of("src", "test", "resources", "flawed");
    private static final Optional<LocalDate> TODAY = Optional.of(LocalDate.of(2026, 6, 1));
    private static final Pattern QUOTED = Pattern.compile("\"[^\"]*\"");
    private static final Pattern INNER_CAPITAL = Pattern.compile(".*[a-z0-9][A-Z].*");
    /** Sayings that only their writers understand, and second words for one thing. */
    private static final Pattern IDIOM = Pattern.compile("\\bresults?\\b|\\bis come to\\b|\\bhands? (it|the unit) on\\b|\\bpassed on\\b"
            + "|\\bholds? .* against\\b|\\bcarried out\\b|\\bway on\\b|[\u2018\u2019\u201C\u201D]|(^| )'");
    /** Lines of the language that are no English. */
    private static final Pattern UNQUOTED_WORDS = Pattern.compile("\\b(verifies repair|confirms complaint|at most \\d+ times|-> )");

    private record Said(String where, Set<String> names, Finding finding) {
        String outside() {
            return QUOTED.matcher(finding.message() + " " + finding.advice()).replaceAll("\"\"");
        }
    }

    private static List<Said> all() throws IOException {
        List<Said> all = new ArrayList<>();
        try (Stream<Path> files = Files.walk(FLAWED)) {
            for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).sorted().toList()) {
                add(all, file.toString(), ProcedureReader.overFiles().read(file));
            }
        }
        RuleIndex.headers().forEach(header -> RulePages.page(header.id())
                .ifPresent(page -> add(all, header.id(), Texts.document("HarbourBench.procedure", page.bad()))));
        return all;
    }

    private static void add(List<Said> all, String where, Document document) {
        Set<String> names = names(document);
        new Checker(RuleSet.all(), TODAY).check(document).forEach(finding -> all.add(new Said(where, names, finding)));
    }

    private static Set<String> names(Document document) {
        Set<String> names = new TreeSet<>();
        document.graphs().forEach(graph -> graph.steps().stream().map(Step::name).forEach(name -> names.add(name.text())));
        document.own().conditions().forEach(one -> names.add(one.name().text()));
        document.own().points().forEach(one -> names.add(one.name().text()));
        document.own().instruments().forEach(one -> names.add(one.name().text()));
        document.own().indicators().forEach(one -> names.add(one.name().text()));
        if (document instanceof Procedure procedure) {
            procedure.faults().forEach(fault -> names.add(fault.name().text()));
        }
        return names.stream().filter(name -> INNER_CAPITAL.matcher(name).matches()).collect(Collectors.toSet());
    }

    @Test
    void should_put_every_name_in_quotation_marks() throws IOException {
        List<Said> all = all();
        assertTrue(all.size() > 200, all.size() + " findings");

        assertEquals(List.of(), all.stream().filter(said -> said.names().stream()
                .anyMatch(name -> said.outside().matches("(?s).*\\b" + name + "\\b.*"))).map(Said::toString).toList());
        assertTrue(all.stream().anyMatch(said -> !said.names().isEmpty() && said.finding().message().contains("\"")), "some name is said");
    }

    @Test
    void should_put_lines_of_the_language_in_quotation_marks() throws IOException {
        assertEquals(List.of(), all().stream().filter(said -> UNQUOTED_WORDS.matcher(said.outside()).find())
                .map(said -> said.finding().rule() + ": " + said.outside()).distinct().toList());
    }

    @Test
    void should_say_one_word_for_one_thing_and_no_idiom() throws IOException {
        assertEquals(List.of(), all().stream().filter(said -> IDIOM.matcher(said.outside()).find())
                .map(said -> said.finding().rule() + ": " + said.outside()).distinct().toList());
        assertEquals(List.of(), RuleIndex.headers().stream().filter(header -> IDIOM.matcher(header.summary()).find())
                .map(header -> header.id() + ": " + header.summary()).toList());
    }

    @Test
    void should_leave_alone_what_only_looks_like_a_name() {
        QuotedNames names = new QuotedNames(Texts.procedure("""
                procedure P "p"
                condition Supply "s" { off, on } starts off ends off
                condition charge "c" { present, absent } starts present
                point A "a"
                begin at Try
                check Try "t" { yes -> End no -> End }
                check Look2 "l" { yes -> End }
                conclude End "e" { finds nothing }
                """));

        assertEquals("\"Try\" needs \"Supply on\", but a path comes to it with \"Supply off\".",
                names.inMessage("Try needs Supply on, but a path comes to it with Supply off."));
        assertEquals("A path comes to \"End\" with 2 A at \"A\".", names.inMessage("A path comes to End with 2 A at A."));
        assertEquals("Try the unit before \"Look2\", said \"Try\".", names.inAdvice("Try the unit before Look2, said \"Try\"."));
        assertEquals("\"Try/End\" is reached.", names.inMessage("Try/End is reached."));
        assertEquals("A charge is present.", names.inMessage("A charge is present."));
        assertEquals("", names.inMessage(""));
        assertEquals("An odd \" mark before \"End\"", names.inMessage("An odd \" mark before End"));
    }
}
