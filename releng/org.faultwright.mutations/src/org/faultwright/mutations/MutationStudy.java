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
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;

/**
 * Puts one defect at a time into sound procedures and counts which of them the rules find, and what they report
 * besides.
 */
public final class MutationStudy {
    private static final long SEED = 20260101;

    private final List<Specimen> specimens;
    private final int most;

    /** @param most how many places at most are tried of each kind in each procedure, taken at random from a fixed seed */
    MutationStudy(List<Specimen> specimens, int most) {
        this.specimens = specimens;
        this.most = most;
    }

    /**
     * What came of one defect.
     *
     * @param there      whether a rule that may rightly report it speaks of the place
     * @param findings   what such rules report
     * @param others     what the rules report that see its consequences
     * @param unexpected what all other rules report
     */
    record Result(Kind kind, Specimen specimen, Seed seed, boolean there, List<Finding> findings, List<Finding> others,
            List<Finding> unexpected) {
        boolean found() {
            return !findings.isEmpty();
        }

        /** Whether it changes anything that matters. */
        boolean isCounted() {
            return seed.equal().isEmpty();
        }

        boolean isMissed() {
            return isCounted() && !found();
        }

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
        return Stream.of(StateDefects.kinds(), LiveDefects.kinds(), WayDefects.kinds(), QuantityDefects.kinds(), InstrumentDefects.kinds(), MeasuringDefects.kinds(), SafetyDefects.kinds(),
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
        List<Finding> all = specimen.newFindings(seed).stream()
                .filter(finding -> !finding.rule().equals("changed-after-release") || kind.expects(finding.rule())).toList();
        List<Finding> finders = all.stream().filter(finding -> kind.found().contains(finding.rule())).toList();
        return new Result(kind, specimen, seed, finders.stream().anyMatch(seed::isSpokenOfBy), finders,
                all.stream().filter(finding -> !kind.found().contains(finding.rule()) && kind.expects(finding.rule())).toList(),
                all.stream().filter(finding -> !kind.expects(finding.rule())).toList());
    }

    /** @param arguments a folder of procedures, how many places of each kind are tried in each, and words of the titles of some kinds */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 1 || arguments.length > 3 || arguments.length > 1 && !arguments[1].matches("[1-9]\\d{0,4}")) {
            System.err.println("Give a folder of procedures, then how many places of a kind to try in each, then words of a kind's title.");
            System.exit(2);
        }
        List<Specimen> specimens = specimens(Path.of(arguments[0]));
        int most = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 3;
        StudyReport report = new StudyReport(System.out);
        MutationStudy study = new MutationStudy(specimens, most);
        report.heading(specimens.size(), most);
        kinds().stream().filter(kind -> arguments.length < 3 || kind.title().contains(arguments[2]))
                .forEach(kind -> report.kind(kind, study.results(kind)));
        report.end();
    }

    /** The procedures of a folder, in the order of their names. */
    static List<Specimen> specimens(Path folder) throws IOException {
        List<Specimen> specimens = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".procedure")).sorted().toList()) {
                specimens.add(Specimen.read(file));
            }
        }
        return specimens;
    }
}
