/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.publish.chart.Chart;
import org.faultwright.publish.chart.ChartMaker;

/** Prints the processor time of the layout of a chart, warm, for procedures of several sizes. */
public final class ChartBenchmark {
    private static final int ROUNDS = 11;
    private static final int COUNTED = 5;

    private ChartBenchmark() {
    }

    public static void main(String[] arguments) {
        for (int steps : new int[] {40, 60, 300, 2000}) {
            ProcedureReader reader = new ProcedureReader((library, from) -> Optional.of(new SourceText("MadeBench.procedure", MadeProcedures.library())));
            report((Procedure) reader.read(new SourceText("Made.procedure", MadeProcedures.procedure("Made", steps, 1))));
        }
    }

    private static void report(Procedure procedure) {
        ThreadMXBean clock = ManagementFactory.getThreadMXBean();
        long[] times = new long[ROUNDS];
        Chart chart = null;
        for (int round = 0; round < ROUNDS; round++) {
            long start = clock.getCurrentThreadCpuTime();
            chart = ChartMaker.of(List.of(new ChartMaker.Part("", "", procedure)), procedure.scope(), key -> false, (key, step) -> "", () -> false);
            times[round] = clock.getCurrentThreadCpuTime() - start;
        }
        long[] warm = Arrays.copyOfRange(times, ROUNDS - COUNTED, ROUNDS);
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT, "a chart of %d boxes and %d arrows: middle %d ms, %d to %d ms, the first %d ms%n", chart.boxes().size(),
                chart.arrows().size(), warm[COUNTED / 2] / 1_000_000, warm[0] / 1_000_000, warm[COUNTED - 1] / 1_000_000, times[0] / 1_000_000);
    }
}
