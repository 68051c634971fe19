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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Rule;
import org.faultwright.language.FileLibraryFinder;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;
import org.junit.jupiter.api.Test;

/**
 * Texts are changed at random, in one place and in several, taken back, and so are their libraries; what is found by the rules that run at every
 * key is the same as in a check from nothing.
 */
class ChangingCheckTest {
    private static final Optional<LocalDate> TODAY = Optional.of(LocalDate.of(2026, 6, 1));
    private static final Checker CHECKER = new Checker(RuleSet.quick(), TODAY);
    private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_]*");
    private static final Pattern NUMBER = Pattern.compile("[0-9]+(\\.[0-9]+)?");
    private static final Pattern QUOTED = Pattern.compile("\"[^\"\n]*\"");

    /** How often each text is changed. */
    private static final int EDITS = Integer.getInteger("faultwright.changing.edits", 6);
    private static final long SEED = Long.getLong("faultwright.changing.seed", 1);

    /** One text that is being written, with the libraries it may use. */
    private static final class Writing {
        private final Map<String, String> libraries = new HashMap<>();
        private final ProcedureReader reader = new ProcedureReader((name, from) -> Optional.ofNullable(libraries.get(name))
                .map(text -> new SourceText(name + ".procedure", text)).or(() -> new FileLibraryFinder().find(name, from)));
        private final ProcedureReader.Changing changing = reader.changing();
        private final ChangingCheck check = CHECKER.changing();
        private final String file;
        private int compared;

        Writing(String file) {
            this.file = file;
        }

        void compare(String text, String what) {
            SourceText source = new SourceText(file, text);
            Document changed = changing.read(source);
            Document fromNothing = reader.read(source);
            assertEquals(fromNothing.toString(), changed.toString(), () -> what + "\n" + text);
            Assessment expected = CHECKER.assess(CHECKER.subject(fromNothing));
            Assessment found = check.assess(CHECKER.subject(changed));
            if (!expected.equals(found)) {
                assertEquals(lines(expected.findings()), lines(found.findings()), () -> what + "\n" + text);
                assertEquals(lines(expected.waiting()), lines(found.waiting()), () -> what + ", waiting\n" + text);
                assertEquals(expected, found, () -> what + "\n" + text);
            }
            compared++;
        }

        private static String lines(List<Finding> findings) {
            return String.join("\n", findings.stream().map(Finding::toString).toList());
        }
    }

    private static int write(Writing writing, String text, int edits, Random random) {
        List<String> states = new ArrayList<>(List.of(text));
        writing.compare(text, "as it stands");
        for (int i = 0; i < edits; i++) {
            String now = states.get(states.size() - 1);
            int kind = random.nextInt(14);
            String next = kind == 0 ? states.get(random.nextInt(states.size())) : kind == 1 ? text : changed(now, kind, random);
            writing.compare(next, "change " + i + " of kind " + kind);
            states.add(next);
        }
        return writing.compared;
    }

    private static String changed(String text, int kind, Random random) {
        int at = text.isEmpty() ? 0 : random.nextInt(text.length());
        return switch (kind) {
            case 2 -> text.substring(0, at) + "ab {}\"\n->,".charAt(random.nextInt(10)) + text.substring(at);
            case 3 -> text.isEmpty() ? text : text.substring(0, at) + text.substring(at + 1);
            case 4 -> lines(text, random, (lines, one, other) -> lines.remove(one));
            case 5 -> lines(text, random, (lines, one, other) -> lines.add(other, lines.get(one)));
            case 6 -> lines(text, random, (lines, one, other) -> lines.add(other, random.nextBoolean() ? "" : "// a remark"));
            case 7 -> replaced(text, WORD, random, (word, all) -> all.get(random.nextInt(all.size())));
            case 8 -> replaced(text, NUMBER, random, (number, all) -> String.valueOf(random.nextInt(300)));
            case 9 -> replaced(text, QUOTED, random, (quoted, all) -> random.nextBoolean() ? "\"\"" : "\"Other words\"");
            case 10 -> renamed(text, random);
            case 11 -> changed(changed(changed(text, 7, random), 8, random), 9, random);
            case 12 -> block(text, random);
            default -> replaced(text, WORD, random, (word, all) -> word + "x");
        };
    }

    private interface LineChange {
        void to(List<String> lines, int one, int other);
    }

    private static String lines(String text, Random random, LineChange change) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        change.to(lines, random.nextInt(lines.size()), random.nextInt(lines.size()));
        return String.join("\n", lines);
    }

    private interface WordChange {
        String of(String word, List<String> all);
    }

    private static String replaced(String text, Pattern pattern, Random random, WordChange change) {
        List<MatchResult> found = pattern.matcher(text).results().toList();
        if (found.isEmpty()) {
            return text;
        }
        MatchResult one = found.get(random.nextInt(found.size()));
        return text.substring(0, one.start()) + change.of(one.group(), found.stream().map(MatchResult::group).toList()) + text.substring(one.end());
    }

    private static String renamed(String text, Random random) {
        List<String> names = WORD.matcher(text).results().map(MatchResult::group).filter(word -> Character.isUpperCase(word.charAt(0))).toList();
        return names.isEmpty() ? text : text.replaceAll("\\b" + names.get(random.nextInt(names.size())) + "\\b", "Renamed" + random.nextInt(9));
    }

    /** A block is left out, said twice, or put at the end. */
    private static String block(String text, Random random) {
        List<String> blocks = new ArrayList<>(List.of(text.split("(?<=\n\\}\n)")));
        String one = blocks.remove(random.nextInt(blocks.size()));
        int where = random.nextInt(blocks.size() + 1);
        switch (random.nextInt(3)) {
            case 0 -> {
                blocks.add(where, one);
                blocks.add(one);
            }
            case 1 -> blocks.add(where, one);
            default -> {
            }
        }
        return String.join("", blocks);
    }

    @Test
    void should_find_in_the_examples_of_every_rule_what_a_check_from_nothing_finds() {
        int compared = 0;
        for (Rule rule : RuleSet.all()) {
            RulePage page = RulePages.page(rule.header().id()).orElseThrow();
            for (String text : List.of(page.bad(), page.good())) {
                compared += write(new Writing("HarbourBench.procedure"), text, EDITS, new Random(SEED + rule.header().id().hashCode()));
            }
        }
        assertTrue(compared > 100 * EDITS, "only " + compared + " texts were compared");
    }

    @Test
    void should_find_in_the_demo_and_in_flawed_procedures_what_a_check_from_nothing_finds() throws IOException {
        for (Path folder : List.of(Path.of("../../procedures-demo"), Path.of("src/test/resources/flawed"))) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).sorted().toList()) {
                    write(new Writing(file.toString()), Files.readString(file), EDITS, new Random(SEED + file.getFileName().toString().hashCode()));
                }
            }
        }
    }

    /** Of so many limits and arrows of the demo one is changed; 1 changes all of them. */
    private static final int EVERY = Integer.getInteger("faultwright.changing.every", 37);
    private static final Pattern OF_A_LIMIT = Pattern.compile("(?<=\\b(?:expects|within|under|over|at least|at most|<|>) |\\+/- |\\.\\. )[0-9]+(\\.[0-9]+)?");
    private static final Pattern OF_AN_ARROW = Pattern.compile("(?<=-> )[\\p{L}_][\\p{L}\\p{N}_]*");

    /** Rules that do not look at limits, or at arrows, are not asked there: whatever they said has to hold. */
    @Test
    void should_find_the_same_after_each_change_of_a_limit_or_an_arrow() throws IOException {
        int compared = 0;
        for (Rule rule : RuleSet.all()) {
            RulePage page = RulePages.page(rule.header().id()).orElseThrow();
            for (String text : List.of(page.bad(), page.good())) {
                compared += limitsAndArrows(new Writing("HarbourBench.procedure"), text, 1);
            }
        }
        for (Path folder : List.of(Path.of("../../procedures-demo"), Path.of("src/test/resources/flawed"))) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.filter(one -> one.toString().endsWith(".procedure")).sorted().toList()) {
                    compared += limitsAndArrows(new Writing(file.toString()), Files.readString(file), EVERY);
                }
            }
        }
        assertTrue(compared > 500, "only " + compared + " texts were compared");
    }

    private static int limitsAndArrows(Writing writing, String text, int every) {
        writing.compare(text, "as it stands");
        List<String> targets = OF_AN_ARROW.matcher(text).results().map(MatchResult::group).distinct().toList();
        int count = 0;
        for (MatchResult limit : OF_A_LIMIT.matcher(text).results().toList()) {
            for (String other : count++ % every == 0 ? List.of("0.001", "4", "230", "90000") : List.<String>of()) {
                writing.compare(text.substring(0, limit.start()) + other + text.substring(limit.end()), "the limit " + limit.group() + " is " + other);
            }
        }
        for (MatchResult arrow : OF_AN_ARROW.matcher(text).results().toList()) {
            String other = targets.get(count % targets.size());
            String word = arrow.group();
            // from one name that nothing has to the next, by way of names that stand elsewhere too
            for (String now : count++ % every == 0 ? List.of(other, other + "x", "x" + word, "xy" + word, word + "z", "A", "If", word, "if", "xx", "xx -> xx")
                    : List.<String>of()) {
                writing.compare(text.substring(0, arrow.start()) + now + text.substring(arrow.end()), "the arrow to " + arrow.group() + " leads to " + now);
            }
        }
        return writing.compared;
    }

    /** What two arrows lead to is one thing, even where nothing has that name. */
    @Test
    void should_tell_two_arrows_to_one_unknown_name_from_arrows_to_two() {
        Writing writing = new Writing("Test.procedure");
        String text = """
                procedure A "A"
                fault Wear "Wear" { shows L no, M no remedied by "a new belt" }
                look L "Is it lit?" { yes -> M no -> M }
                look M "Does it turn?" { yes -> C no -> Worn }
                conclude C "C" { finds nothing }
                conclude Worn "Worn" { finds Wear }
                """;
        String arrows = "yes -> M no -> M";
        List<String> typed = List.of(arrows, "yes -> P no -> M", "yes -> Pu no -> M", "yes -> Pu no -> P", "yes -> Pu no -> Pu", "yes -> Pul no -> Pu",
                "yes -> Pul no -> Pul", "yes -> Pull no -> C", "yes -> Pulle no -> C", "yes -> Wea no -> C", "yes -> Wear no -> C", "yes -> Wor no -> C",
                "yes -> Worn no -> C", "yes -> Worns no -> C", "yes -> L no -> C", "yes -> A no -> C", "yes -> Lx at most 2 times, else -> Lx no -> C",
                "yes -> Lx at most 2 times, else -> Ly no -> C", "yes -> Lz at most 2 times, else -> Ly no -> C", arrows);
        typed.forEach(now -> writing.compare(text.replace(arrows, now), now));
        assertEquals(typed.size(), writing.compared);
    }

    @Test
    void should_look_at_everything_again_when_a_library_has_changed() {
        Writing writing = new Writing("Test.procedure");
        String text = """
                procedure A "A" uses Bench
                measure M "M" {
                    dc voltage at P using Meter
                    expects 5 V +/- 5 %
                    within -> C
                    outside -> C
                }
                conclude C "C" { finds nothing }
                """;
        for (String point : List.of("point P \"P\"", "point P \"P\" carries up to 400 V dc", "point Q \"Q\"", "")) {
            writing.libraries.put("Bench", """
                    library Bench "Bench"
                    instrument Meter "Meter" rated 60 V { dc voltage up to 6 V resolution 1 mV accuracy 0.5 % of reading + 2 digits }
                    """ + point);
            writing.compare(text, point);
            writing.compare(text.replace("\"M\"", "\"Measure it\""), point);
        }
        assertEquals(8, writing.compared);
    }
}
