/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;
import org.faultwright.language.ProcedureReader;
import org.faultwright.language.parsing.PlainParser;
import org.faultwright.language.server.EditingServices;
import org.faultwright.procedure.SourceText;

/** Prints the time from a key to the findings, all rules on, for procedures of three lengths. */
public final class KeystrokeBenchmark {
    private static final int[] STEPS = {50, 500, 2_000};
    private static final int WARM_UP = 40;
    private static final int KEYS = 100;

    private KeystrokeBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path folder = Files.createTempDirectory("keystrokes");
        Path library = folder.resolve("MadeBench.procedure");
        Files.writeString(library, MadeProcedures.library());
        try {
            for (int steps : STEPS) {
                measure(folder.resolve("Made.procedure").toString(), steps);
            }
        } finally {
            Files.deleteIfExists(library);
            Files.deleteIfExists(folder);
        }
    }

    private static void measure(String file, int steps) {
        EditingServices services = new EditingServices();
        PlainParser parser = new PlainParser();
        ProcedureReader reader = ProcedureReader.overFiles();
        StringBuilder text = new StringBuilder(MadeProcedures.procedure("Made", steps, 1));
        Random random = new Random(7);
        long[] parsing = new long[KEYS];
        long[] reading = new long[KEYS];
        long[] whole = new long[KEYS];
        for (int key = -WARM_UP; key < KEYS; key++) {
            text.insert(text.indexOf("rails read, none low"), (char) ('a' + random.nextInt(26)));
            String content = text.toString();
            long parsed = time(() -> parser.parse(content));
            long read = time(() -> reader.read(new SourceText(file, content)));
            long checked = time(() -> services.update(file, content));
            if (key >= 0) {
                parsing[key] = parsed;
                reading[key] = read;
                whole[key] = checked;
            }
        }
        System.out.printf(Locale.ROOT, "%5d steps: key to findings, median %.1f ms, 95th percentile %.1f ms; of the median parsing %.1f ms,"
                + " reading it into a procedure %.1f ms, the rules %.1f ms%n", steps, part(whole, 50), part(whole, 95), part(parsing, 50),
                part(reading, 50) - part(parsing, 50), part(whole, 50) - part(reading, 50));
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
