/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;

/**
 * Puts one defect at a time into sound procedures and counts which of them the rules find, and what they report
 * besides. Prints a line for each kind of defect, then every defect that was missed and every false alarm.
 */
public final class MutationStudy {
    private static final long SEED = 20260101;
    private static final int SHOWN = 2;

    private final List<Specimen> specimens;
    private final int most;

    /** @param most how many places at most are tried of each kind in each procedure, taken at random from a fixed seed */
    MutationStudy(List<Specimen> specimens, int most) {
        this.specimens = specimens;
        this.most = most;
    }

    /** What came of one defect. @param unexpected findings of rules that the kind does not expect */
    record Result(Kind kind, Specimen specimen, Seed seed, boolean found, boolean there, List<Finding> unexpected) {
        String place() {
            String file = seed.at().source().name();
            return specimen.name() + ": " + file.substring(file.lastIndexOf('/') + 1) + " line " + seed.at().line() + ", "
                    + seed.edits().stream().limit(1).map(edit -> "'" + brief(edit.at().text()) + "' to '" + brief(edit.replacement()) + "'")
                    .collect(Collectors.joining());
        }

        private static String brief(String text) {
            String line = text.strip().replaceAll("\\s+", " ");
            return line.length() > 50 ? line.substring(0, 47) + "..." : line;
        }
    }

    /** Every kind of defect, then the changes that do no harm. */
    static List<Kind> kinds() {
        return Stream.of(StateDefects.kinds(), WayDefects.kinds(), QuantityDefects.kinds(), InstrumentDefects.kinds(), SafetyDefects.kinds(),
                FaultDefects.kinds(), RecordDefects.kinds(), HarmlessChanges.kinds()).flatMap(List::stream).toList();
    }

    List<Result> results(Kind kind) {
        return specimens.parallelStream().flatMap(specimen -> {
            List<Seed> seeds = new ArrayList<>(kind.seeds().apply(specimen).toList());
            Collections.shuffle(seeds, new Random(SEED));
            return seeds.stream().limit(most).map(seed -> result(kind, specimen, seed));
        }).toList();
    }

    private static Result result(Kind kind, Specimen specimen, Seed seed) {
        List<Finding> findings = specimen.newFindings(seed).stream()
                .filter(finding -> !finding.rule().equals("changed-after-release") || kind.expects(finding.rule())).toList();
        List<Finding> finders = findings.stream().filter(finding -> kind.found().contains(finding.rule())).toList();
        return new Result(kind, specimen, seed, !finders.isEmpty(), finders.stream().anyMatch(seed::isSpokenOfBy),
                findings.stream().filter(finding -> !kind.expects(finding.rule())).toList());
    }

    /** @param arguments a folder of procedures, and how many places of each kind are tried in each */
    public static void main(String[] arguments) throws IOException {
        Path folder = Path.of(arguments[0]);
        int most = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 3;
        List<Specimen> specimens = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".procedure")).sorted().toList()) {
                specimens.add(Specimen.read(file));
            }
        }
        print(new MutationStudy(specimens, most));
    }

    private static void print(MutationStudy study) {
        System.out.println("One defect at a time is put into each of " + study.specimens.size() + " procedures, at no more than " + study.most
                + " places of a kind in each.\nfound: a rule that may rightly say so reports something new. there: it stands at the place or speaks of what"
                + " was changed.\nfalse alarm: something new from a rule that is no consequence of the defect, or after a harmless change. That a released"
                + " text was\nchanged is left out, but for the kind that is about it.\n");
        System.out.printf(Locale.ROOT, "%-55s %7s %6s %6s %7s %12s%n", "defect", "seeded", "found", "there", "missed", "false alarms");
        List<Result> all = new ArrayList<>();
        for (Kind kind : kinds()) {
            List<Result> results = study.results(kind);
            all.addAll(results);
            line(kind.title(), results, kind.isHarmless());
        }
        List<Result> defects = all.stream().filter(result -> !result.kind().isHarmless()).toList();
        line("all " + kinds().stream().filter(kind -> !kind.isHarmless()).count() + " kinds of defect", defects, false);
        line("all harmless changes", all.stream().filter(result -> result.kind().isHarmless()).toList(), true);
        list("missed", defects.stream().filter(result -> !result.found()).map(result -> result.kind().title() + " | " + result.place()));
        list("found, but not there", defects.stream().filter(result -> result.found() && !result.there())
                .map(result -> result.kind().title() + " | " + result.place()));
        list("false alarms", all.stream().flatMap(result -> result.unexpected().stream().limit(SHOWN).map(finding -> result.kind().title() + " | " + result.place()
                + " | " + finding.rule() + ", line " + finding.at().line() + ": " + finding.message())));
    }

    private static void line(String title, List<Result> results, boolean harmless) {
        long found = results.stream().filter(Result::found).count();
        long there = results.stream().filter(Result::there).count();
        System.out.printf(Locale.ROOT, "%-55s %7d %6s %6s %7s %12d%n", title, results.size(), harmless ? "-" : String.valueOf(found),
                harmless ? "-" : String.valueOf(there), harmless ? "-" : String.valueOf(results.size() - found),
                results.stream().filter(result -> !result.unexpected().isEmpty()).count());
    }

    private static void list(String title, Stream<String> lines) {
        List<String> all = lines.sorted().toList();
        System.out.println("\n" + title + ": " + all.size());
        all.forEach(line -> System.out.println("  " + line));
    }
}
