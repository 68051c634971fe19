/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.server.EditingServices;
import org.faultwright.procedure.SourceText;

/**
 * Prints the time from a key to the findings for procedures of three lengths, by the clock and by the processor: a key in the report of the last
 * conclusion, one in a title, one in a limit, and one in where an arrow leads, while its name is typed
 * and from one step to another. Beside it the time to parse the text, and to read it and check it with the
 * same rules from nothing, in the same run.
 */
public final class KeystrokeBenchmark {
    private static final int[] STEPS = {50, 500, 2_000};
    private static final int WARM_UP = 40;
    private static final int KEYS = 100;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    /**
     * @param at    the words before the place that is typed in
     * @param words what stands there by turns; where there are none, another digit, or a letter more
     */
    private record Key(String what, String at, boolean last, String... words) {
        /** The text with the next key pressed. */
        void press(StringBuilder text, int count) {
            int place = (last ? text.lastIndexOf(at) : text.indexOf(at, text.length() / 2)) + at.length();
            if (words.length > 0) {
                String now = words[Math.floorMod(count, words.length)];
                text.replace(place, place + words[0].length(), now);
            } else if (Character.isDigit(text.charAt(place))) {
                text.setCharAt(place, (char) ('1' + Math.floorMod(count, 5)));
            } else {
                text.insert(place, (char) ('a' + Math.floorMod(count, 26)));
            }
        }
    }

    private static final Key[] KINDS = {new Key("in a report", "report \"All ", true), new Key("in a title", "under load", false),
        new Key("in a limit", " V +/- ", false), new Key("in an arrow", "above  -> ", false),
        // between two steps that there are, of names of one length
        new Key("turning an arrow", "above  -> Volts", false, "1", "2")};

    private KeystrokeBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createTempDirectory("keystrokes");
        Path library = folder.resolve("MadeBench.procedure");
        Files.writeString(library, MadeProcedures.library());
        try {
            for (int steps : STEPS) {
                for (Key key : KINDS) {
                    measure(folder.resolve("Made.procedure").toString(), steps, key);
                }
            }
        } finally {
            Files.deleteIfExists(library);
            Files.deleteIfExists(folder);
        }
    }

    private static void measure(String file, int steps, Key key) {
        EditingServices services = new EditingServices();
        PlainParser parser = new PlainParser();
        ProcedureReader reader = ProcedureReader.overFiles();
        Checker quick = new Checker(RuleSet.quick(), Optional.empty());
        StringBuilder text = new StringBuilder(MadeProcedures.procedure("Made", steps, 1));
        long[] parsing = new long[KEYS];
        long[] fromNothing = new long[KEYS];
        long[] whole = new long[KEYS];
        long[] processor = new long[KEYS];
        for (int count = -WARM_UP; count < KEYS; count++) {
            key.press(text, count);
            String content = text.toString();
            long parsed = time(() -> parser.parse(content));
            long read = time(() -> quick.check(reader.read(new SourceText(file, content))));
            long start = THREADS.getCurrentThreadCpuTime();
            long checked = time(() -> services.update(file, content));
            if (count >= 0) {
                processor[count] = THREADS.getCurrentThreadCpuTime() - start;
                parsing[count] = parsed;
                fromNothing[count] = read;
                whole[count] = checked;
            }
        }
        System.out.printf(Locale.ROOT, "%5d steps, a key %-16s to findings, median %.1f ms, 95th percentile %.1f ms; processor time %.1f and %.1f ms;"
                + " parsing alone %.1f ms, everything from nothing %.1f ms%n", steps, key.what(), part(whole, 50), part(whole, 95),
                part(processor, 50), part(processor, 95), part(parsing, 50), part(fromNothing, 50));
    }

    private static long time(Runnable work) {
        long start = System.nanoTime();
        work.run();
        return System.nanoTime() - start;
    }

    /** In milliseconds. */
    private static double part(long[] times, int percent) {
        long[] sorted = times.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length * percent / 100] / 1e6;
    }
}
