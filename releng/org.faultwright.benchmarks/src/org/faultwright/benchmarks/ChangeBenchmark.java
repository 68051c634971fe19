/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.FixTrial;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.compare.ProcedureComparison;
import org.faultwright.analysis.steps.StepChange;
import org.faultwright.analysis.steps.StepEdits;
import org.faultwright.analysis.time.ArrowStudy;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;

/** Prints how long it takes to compare two revisions, to try a change of the chart, and to reckon how often its arrows are taken. */
public final class ChangeBenchmark {
    private static final int ROUNDS = 21;

    private ChangeBenchmark() {
    }

    public static void main(String[] arguments) throws IOException {
        Path file = Path.of("procedures-demo", "OllenbyFaintLabels.procedure");
        ProcedureReader reader = ProcedureReader.overFiles();
        String text = Files.readString(file);
        Procedure now = (Procedure) reader.read(new SourceText(file.toString(), text));
        Procedure was = (Procedure) reader.read(new SourceText(file.toString(), text.replace("24 V +/- 5 %", "24 V +/- 8 %").replace("cases 17", "cases 18")));
        report("two revisions of " + now.steps().size() + " steps compared", () -> ProcedureComparison.of(was, now));
        report("its arrows reckoned", () -> ArrowStudy.of(now));
        StepChange.Offered change = (StepChange.Offered) new StepEdits(now, now).takeOut(now.steps().stream()
                .filter(step -> step.name().text().equals("SaveFormats")).findFirst().orElseThrow());
        Checker every = new Checker(RuleSet.all(), Optional.empty());
        report("a change of its steps read, held and checked in full", () -> {
            List<Finding> before = every.check(reader.read(now.source()));
            boolean holds = change.holds(reader.read(new SourceText(file.toString(), change.fix().applied())));
            if (!holds || new FixTrial(reader::read, every).added(change.fix(), before) == null) {
                throw new IllegalStateException("the change does not hold");
            }
        });
    }

    private static void report(String what, Runnable work) {
        long[] times = new long[ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            work.run();
            times[round] = System.nanoTime() - start;
        }
        long first = times[0];
        Arrays.sort(times);
        System.out.printf(Locale.ROOT, "%s: the first %.1f ms, median %.1f ms%n", what, first / 1e6, times[ROUNDS / 2] / 1e6);
    }
}
