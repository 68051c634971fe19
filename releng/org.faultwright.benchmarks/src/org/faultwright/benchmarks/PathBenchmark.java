/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.paths.Exploration;
import org.faultwright.analysis.paths.PathReport;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.StepMap;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declarations;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;

/** Prints how many milliseconds it takes to explore every state of procedures that are as mixed up as can be. */
public final class PathBenchmark {
    private static final SourceRange HERE = new SourceRange(new SourceText("Made.procedure", " "), 0, 0);
    private static final int ROUNDS = 15;
    private static final long WARM_UP = 1_000_000_000L;

    private PathBenchmark() {
    }

    public static void main(String[] arguments) {
        for (int[] size : new int[][] {{200, 10}, {200, 12}, {2_000, 10}, {2_000, 20}}) {
            Procedure procedure = mixedUp(size[0], size[1]);
            String title = size[0] + " steps, " + size[1] + " conditions";
            StepMap map = StepMap.of(procedure);
            Exploration together = Exploration.of(map, map.conditions());
            print(title + ": all conditions together, " + together.size() + " states"
                    + (together.isComplete() ? "" : " (bound reached)"), () -> Exploration.of(map, map.conditions()));
            print(title + ": each condition alone", () -> {
                ProcedurePaths paths = ProcedurePaths.of(procedure);
                map.conditions().forEach(paths::states);
                return paths;
            });
            print(title + ": path report", () -> PathReport.of(ProcedurePaths.of(procedure)));
            List<Finding> findings = new Checker().check(procedure);
            print(title + ": every rule, " + findings.size() + " findings", () -> new Checker().check(procedure));
        }
    }

    /** The shortest and the middle time of several rounds, once the compiler has seen the work for a second. */
    private static void print(String what, Supplier<?> work) {
        for (long end = System.nanoTime() + WARM_UP; System.nanoTime() < end;) {
            Objects.requireNonNull(work.get());
        }
        List<Long> nanoseconds = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            Objects.requireNonNull(work.get());
            nanoseconds.add(System.nanoTime() - start);
        }
        nanoseconds.sort(null);
        System.out.printf("%-75s %8.1f ms least %8.1f ms middle%n", what, nanoseconds.get(0) / 1e6,
                nanoseconds.get(nanoseconds.size() / 2) / 1e6);
    }

    /** Every step leads on two ways, each with one condition set and with it cleared, so that every combination is met. */
    private static Procedure mixedUp(int steps, int conditions) {
        List<Condition> declared = new ArrayList<>();
        for (int i = 0; i < conditions; i++) {
            declared.add(new Condition(name("C" + i), "", List.of(name("off"), name("on")), List.of(), List.of(),
                    List.of(), Optional.empty(), false, Optional.empty(), Optional.empty(), HERE));
        }
        Random random = new Random(steps);
        List<Step> made = new ArrayList<>();
        for (int i = 0; i < steps - 1; i++) {
            Name condition = name("C" + random.nextInt(conditions));
            Setting on = new Setting(condition, name("on"), HERE);
            Setting off = new Setting(condition, name("off"), HERE);
            int far = random.nextInt(steps);
            made.add(new Step.Check(name("S" + i), "Step " + i, StepFrame.PLAIN, List.of(
                    outcome("on", i + 1, steps, on), outcome("off", i + 1, steps, off),
                    outcome("far on", far, steps, on), outcome("far off", far, steps, off)), HERE));
        }
        made.add(new Step.Conclude(name("S" + (steps - 1)), "The end", List.of(), Optional.of(HERE), Optional.empty(),
                Optional.empty(), StepFrame.PLAIN, HERE));
        return new Procedure(HERE.source(), name("Made"), "Made up", List.of(), List.of(), Optional.empty(),
                Optional.empty(), List.of(), List.of(), new Declarations(declared, List.of(), List.of(), List.of(), List.of(),
                        List.of(), List.of(), List.of(), Optional.empty()), Optional.empty(), Optional.empty(), Optional.empty(), List.of(),
                Optional.empty(), made,
                List.of(), List.of(), HERE);
    }

    private static Outcome outcome(String key, int to, int steps, Setting proved) {
        return new Outcome(new Outcome.Word(name(key)), Optional.of(name("S" + Math.min(to, steps - 1))),
                Optional.empty(), List.of(proved), HERE);
    }

    private static Name name(String text) {
        return new Name(text, HERE);
    }
}
