/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.table.FaultSheet;
import org.faultwright.analysis.table.SheetChange;
import org.faultwright.analysis.table.SheetText;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Prints the processor time of a fault table of 200 faults and 60 steps, warm: made from the text, a cell changed, all of it pasted. */
public final class FaultTableBenchmark {
    private static final int STEPS = 60;
    private static final int FAULTS = 200;
    private static final int ROUNDS = 15;
    private static final int COUNTED = 7;

    private FaultTableBenchmark() {
    }

    public static void main(String[] arguments) {
        Procedure procedure = (Procedure) new ProcedureReader((library, from) -> Optional.empty()).read(new SourceText("Made.procedure", text()));
        Supplier<FaultSheet> made = () -> FaultSheet.of(new Subject(procedure, Optional.empty()), List.of()).orElseThrow();
        FaultSheet sheet = made.get();
        List<List<String>> copied = SheetText.copied(sheet, sheet.rows().stream().map(FaultSheet.Row::name).toList());
        report(sheet.rows().size() + " faults and " + sheet.columns().size() + " steps, the table made from the text that was read", made);
        report("a cell changed", () -> {
            SheetChange change = new SheetChange(sheet);
            change.shows("Fault7", "Ask3", "b");
            return change.fix("Change").orElseThrow().applied();
        });
        report("all of it copied and pasted back", () -> SheetText.pasted(sheet, copied, List.of(), List.of()).fix("Paste"));
    }

    private static void report(String what, Supplier<?> work) {
        long[] times = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            work.get();
            times[round] = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start;
        }
        long[] warm = Arrays.copyOfRange(times, ROUNDS - COUNTED, ROUNDS);
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT, "%s: middle %.1f ms, %.1f to %.1f ms, the first %.1f ms%n", what, warm[COUNTED / 2] / 1e6, warm[0] / 1e6,
                warm[COUNTED - 1] / 1e6, times[0] / 1e6);
    }

    /** A chain of questions; each has a normal outcome that leads on and four that each find a fault. */
    private static String text() {
        StringBuilder text = new StringBuilder("procedure Made \"Made for measuring\"\nequipment \"Maker and model\" boards \"A\"\nrevision 1 draft\n")
                .append("complaints \"does not start\"\n\n");
        for (int i = 0; i < FAULTS; i++) {
            text.append("fault Fault").append(i).append(" \"Fault ").append(i).append("\" {\n    cases ").append(1 + i % 30).append("\n    shows Ask")
                    .append(i % STEPS).append(' ').append("bcde".charAt(i / STEPS)).append("\n    remedy Mend").append(i).append("\n}\n");
        }
        text.append("\nbegin at Ask0\n\n");
        for (int step = 0; step < STEPS; step++) {
            text.append("check Ask").append(step).append(" \"Question ").append(step).append("?\" {\n    takes ").append(1 + step % 4).append(" min\n    a normal -> ")
                    .append(step + 1 < STEPS ? "Ask" + (step + 1) : "HandOn").append('\n');
            for (int way = 0; way < 4; way++) {
                int fault = way * STEPS + step;
                text.append("    ").append("bcde".charAt(way)).append(" -> ").append(fault < FAULTS ? "Mend" + fault : "HandOn").append('\n');
            }
            text.append("}\n");
        }
        for (int i = 0; i < FAULTS; i++) {
            text.append("do Mend").append(i).append(" \"Mend it\" { takes 5 min then -> Found").append(i).append(" }\nconclude Found").append(i)
                    .append(" \"Found\" { finds Fault").append(i).append(" report \"Mended.\" }\n");
        }
        return text.append("conclude HandOn \"Not solved\" { refers to \"the senior technician\" report \"Tried.\" }\n").toString();
    }
}
