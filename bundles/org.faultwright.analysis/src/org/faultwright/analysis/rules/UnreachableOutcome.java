/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Exploration;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** An outcome, or the way it leads otherwise, that no path ever takes though its step is reached. */
public final class UnreachableOutcome implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unreachable-outcome", Severity.WARNING, Group.PATHS,
            "An outcome of a step that is reached, or the step after its \"else\", is never reached.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).filter(paths -> paths.isComplete() && paths.countsRepeats()).ifPresent(paths -> {
            bounded(paths).values().forEach(ways -> report(paths.routes().states(), ways, findings));
            performed(paths).forEach((perform, exits) -> report(paths, perform, exits, findings));
        });
    }

    /** The bounded ways that can be come to, by the outcome they stand for in this text. */
    private static Map<Outcome, List<Transition>> bounded(ProcedurePaths paths) {
        Map<Outcome, List<Transition>> bounded = new IdentityHashMap<>();
        paths.map().ways().stream().filter(way -> way.isBounded() && paths.reaches(way.from()))
                .filter(way -> isInThisText(paths, way.from().step()))
                .forEach(way -> bounded.computeIfAbsent(way.outcome().orElseThrow(), o -> new ArrayList<>()).add(way));
        return bounded;
    }

    private static boolean isInThisText(ProcedurePaths paths, Step step) {
        return step.at().source() == paths.map().procedure().source();
    }

    private static void report(Exploration states, List<Transition> ways, Findings findings) {
        Outcome outcome = ways.get(0).outcome().orElseThrow();
        Outcome.Repeat repeat = outcome.repeat().orElseThrow();
        if (ways.stream().noneMatch(states::isTakenOtherwise)) {
            findings.report(repeat.otherwise().at(),
                    "The outcome \"" + outcome.key() + "\" of " + ways.get(0).from().step().name() + " never leads to "
                            + repeat.otherwise() + ": it cannot come " + (repeat.atMost() + 1L) + " times in one run.",
                    "Leave the bound out, or lead back to the step where the repeat is meant.",
                    Removal.of("Leave the bound out", repeat.at()));
        }
    }

    /** The perform steps that can be come to, each with the exits that their routines come to. */
    private static Map<Step.Perform, Set<String>> performed(ProcedurePaths paths) {
        Map<Step.Perform, Set<String>> performed = new IdentityHashMap<>();
        for (InlinedStep place : paths.map().places()) {
            if (place.step() instanceof Step.Perform perform && isInThisText(paths, perform) && paths.reaches(place)
                    && (place.isWrittenOut() || !place.isStep())) {
                Set<String> exits = performed.computeIfAbsent(perform, step -> new HashSet<>());
                place.exit().ifPresent(exit -> exits.add(exit.text()));
            }
        }
        return performed;
    }

    private static void report(ProcedurePaths paths, Step.Perform perform, Set<String> exits, Findings findings) {
        perform.routine().flatMap(paths.map().scope()::routine).ifPresent(routine -> perform.outcomes().stream()
                .filter(outcome -> routine.isExit(outcome.head() instanceof Outcome.Word word ? word.word() : perform.name()))
                .filter(outcome -> !exits.contains(outcome.key()))
                .forEach(outcome -> findings.report(outcome.head().at(),
                        perform.name() + " never ends with " + outcome.key() + ": no path of " + routine.name()
                                + " comes to that exit.",
                        "Take the outcome out, or let the step of the routine that should do so lead to it.")));
    }
}
