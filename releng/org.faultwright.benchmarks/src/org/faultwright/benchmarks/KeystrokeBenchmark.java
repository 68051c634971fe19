/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.faultwright.language.server.EditingServices;

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
        StringBuilder text = new StringBuilder(MadeProcedures.procedure("Made", steps, 1));
        Random random = new Random(7);
        long[] times = new long[KEYS];
        for (int key = -WARM_UP; key < KEYS; key++) {
            text.insert(text.indexOf("rails read, none low"), (char) ('a' + random.nextInt(26)));
            long start = System.nanoTime();
            services.update(file, text.toString());
            if (key >= 0) {
                times[key] = System.nanoTime() - start;
            }
        }
        Arrays.sort(times);
        System.out.printf("%5d steps: key to findings, median %.1f ms, 95th percentile %.1f ms%n", steps,
                times[KEYS / 2] / 1e6, times[KEYS * 95 / 100] / 1e6);
    }
}
