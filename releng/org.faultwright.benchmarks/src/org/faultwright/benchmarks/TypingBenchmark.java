/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.language.server.EditingServices;

/**
 * Types every line of the demo key by key into the rest of its text, and counts the findings that the whole text does not have:
 * {@code [FOLDER [EVERY]]}, where of so many lines (23 when not said, 1 for all) only one is typed. Prints mean, 99th percentile and most, in all and outside the
 * block that is typed in.
 */
public final class TypingBenchmark {
    /** A released text from which a line is missing is another text than was released: no noise, however long it stands there. */
    private static final String RELEASED = "changed-after-release";

    private TypingBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments.length > 0 ? arguments[0] : "procedures-demo");
        int every = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 23;
        List<Integer> all = new ArrayList<>();
        List<Integer> outside = new ArrayList<>();
        List<Integer> other = new ArrayList<>();
        Map<String, Integer> rules = new HashMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".procedure")).sorted().toList()) {
                type(file, every, all, outside, other, rules);
            }
        }
        print("extra findings while typing", all);
        print("of them outside the block typed in", outside);
        print("of those, but for " + RELEASED, other);
        if (!rules.isEmpty()) {
            rules.entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()).limit(8)
                    .forEach(rule -> System.out.println(rule.getValue() + " " + rule.getKey()));
        }
    }

    private static void type(Path file, int every, List<Integer> all, List<Integer> outside, List<Integer> other,
            Map<String, Integer> rules) throws IOException {
        String text = Files.readString(file);
        EditingServices services = new EditingServices();
        List<String> known = services.update(file.toString(), text).findings().stream().map(TypingBenchmark::key).toList();
        int start = 0;
        for (int line = 0; start < text.length(); line++) {
            int end = text.indexOf('\n', start) < 0 ? text.length() : text.indexOf('\n', start);
            int first = start;
            while (first < end && text.charAt(first) == ' ') {
                first++;
            }
            if (line % every == 0 && end > first) {
                services.update(file.toString(), text.substring(0, first) + text.substring(end));
                for (int typed = first + 1; typed < end; typed++) {
                    String half = text.substring(0, typed) + text.substring(end);
                    List<Finding> extra = extra(services.update(file.toString(), half).findings(), known);
                    int[] block = block(text, start);
                    int added = typed - end;
                    List<Finding> far = extra.stream().filter(finding -> finding.at().offset() < block[0]
                            || finding.at().offset() > block[1] + added).toList();
                    all.add(extra.size());
                    outside.add(far.size());
                    other.add((int) far.stream().filter(finding -> !finding.rule().equals(RELEASED)).count());
                    extra.forEach(finding -> rules.merge((far.contains(finding) ? "outside " : "inside ") + finding.rule(), 1, Integer::sum));
                }
            }
            start = end + 1;
        }
    }

    private static String key(Finding finding) {
        return finding.rule() + finding.message();
    }

    private static List<Finding> extra(List<Finding> found, List<String> known) {
        List<String> left = new ArrayList<>(known);
        return found.stream().filter(finding -> !left.remove(key(finding))).toList();
    }

    /** From the last line at the edge of the page that closes nothing to before the next. */
    private static int[] block(String text, int lineStart) {
        int from = lineStart;
        while (from > 0 && !begins(text, from)) {
            from = text.lastIndexOf('\n', from - 2) + 1;
        }
        int to = text.indexOf('\n', lineStart) + 1;
        while (to > 0 && to < text.length() && !begins(text, to)) {
            to = text.indexOf('\n', to) + 1;
        }
        return new int[] {from, to <= 0 ? text.length() : to};
    }

    private static boolean begins(String text, int lineStart) {
        return lineStart < text.length() && Character.isLetter(text.charAt(lineStart));
    }

    private static void print(String what, List<Integer> counts) {
        int[] sorted = counts.stream().mapToInt(Integer::intValue).sorted().toArray();
        System.out.printf(Locale.ROOT, "%s: mean %.2f, 99th percentile %d, most %d (%d keys)%n", what,
                Arrays.stream(sorted).average().orElse(0), sorted[sorted.length * 99 / 100], sorted[sorted.length - 1], sorted.length);
    }
}
