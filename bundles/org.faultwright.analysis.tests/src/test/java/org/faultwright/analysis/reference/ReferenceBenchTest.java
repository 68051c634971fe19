/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.reference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.Texts;
import org.faultwright.analysis.checking.Checker;
import org.faultwright.analysis.checking.RuleSet;
import org.faultwright.procedure.Document;
import org.junit.jupiter.api.Test;

/**
 * Small procedures at random, walked by a second interpreter that knows nothing of the first: both must meet the same hazards at the
 * same steps. {@code -Dfaultwright.procedures=10000} walks more of them; see releng/reference.sh.
 */
class ReferenceBenchTest {
    private static final int PROCEDURES = Integer.getInteger("faultwright.procedures", 400);
    private static final Set<String> COMPARED = Set.of("live-work", "live-measurement", "charge-not-proved-absent", "charge-never-returns",
            "note-never-read", "note-after-need", "need-not-established", "wait-too-short", "bleed-lead-unfit");
    /** What may stand for a hand on a charged capacitor: that it is not proved absent, or that the proof is none. */
    private static final Set<String> OF_CHARGE = Set.of("charge-not-proved-absent", "proof-not-measured", "proof-elsewhere",
            "proof-band-open", "charge-never-returns", "need-not-established", "wait-too-short", "bleed-lead-unfit");
    private static final List<Rule> RULES = RuleSet.all().stream().filter(rule -> COMPARED.contains(rule.header().id())
            || OF_CHARGE.contains(rule.header().id())).toList();
    private static final Pattern STEP = Pattern.compile("\\bS\\d+\\b");
    private static final Pattern HAZARD = Pattern.compile("covers (shock|charge)");

    @Test
    void should_meet_the_same_hazards_at_the_same_steps_as_the_reference() {
        RandomProcedures random = new RandomProcedures(20261126);
        Map<String, Integer> counted = new TreeMap<>();
        int clean = 0;
        for (int i = 0; i < PROCEDURES; i++) {
            SmallProcedure procedure = random.next();
            Set<String> reference = ReferenceBench.hazards(procedure);
            agree(procedure);
            reference.forEach(hazard -> counted.merge(hazard.split(" ")[0], 1, Integer::sum));
            clean += reference.isEmpty() ? 1 : 0;
        }
        System.out.println(PROCEDURES + " procedures, " + clean + " without a hazard; met: " + counted);
        assertEquals(COMPARED, counted.keySet(), "every hazard is met by some procedure");
        assertTrue(clean > PROCEDURES / 100, "and some procedures have none: " + clean);
    }

    @Test
    void should_report_every_hand_on_a_charged_capacitor() {
        RandomProcedures random = new RandomProcedures(325);
        int met = 0;
        for (int i = 0; i < PROCEDURES; i++) {
            SmallProcedure procedure = random.next();
            if (isMissed(procedure)) {
                SmallProcedure smallest = shrunk(procedure, ReferenceBenchTest::isMissed);
                throw new AssertionError(RealCharge.met(smallest).orElseThrow() + " meets a charged capacitor, and nothing is reported in\n"
                        + smallest.text());
            }
            met += RealCharge.met(procedure).isPresent() ? 1 : 0;
        }
        System.out.println(PROCEDURES + " procedures; " + met + " lead a hand to a charged capacitor, all of them reported");
        assertTrue(met > PROCEDURES / 20, "only " + met + " met one");
    }

    private static boolean isMissed(SmallProcedure procedure) {
        Optional<String> met = RealCharge.met(procedure);
        return met.isPresent() && findings(procedure).stream().noneMatch(finding -> OF_CHARGE.contains(finding.rule()));
    }

    private static void agree(SmallProcedure procedure) {
        if (differ(procedure)) {
            SmallProcedure smallest = shrunk(procedure, ReferenceBenchTest::differ);
            assertEquals(lines(ReferenceBench.hazards(smallest)), lines(checked(smallest)),
                    () -> "the reference (expected) and the check differ about\n" + smallest.text());
        }
    }

    private static String lines(Set<String> hazards) {
        return String.join("\n", hazards);
    }

    private static boolean differ(SmallProcedure procedure) {
        return !ReferenceBench.hazards(procedure).equals(checked(procedure));
    }

    /** Smaller and smaller, as long as what is looked for stays. */
    private static SmallProcedure shrunk(SmallProcedure procedure, Predicate<SmallProcedure> holds) {
        SmallProcedure smallest = procedure;
        for (boolean changed = true; changed;) {
            Optional<SmallProcedure> next = smallest.smaller().stream().filter(holds).findFirst();
            changed = next.isPresent();
            smallest = next.orElse(smallest);
        }
        return smallest;
    }

    private static List<Finding> findings(SmallProcedure procedure) {
        Document document = Texts.document(procedure.text());
        assertEquals(List.of(), document.problems(), procedure::text);
        return new Checker(RULES, Optional.empty()).check(document);
    }

    private static Set<String> checked(SmallProcedure procedure) {
        return findings(procedure).stream().filter(finding -> COMPARED.contains(finding.rule())).map(told())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static Function<Finding, String> told() {
        return finding -> finding.rule() + switch (finding.rule()) {
            case "charge-never-returns" -> "";
            case "note-never-read" -> " " + first(HAZARD.matcher(finding.message()), 1);
            case "note-after-need" -> " " + first(STEP.matcher(finding.message()), 0) + " " + first(HAZARD.matcher(finding.message()), 1);
            default -> " " + first(STEP.matcher(finding.message()), 0);
        };
    }

    private static String first(Matcher matcher, int group) {
        return matcher.find() ? matcher.group(group) : "?";
    }
}
