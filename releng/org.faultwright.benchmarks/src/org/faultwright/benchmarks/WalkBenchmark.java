/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.faultwright.analysis.checking.CheckedProcedure;
import org.faultwright.analysis.checking.FullCheck;
import org.faultwright.analysis.walk.Tally;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.analysis.walk.WalkRecord;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.Drafts;
import org.faultwright.publish.Publication;
import org.faultwright.publish.PublishingRefused;
import org.faultwright.publish.bench.BenchPage;

/** Prints how long a bench page takes to make, and a thousand records to walk again and add up. */
public final class WalkBenchmark {
    private static final int ROUNDS = 9;
    private static final int RECORDS = 1000;

    private WalkBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Procedure procedure = (Procedure) ProcedureReader.overFiles().read(Path.of("procedures-demo", "BrinmoorDeadCharger.procedure"));
        CheckedProcedure checked = new FullCheck(Optional.empty()).check(procedure);
        int[] size = new int[1];
        report("a bench page of 39 steps", () -> size[0] = page(checked));
        System.out.println("its size: " + size[0] / 1000 + " kB");
        List<List<WalkRecord.Entry>> records = records(procedure);
        report(RECORDS + " records walked again and added up", () -> new Tally(procedure, records.stream()
                .map(entries -> WalkRecord.of(procedure, "one", entries).orElseThrow()).toList()).unexpected());
    }

    private static int page(CheckedProcedure checked) {
        try {
            return new BenchPage().publish(Publication.of(checked, Drafts.ALLOWED)).bytes().length;
        } catch (PublishingRefused impossible) {
            throw new IllegalStateException("drafts are allowed here", impossible);
        }
    }

    private static List<List<WalkRecord.Entry>> records(Procedure procedure) {
        Random random = new Random(1);
        List<List<WalkRecord.Entry>> records = new ArrayList<>();
        for (int i = 0; i < RECORDS; i++) {
            List<WalkRecord.Entry> entries = new ArrayList<>();
            for (Walk walk = Walk.start(procedure).orElseThrow(); !walk.isEnd();) {
                if (walk.canEnter()) {
                    walk = walk.entered();
                } else {
                    Outcome outcome = walk.step().outcomes().get(random.nextInt(walk.step().outcomes().size()));
                    entries.add(new WalkRecord.Entry(walk.label(), outcome.key(), 30, false));
                    walk = walk.take(outcome);
                }
            }
            records.add(entries);
        }
        return records;
    }

    private static void report(String what, Runnable work) {
        long[] times = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            work.run();
            times[round] = System.nanoTime() - start;
        }
        Arrays.sort(times);
        System.out.printf(Locale.ROOT, "%s: middle %d ms, longest %d ms%n", what, times[ROUNDS / 2] / 1_000_000, times[ROUNDS - 1] / 1_000_000);
    }
}
