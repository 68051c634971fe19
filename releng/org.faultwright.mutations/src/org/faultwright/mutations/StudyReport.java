/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.mutations.MutationStudy.Result;

/** The study in print: a line for each kind, totals, and every case that wants looking into. */
final class StudyReport {
    private static final String ROW = "%-55s %7s %6s %6s %6s %7s %6s %8s%n";
    private static final int SHOWN = 2;

    private final PrintStream out;
    private final List<Result> all = new ArrayList<>();

    StudyReport(PrintStream out) {
        this.out = out;
    }

    void heading(int procedures, int most) {
        out.println("One defect at a time is put into each of " + procedures + " procedures, at no more than " + most + " places of a kind in each,"
                + "\ntaken at random from a fixed seed; every rule is run, and what was found before is left aside."
                + "\nequal:  the changed text means the same as before, for a reason worked out apart from the rules and listed below; not counted further."
                + "\nfound:  a rule that may rightly say so reports something new."
                + "\nthere:  it stands at the place, or speaks of what was changed, or its path comes by."
                + "\nmissed: no such rule reports anything new."
                + "\nfalse:  a rule that is no consequence of the defect reports something new; after a harmless change, any rule."
                + "\nothers: findings besides, of rules that rightly see the same defect from another side, in the mean of a defect."
                + "\n*:      dangerous; somebody can be hurt where it is missed."
                + "\nThat a released text was changed is left out, but for the kind that is about it.\n");
        out.printf(Locale.ROOT, ROW, "defect", "seeded", "equal", "found", "there", "missed", "false", "others");
    }

    void kind(Kind kind, List<Result> results) {
        all.addAll(results);
        row((kind.isDangerous() ? "* " : "") + kind.title(), results, kind.isHarmless());
    }

    void end() {
        List<Result> defects = all.stream().filter(result -> !result.kind().isHarmless()).toList();
        row("all " + kinds(defects) + " kinds of defect", defects, false);
        List<Result> dangerous = defects.stream().filter(result -> result.kind().isDangerous()).toList();
        row("* all " + kinds(dangerous) + " dangerous kinds", dangerous, false);
        List<Result> harmless = all.stream().filter(result -> result.kind().isHarmless()).toList();
        row("all " + kinds(harmless) + " kinds of harmless change", harmless, true);
        list("missed", defects, Result::isMissed, result -> Stream.of(""));
        list("found, but not there", defects, result -> result.isCounted() && result.found() && !result.there(), result -> says(result.findings()));
        list("false alarms", all, result -> !result.unexpected().isEmpty(), result -> says(result.unexpected()));
        list("held to be equal, and found all the same", defects, result -> !result.isCounted() && result.found(), result -> says(result.findings()));
        equal(defects);
        besides(defects);
    }

    private static long kinds(List<Result> results) {
        return results.stream().map(Result::kind).distinct().count();
    }

    private void row(String title, List<Result> results, boolean harmless) {
        List<Result> counted = results.stream().filter(Result::isCounted).toList();
        long found = counted.stream().filter(Result::found).count();
        long alarms = results.stream().filter(result -> !result.unexpected().isEmpty()).count();
        double others = counted.stream().mapToLong(result -> result.others().size()).average().orElse(0);
        out.printf(Locale.ROOT, ROW, title, results.size(), harmless ? "-" : results.size() - counted.size(), harmless ? "-" : found,
                harmless ? "-" : counted.stream().filter(Result::there).count(), harmless ? "-" : counted.size() - found, alarms,
                harmless ? "-" : String.format(Locale.ROOT, "%.1f", others));
        out.flush();
    }

    private static Stream<String> says(List<Finding> findings) {
        return findings.stream().limit(SHOWN).map(finding -> " | " + finding.rule() + ", line " + finding.at().line() + ": " + finding.message());
    }

    private void list(String title, List<Result> results, Predicate<Result> which, Function<Result, Stream<String>> what) {
        List<String> lines = results.stream().filter(which).flatMap(result -> what.apply(result)
                .map(said -> result.kind().title() + " | " + result.place() + said)).sorted().toList();
        out.println("\n" + title + ": " + results.stream().filter(which).count());
        lines.forEach(line -> out.println("  " + line));
    }

    private void equal(List<Result> defects) {
        Map<String, Long> reasons = defects.stream().flatMap(result -> result.seed().equal().stream()
                .map(reason -> result.kind().title() + ": " + reason)).collect(Collectors.groupingBy(reason -> reason, TreeMap::new, Collectors.counting()));
        out.println("\nequal, and why: " + reasons.values().stream().mapToLong(Long::longValue).sum());
        reasons.forEach((reason, count) -> out.println("  " + count + " x " + reason));
    }

    private void besides(List<Result> defects) {
        out.println("\nother findings of the same defects, by kind");
        defects.stream().map(Result::kind).distinct().forEach(kind -> {
            Map<String, Long> rules = defects.stream().filter(result -> result.kind() == kind && result.isCounted())
                    .flatMap(result -> result.others().stream()).collect(Collectors.groupingBy(Finding::rule, TreeMap::new, Collectors.counting()));
            if (!rules.isEmpty()) {
                out.println("  " + kind.title() + " | " + rules.entrySet().stream().map(rule -> rule.getKey() + " " + rule.getValue())
                        .collect(Collectors.joining(", ")));
            }
        });
    }
}
