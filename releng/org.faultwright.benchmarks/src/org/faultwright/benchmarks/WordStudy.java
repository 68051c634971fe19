/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Counts the words of the procedures in a folder by kind of clause, beside those of an earlier state of it. A word is what stands between blanks and
 * has a letter or digit; remarks are none. A line belongs to the clause that its first word begins, so that both states are laid out by
 * {@code faultwright format}.
 */
public final class WordStudy {
    private static final Pattern REMARK = Pattern.compile("(\"(?:\\\\.|[^\"\\\\\\n])*\")|//[^\\n]*|/\\*(?s:.*?)\\*/");
    private static final Set<String> STEPS = Set.of("check", "observe", "measure", "do", "act", "calculate", "decide", "perform", "conclude");
    private static final Set<String> WHOLE = Set.of("condition", "instrument", "point", "part", "indicator", "note");
    private static final Set<String> CLAUSES = Set.of("needs", "unit", "with", "takes", "source", "notes", "warns", "expects", "tools", "sets", "leaves", "hint",
            "uncertainty", "allowing", "hazards", "handles", "verifies", "confirms", "live", "exits", "begin", "erases", "wipes", "repairs", "value", "compute",
            "finds", "refers", "report", "shows", "cases", "weight", "remedy", "ends", "within", "but");

    private WordStudy() {
    }

    /** The folder of today and, where there is one, that of before. */
    public static void main(String[] arguments) throws IOException {
        Map<String, Integer> now = count(Path.of(arguments[0]));
        Map<String, Integer> before = arguments.length > 1 ? count(Path.of(arguments[1])) : Map.of();
        Set<String> clauses = new TreeSet<>(now.keySet());
        clauses.addAll(before.keySet());
        System.out.printf("%-32s %7s %7s%n", "words of the procedures", "before", "now");
        clauses.stream().sorted((a, b) -> now.getOrDefault(b, 0) - now.getOrDefault(a, 0)).forEach(clause ->
                System.out.printf("%-32s %7d %7d%n", clause, before.getOrDefault(clause, 0), now.getOrDefault(clause, 0)));
        int sum = now.values().stream().mapToInt(Integer::intValue).sum();
        int was = before.values().stream().mapToInt(Integer::intValue).sum();
        System.out.printf("%-32s %7d %7d%s%n", "together", was, sum, was > 0 ? String.format(Locale.ROOT, "  %.1f %%", 100.0 * sum / was) : "");
    }

    private static Map<String, Integer> count(Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.filter(file -> file.toString().endsWith(".procedure")).sorted().toList();
        }
        Map<String, Integer> counts = new TreeMap<>();
        for (Path file : files) {
            count(REMARK.matcher(Files.readString(file)).replaceAll(match -> match.group(1) == null ? " " : Matcher.quoteReplacement(match.group(1))), counts);
        }
        return counts;
    }

    private static void count(String text, Map<String, Integer> counts) {
        String block = "";
        String clause = "";
        for (String line : text.split("\n")) {
            String first = line.strip().split("\\s+")[0];
            if (first.isEmpty() || first.equals("}")) {
                continue;
            }
            boolean heads = !Character.isWhitespace(line.charAt(0));
            block = heads ? first : block;
            clause = clause(block, first, line, heads, clause);
            counts.merge(clause, (int) Stream.of(line.strip().split("\\s+")).filter(word -> word.chars().anyMatch(Character::isLetterOrDigit)).count(), Integer::sum);
        }
    }

    private static String clause(String block, String first, String line, boolean heads, String before) {
        if (WHOLE.contains(block)) {
            return block;
        }
        if (block.equals("example") || block.equals("fault") || block.equals("conclude")) {
            return block + ": " + (heads ? "name and title" : CLAUSES.contains(first) ? first : block.equals("example") ? "shows" : "further lines");
        }
        if (line.contains("->")) {
            return "step: arrows";
        }
        boolean step = STEPS.contains(first);
        boolean inside = STEPS.contains(block) || block.equals("routine");
        return step ? "step: name and title" : !inside ? "head" : heads ? "routine" : "step: " + (CLAUSES.contains(first) ? first : "what is read and set");
    }
}
