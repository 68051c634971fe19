/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** A trial of a repair, or a protective test, that is made again until it passes, with nothing done to the unit between. */
public final class TestedUntilPassed implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("tested-until-passed", Severity.WARNING, Group.PATHS,
            "A trial of a repair, or a protective test, that fails is made again with nothing done between.");

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
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Repairs repairs = new Repairs(paths.map().procedure());
            Set<String> reported = new HashSet<>();
            paths.map().ways().stream().filter(way -> paths.reaches(way.from()) && isTrial(way)).filter(way -> isAgain(paths, repairs, way))
                    .filter(way -> othersPass(paths, repairs, way))
                    .filter(way -> reported.add(way.from().outermost().label() + " " + way.from().step().name() + " " + key(way)))
                    .forEach(way -> report(paths, repairs, way, findings));
        });
    }

    private static String key(Transition way) {
        return way.outcome().orElseThrow().key();
    }

    /** A reading that cannot be told from its limit is read again by right. */
    private static boolean isTrial(Transition way) {
        InlinedStep from = way.from();
        boolean verifies = from.isStep() ? from.verifiesRepair() : from.step().frame().verifies().isPresent();
        boolean tests = from.isStep() && !from.step().frame().precautions().tests().isEmpty();
        return (verifies || tests) && !from.isWrittenOut() && from.step().outcomes().size() > 1
                && way.outcome().filter(outcome -> !outcome.normal() && !outcome.key().equals(Step.DOUBTFUL)).isPresent();
    }

    private static boolean isAgain(ProcedurePaths paths, Repairs repairs, Transition way) {
        return paths.routes().placesAfter(way.from(), one -> one == way, changes(repairs, way.from())).contains(way.from());
    }

    /** What may have helped: a part in hand, a repair, whatever the procedure itself does, and what a routine does beside switching, opening and closing. */
    private static Predicate<InlinedStep> changes(Repairs repairs, InlinedStep trial) {
        return place -> place.isStep() && place.step() instanceof Step.Do task && (repairs.isChange(place) || !task.adjusts().isEmpty()
                || place.caller().isEmpty() || place.outermost() != trial.outermost() && place.sets().isEmpty());
    }

    /** Whether each other result passes. Where one of them fails, this one is neither: "cannot say" is asked again by right. */
    private static boolean othersPass(ProcedurePaths paths, Repairs repairs, Transition way) {
        List<Transition> others = paths.map().ways().stream().filter(one -> one.from().step() == way.from().step() && one.from().isStep() == way.from().isStep()
                && one.from().caller().equals(way.from().caller()) && one.outcome().filter(outcome -> outcome != way.outcome().get()).isPresent()).toList();
        return !others.isEmpty() && others.stream().allMatch(other -> isDoubtful(other) || passes(paths, repairs, other));
    }

    private static boolean isDoubtful(Transition way) {
        return way.outcome().map(Outcome::key).filter(Step.DOUBTFUL::equals).isPresent();
    }

    private static boolean passes(ProcedurePaths paths, Repairs repairs, Transition way) {
        return paths.routes().placesAfter(way.from(), one -> one == way, place -> place == way.from() || repairs.isRepair(place)).stream()
                .anyMatch(place -> place.step() instanceof Step.Conclude end && end.refersTo().isEmpty());
    }

    private static void report(ProcedurePaths paths, Repairs repairs, Transition way, Findings findings) {
        boolean tests = way.from().isStep() && !way.from().step().frame().precautions().tests().isEmpty();
        findings.report(PlaceText.at(way.from(), way.outcome().orElseThrow().head().at()), PlaceText.subject(way.from()) + " comes round again after \"" + key(way)
                + "\", with nothing done to the unit between: one pass in several counts as " + (tests ? "a test passed." : "a repair that holds."),
                "Let it lead to a repair before the next try, or to a conclusion that refers the unit to someone.",
                paths.routes().afterTaking(one -> one == way, changes(repairs, way.from())).path(way.from()).orElse(List.of()));
    }
}
