/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.faultwright.language.server.EditingServices;
import org.faultwright.language.server.FoundPlace;
import org.faultwright.language.server.OpenText;
import org.faultwright.language.server.PlacesInText;
import org.faultwright.language.server.SearchScope;
import org.faultwright.language.server.WantedWords;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceText;

/**
 * Finds words and the uses of an instrument in a folder of made procedures, each file read anew as the view does:
 * {@code [FILES, 3000 when not said]}. Prints the median of five rounds, and of the uses the only
 * round, in processor time, which other work on the machine changes less; and how many places were found.
 */
public final class FindBenchmark {
    private static final int ROUNDS = 5;

    private FindBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        int files = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3_000;
        Path folder = Files.createTempDirectory("find");
        try {
            FolderBenchmark.main(new String[] {"make", folder.toString(), String.valueOf(files), "40"});
            List<Path> all;
            try (Stream<Path> made = Files.list(folder)) {
                all = made.sorted().toList();
            }
            words(all, "Made" + files / 2, SearchScope.EVERYTHING);
            words(all, "voltage", SearchScope.EVERYTHING);
            words(all, "xyzzy", SearchScope.EVERYTHING);
            words(all, "", SearchScope.FAULTS);
            uses(all, folder.resolve("MadeBench.procedure"));
        } finally {
            try (Stream<Path> made = Files.walk(folder)) {
                for (Path path : made.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
    }

    private static void words(List<Path> files, String typed, SearchScope sought) throws IOException {
        WantedWords wanted = WantedWords.of(typed);
        long[] times = new long[ROUNDS];
        long found = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long start = worked();
            found = 0;
            for (Path file : files) {
                found += PlacesInText.of(new SourceText(file.toString(), Files.readString(file)), wanted, sought).size();
            }
            times[round] = worked() - start;
        }
        Arrays.sort(times);
        System.out.printf("\"%s\" among %s in %d files: %d ms of processor time, %d places%n", typed, sought.inSentence(), files.size(), times[ROUNDS / 2] / 1_000_000, found);
    }

    private static long worked() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void uses(List<Path> files, Path library) throws IOException {
        EditingServices services = new EditingServices();
        OpenText bench = services.unchecked(new SourceText(library.toString(), Files.readString(library)));
        int at = bench.content().indexOf("instrument ") + "instrument ".length();
        Name declared = bench.nameAt(at).orElseThrow().declared().orElseThrow();
        long start = worked();
        List<FoundPlace> found = new ArrayList<>();
        for (Path file : files) {
            String content = Files.readString(file);
            if (content.contains(declared.text())) {
                found.addAll(PlacesInText.naming(services.unchecked(new SourceText(file.toString(), content)), declared));
            }
        }
        System.out.printf("uses of \"%s\" in %d files, each parsed: %d ms of processor time, %d places%n", declared.text(), files.size(),
                (worked() - start) / 1_000_000, found.size());
    }
}
