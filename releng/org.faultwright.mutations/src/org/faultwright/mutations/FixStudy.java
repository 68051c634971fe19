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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.SourceText;

/**
 * Tries every fix that the rules propose over folders of procedures and over texts with one defect, and counts those that are
 * offered. An offered one is applied and judged anew, by counting: no rule may find more of any weight than before.
 */
public final class FixStudy {
    private static final long SEED = 20260101;

    private final ProcedureReader reader = ProcedureReader.overFiles();
    private final Checker checker = new Checker();
    private final FixTrial trial = new FixTrial(reader::read, checker);
    private final Map<String, Count> counts = new TreeMap<>();
    private final List<String> worse = new ArrayList<>();

    /** Of one rule: how many fixes were proposed, and how many of them were offered. */
    private static final class Count {
        private int proposed;
        private int offered;
        private String refused = "";
    }

    /** Tries every fix of what is found in a text. */
    void study(SourceText text) {
        Document document = reader.read(text);
        List<Finding> found = checker.check(document);
        for (Finding finding : found) {
            if (!finding.at().source().name().equals(text.name())) {
                continue;
            }
            for (Fix fix : finding.fixes()) {
                Count count = counts.computeIfAbsent(finding.rule(), rule -> new Count());
                count.proposed++;
                List<Finding> added = trial.added(finding, fix, found);
                if (added.isEmpty()) {
                    count.offered++;
                    judge(finding, fix, found);
                } else if (count.refused.isEmpty()) {
                    count.refused = fix.title() + " @" + finding.at() + ": " + added.get(0).rule() + " " + added.get(0).message();
                }
            }
        }
    }

    /** Apart from how it was tried. */
    private void judge(Finding finding, Fix fix, List<Finding> found) {
        Map<String, Integer> change = new HashMap<>();
        found.forEach(one -> change.merge(one.rule() + " " + one.severity(), -1, Integer::sum));
        checker.check(reader.read(new SourceText(finding.at().source().name(), fix.applied())))
                .forEach(one -> change.merge(one.rule() + " " + one.severity(), 1, Integer::sum));
        // what waited for the words that the fix mends was there before
        Map<String, Long> waited = checker.assess(checker.subject(reader.read(finding.at().source()))).waiting().stream()
                .collect(Collectors.groupingBy(one -> one.rule() + " " + one.severity(), Collectors.counting()));
        boolean gone = change.getOrDefault(finding.rule() + " " + finding.severity(), 0) < 0;
        if (!gone || change.entrySet().stream().anyMatch(more -> more.getValue() > waited.getOrDefault(more.getKey(), 0L))) {
            worse.add(finding.at() + " " + finding.rule() + ": " + fix.title());
        }
    }

    int proposed() {
        return counts.values().stream().mapToInt(count -> count.proposed).sum();
    }

    int offered() {
        return counts.values().stream().mapToInt(count -> count.offered).sum();
    }

    /** The offered fixes after which more is found than before; there must be none. */
    List<String> worse() {
        return List.copyOf(worse);
    }

    void print() {
        System.out.printf("%-34s %9s %8s   the first that is not offered, and what it would bring%n", "rule", "proposed", "offered");
        counts.forEach((rule, count) -> System.out.printf("%-34s %9d %8d   %s%n", rule, count.proposed, count.offered, count.refused));
        System.out.println(proposed() + " fixes proposed, " + offered() + " offered; after " + worse.size() + " of these more is found than before.");
        worse.forEach(System.out::println);
    }

    /** The texts with one defect each, some of each kind taken at random from a fixed seed. */
    static Stream<SourceText> seeded(List<Specimen> specimens, int most) {
        return MutationStudy.kinds().stream().flatMap(kind -> specimens.stream().flatMap(specimen -> {
            List<Seed> seeds = new ArrayList<>(kind.seeds().apply(specimen).toList());
            Collections.shuffle(seeds, new Random(SEED));
            String own = specimen.procedure().source().name();
            return seeds.stream().filter(seed -> seed.texts().keySet().equals(Set.of(own))).limit(most)
                    .map(seed -> new SourceText(own, seed.texts().get(own)));
        }));
    }

    static List<SourceText> below(Path folder) throws IOException {
        List<SourceText> texts = new ArrayList<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(path -> path.toString().endsWith(".procedure")).sorted().toList()) {
                texts.add(new SourceText(file.toString(), Files.readString(file)));
            }
        }
        return texts;
    }

    /** @param arguments the folder of the demo, how many places of each kind of defect in each procedure, then other folders */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 2 || !arguments[1].matches("\\d{1,4}")) {
            System.err.println("Give the folder to put defects into, how many places of a kind to try, then folders to try as they are.");
            System.exit(2);
        }
        FixStudy study = new FixStudy();
        for (String folder : arguments) {
            if (!folder.equals(arguments[1])) {
                for (SourceText text : below(Path.of(folder))) {
                    study.study(text);
                }
            }
        }
        int most = Integer.parseInt(arguments[1]);
        if (most > 0) {
            seeded(MutationStudy.specimens(Path.of(arguments[0])), most).forEach(study::study);
        }
        study.print();
        System.exit(study.worse().isEmpty() ? 0 : 1);
    }
}
