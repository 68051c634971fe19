/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.Procedure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A fault table and examples that say only what differs are held against the same ones spelled out. */
class NormalOutcomesTest {
    private static final List<String> ALIKE = List.of("fault-misses-conclusion", "fault-never-concluded", "ambiguity-group", "outcome-already-known",
            "outcome-no-fault-explains", "example-fails", "example-time-exceeded", "outcome-untried", "unreachable-step");

    /** A thousand small procedures: what is left out is taken to be normal, and nothing else changes. */
    @ParameterizedTest
    @MethodSource("seeds")
    void should_prove_of_a_short_table_what_it_proves_of_the_same_table_spelled_out(int seed) {
        int found = 0;
        for (int round = 0; round < 100; round++) {
            Random random = new Random(seed * 1_000L + round);
            int steps = 2 + random.nextInt(4);
            int[][] table = table(random, steps);
            int[][] example = new int[1][];
            example[0] = table[random.nextInt(table.length)];
            String tree = tree(random, steps, table.length);
            Procedure spelled = Texts.procedure(tree + faults(table, true) + example(example[0], true, spelledPath(tree, example[0], steps)));
            Procedure brief = Texts.procedure(tree + faults(table, false) + example(example[0], false, spelledPath(tree, example[0], steps)));

            assertEquals(findings(spelled), findings(brief), () -> brief.source().content());
            assertTrue(orders(spelled) >= orders(brief), () -> "another order only on what somebody has stated\n" + brief.source().content());
            assertEquals(times(spelled), times(brief), () -> brief.source().content());
            found += findings(spelled).size();
        }
        assertTrue(found > 50, "the procedures are worth the asking: " + found);
    }

    static IntStream seeds() {
        return IntStream.range(0, 10);
    }

    /** Each step is stated to show something else for some fault, and each fault somewhere: what follows by itself is no evidence. */
    private static int[][] table(Random random, int steps) {
        int[][] table = new int[2 + random.nextInt(3)][steps];
        for (int step = 0; step < steps; step++) {
            table[random.nextInt(table.length)][step] = 1 + random.nextInt(2);
        }
        for (int[] row : table) {
            row[random.nextInt(steps)] = 1 + random.nextInt(2);
        }
        return table;
    }

    private static String word(int outcome) {
        return List.of("sound", "odd", "gone").get(outcome);
    }

    private static String tree(Random random, int steps, int faults) {
        StringBuilder text = new StringBuilder("procedure P \"p\"\nbegin at S0\n");
        for (int step = 0; step < steps; step++) {
            text.append("check S").append(step).append(" \"s\" { takes ").append(1 + random.nextInt(9)).append(" min\n");
            for (int outcome = 0; outcome < 3; outcome++) {
                int to = step + 1 + random.nextInt(steps - step + faults);
                text.append("    ").append(word(outcome)).append(outcome == 0 ? " normal" : "").append(" -> ")
                        .append(to < steps ? "S" + to : to - steps < faults ? "C" + (to - steps) : "Other").append('\n');
            }
            text.append("}\n");
        }
        for (int fault = 0; fault < faults; fault++) {
            text.append("conclude C").append(fault).append(" \"c\" { finds F").append(fault).append(" }\n");
        }
        return text.append("conclude Other \"o\" { refers to \"Somebody\" }\n").toString();
    }

    private static String faults(int[][] table, boolean spelled) {
        StringBuilder text = new StringBuilder();
        for (int fault = 0; fault < table.length; fault++) {
            List<String> shows = new ArrayList<>();
            for (int step = 0; step < table[fault].length; step++) {
                if (spelled || table[fault][step] != 0) {
                    shows.add("S" + step + " " + word(table[fault][step]));
                }
            }
            text.append("fault F").append(fault).append(" \"f\" { cases ").append(fault + 1).append(" shows ")
                    .append(String.join(", ", shows)).append(" }\n");
        }
        return text.toString();
    }

    /** The steps that a unit which shows this comes to. */
    private static List<Integer> spelledPath(String tree, int[] shown, int steps) {
        List<Integer> path = new ArrayList<>();
        String at = "S0";
        while (at.startsWith("S")) {
            int step = Integer.parseInt(at.substring(1));
            path.add(step);
            String block = tree.substring(tree.indexOf("check S" + step + " "));
            String arrow = block.lines().skip(1 + shown[step]).findFirst().orElseThrow();
            at = arrow.substring(arrow.indexOf("-> ") + 3).strip();
        }
        return path;
    }

    private static String example(int[] shown, boolean spelled, List<Integer> path) {
        List<String> shows = path.stream().filter(step -> spelled || shown[step] != 0).map(step -> "S" + step + " " + word(shown[step])).toList();
        return "example \"e\" { " + String.join(", ", shows) + " ends at Other within 5 min }\n";
    }

    private static List<String> findings(Procedure procedure) {
        return new Checker().check(procedure).stream().filter(finding -> ALIKE.contains(finding.rule()))
                .map(finding -> finding.rule() + " " + plain(finding)).sorted().toList();
    }

    private static long orders(Procedure procedure) {
        return new Checker().check(procedure).stream().filter(finding -> finding.rule().equals("better-order")).count();
    }

    /** A message may say that what a fault shows is what is normal there. */
    private static String plain(Finding finding) {
        return finding.message().replaceAll("what is normal, ([^,]+),", "$1");
    }

    private static String times(Procedure procedure) {
        TimeStudy times = TimeStudy.in(new Subject(procedure, Optional.empty())).orElseThrow();
        return times.inAll().expected() + " " + times.inAll().worst();
    }

    @Test
    void should_not_take_for_granted_what_a_step_shows_that_no_outcome_of_is_normal() {
        Procedure procedure = Texts.procedure("""
                procedure P "p" fault F "f" { cases 1 shows A bad } fault G "g" { cases 1 shows A good, B odd }
                begin at A check A "a" { good normal -> B bad -> B } check B "b" { even -> X odd -> Y }
                conclude X "x" { finds F } conclude Y "y" { finds G }
                example "e" { ends at X }
                """);

        assertTrue(new Checker().check(procedure).stream().anyMatch(finding -> finding.rule().equals("example-fails")
                && finding.message().contains("does not say what it shows")));
        assertTrue(FaultTable.of(procedure).cell(procedure.faults().get(0), procedure.steps().get(1)).isSilent());
    }
}
