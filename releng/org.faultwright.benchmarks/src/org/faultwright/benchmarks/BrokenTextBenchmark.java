/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/**
 * Breaks the texts of the demo in one place each, from a fixed seed, so that words of them cannot be read, checks them with every rule, and counts what is found
 * that the whole text does not have: {@code [FOLDER [EACH]]}, where of each kind of break so many (8 when not said) are made in each text. One finding is the
 * right one; prints how many there are besides.
 */
public final class BrokenTextBenchmark {
    private static final long SEED = 1;

    /**
     * A kind of break.
     *
     * @param what  finds the places where it can be made
     * @param words what stands there afterwards
     */
    private record Break(String title, Pattern what, String words) {
        Break(String title, String what, String words) {
            this(title, Pattern.compile(what), words);
        }

        String in(String text, Random random) {
            List<MatchResult> places = what.matcher(text).results().toList();
            if (places.isEmpty()) {
                return text;
            }
            MatchResult place = places.get(random.nextInt(places.size()));
            return text.substring(0, place.start()) + words + text.substring(place.end());
        }
    }

    private static final List<Break> BREAKS = List.of(
            new Break("a keyword without its last letter", "(?m)(?<=^ {0,4}(check|measur|observ|perfor|conclud|faul|need|set|take|repor|find))[a-z](?= )", ""),
            new Break("a brace that opens left out", "\\{(?= *\\n)", ""), new Break("a brace that closes left out", "(?m)^\\}", ""),
            new Break("a quotation mark left out", "\"(?=[ \\n])", ""), new Break("an arrow left out", "->", ""),
            new Break("the name behind an arrow left out", "(?<=-> )\\w+", ""), new Break("a sign too many", "(?<=[\\w}])(?=\\n)", " ;"),
            new Break("a word doubled", "(?<=\\n {4}takes )(?=[0-9])", "takes "));

    private BrokenTextBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments.length > 0 ? arguments[0] : "procedures-demo");
        int each = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 8;
        List<Integer> besides = new ArrayList<>();
        Map<String, Integer> rules = new HashMap<>();
        int silent = 0;
        List<Path> files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(path -> path.toString().endsWith(".procedure")).sorted().toList();
        }
        ProcedureReader reader = ProcedureReader.overFiles();
        Checker every = new Checker();
        for (Path file : files) {
            SourceText whole = ProcedureReader.text(file);
            List<String> known = every.check(reader.read(whole)).stream().map(BrokenTextBenchmark::key).toList();
            for (Break kind : BREAKS) {
                Random random = new Random(SEED + file.getFileName().toString().hashCode() + kind.title().hashCode());
                for (int i = 0; i < each; i++) {
                    Document document = reader.read(new SourceText(whole.name(), kind.in(whole.content(), random)));
                    if (document.problems().isEmpty()) {
                        continue;
                    }
                    List<String> left = new ArrayList<>(known);
                    // that a released text was changed is true of every change
                    List<Finding> found = every.check(document).stream().filter(finding -> finding.at().source() == document.source()
                            && !finding.rule().equals("changed-after-release") && !left.remove(key(finding))).toList();
                    silent += found.isEmpty() ? 1 : 0;
                    besides.add(Math.max(0, found.size() - 1));
                    found.stream().skip(1).forEach(finding -> rules.merge(kind.title() + ": " + finding.rule(), 1, Integer::sum));
                }
            }
        }
        int[] sorted = besides.stream().mapToInt(Integer::intValue).sorted().toArray();
        System.out.printf(Locale.ROOT, "%d broken texts: findings besides the right one: mean %.2f, 99th percentile %d, most %d; nothing found in %d%n", sorted.length,
                besides.stream().mapToInt(Integer::intValue).average().orElse(0), sorted[sorted.length * 99 / 100], sorted[sorted.length - 1], silent);
        rules.entrySet().stream().sorted(Map.Entry.<String, Integer>comparingByValue().reversed()).limit(8)
                .forEach(rule -> System.out.println(rule.getValue() + " " + rule.getKey()));
    }

    private static String key(Finding finding) {
        return finding.rule() + finding.message();
    }
}
