/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.benchmarks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.language.ProcedureReader;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceText;
import org.faultwright.procedure.Step;

/**
 * Prints how long each rule takes on a procedure of 40 steps, alone and after what several rules share has been
 * computed, and how long all rules take where the library has thousands of ranges.
 */
public final class RuleBenchmark {
    private static final int STEPS = 40;
    private static final int SLOWEST = 8;
    private static final int ROUNDS = 15;
    private static final long WARM_UP = 1_500_000_000L;
    private static final Set<Group> GROUPS_OF_TEXT = Set.of(Group.NAMES, Group.QUANTITIES, Group.INSTRUMENTS, Group.RECORD);

    private record Timed(String what, double milliseconds) {
    }

    private RuleBenchmark() {
    }

    public static void main(String[] arguments) {
        Document procedure = procedure(MadeProcedures.library());
        all("all " + RuleSet.all().size() + " rules, " + STEPS + " steps", procedure);
        List<Rule> ofText = RuleSet.all().stream().filter(rule -> GROUPS_OF_TEXT.contains(rule.header().group())).toList();
        Checker textChecker = new Checker(ofText, Optional.empty());
        print(new Timed("the " + ofText.size() + " about names, quantities, instruments and record", median(() -> textChecker.check(procedure))));
        each(procedure);
        computed();
        for (int instruments : new int[] {50, 250}) {
            String library = withInstruments(instruments);
            int ranges = 20 * instruments;
            all("all rules, a library of " + ranges + " ranges more", procedure(library));
            all("that library itself", reader(library).read(new SourceText("MadeBench.procedure", library)));
        }
    }

    private static ProcedureReader reader(String library) {
        SourceText text = new SourceText("MadeBench.procedure", library);
        return new ProcedureReader((name, fromFile) -> Optional.of(text));
    }

    private static Document procedure(String library) {
        return reader(library).read(new SourceText("Made.procedure", MadeProcedures.procedure("Made", STEPS, 1)));
    }

    private static String withInstruments(int instruments) {
        StringBuilder library = new StringBuilder(MadeProcedures.library());
        for (int i = 0; i < instruments; i++) {
            library.append("instrument Spare").append(i).append(" \"Spare meter\" {\n");
            for (int range = 1; range <= 20; range++) {
                library.append("    dc voltage up to ").append(range).append(" V resolution 1 mV")
                        .append(" accuracy 0.5 % of reading + 2 digits input 10 Mohm\n");
            }
            library.append("}\n");
        }
        return library.toString();
    }

    private static void all(String what, Document document) {
        Checker checker = new Checker();
        print(new Timed(what, median(() -> checker.check(document))));
    }

    private static void each(Document document) {
        Subject computed = new Subject(document, Optional.empty());
        new Checker().check(computed);
        List<Timed> alone = new ArrayList<>();
        for (Rule rule : RuleSet.all()) {
            Checker checker = new Checker(List.of(rule), Optional.empty());
            alone.add(new Timed("    " + rule.header().id(), median(() -> checker.check(computed), WARM_UP / 20)));
        }
        alone.sort(Comparator.comparing(Timed::milliseconds).reversed());
        System.out.println("the slowest rules, what they share being computed:");
        alone.stream().limit(SLOWEST).forEach(RuleBenchmark::print);
        print(new Timed("    the middle one", alone.get(alone.size() / 2).milliseconds()));
    }

    /** One decision on three readings, each time from the beginning. */
    private static void computed() {
        Procedure bridge = (Procedure) ProcedureReader.overFiles().read(new SourceText("Bridge.procedure", """
                procedure Bridge "Bridge"
                instrument Meter "Meter" {
                    dc voltage up to 200 mV resolution 1 uV   accuracy 0.015 % of reading + 0.005 % of range
                    dc voltage up to 20 V   resolution 100 uV accuracy 0.015 % of reading + 0.004 % of range
                }
                measure Supply "Supply" { dc voltage using Meter expects 5 V +/- 0.5 % within -> Empty outside -> Done }
                measure Empty "Empty" { dc voltage using Meter expects 1.2 mV +/- 0.3 mV within -> Loaded outside -> Done }
                measure Loaded "Loaded" { dc voltage using Meter 0.5 mV .. 15 mV -> Gives under 0.5 mV -> Done over 15 mV -> Done }
                calculate Gives "Gives" { value (Loaded - Empty) / Supply expects 0.667 mV/V +/- 3 % within -> Done outside -> Done }
                conclude Done "Done" { finds nothing }
                """));
        Step.Calculate step = bridge.steps().stream().filter(Step.Calculate.class::isInstance).map(Step.Calculate.class::cast)
                .findFirst().orElseThrow();
        print(new Timed("uncertainty of a value computed from three readings",
                median(() -> ComputedStudy.of(bridge, step).orElseThrow().explain())));
    }

    private static double median(Runnable work) {
        return median(work, WARM_UP);
    }

    /** The middle time of several rounds, once the compiler has seen the work for a while. */
    private static double median(Runnable work, long warmUp) {
        for (long end = System.nanoTime() + warmUp; System.nanoTime() < end;) {
            work.run();
        }
        List<Long> times = new ArrayList<>();
        for (int round = 0; round < ROUNDS; round++) {
            long start = System.nanoTime();
            work.run();
            times.add(System.nanoTime() - start);
        }
        return times.stream().sorted().toList().get(ROUNDS / 2) / 1e6;
    }

    private static void print(Timed timed) {
        System.out.printf(Locale.ROOT, "%-60s %8.3f ms%n", timed.what(), timed.milliseconds());
    }
}
