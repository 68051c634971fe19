/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** What the results of a step decide. */
final class OutcomeEffects {
    private OutcomeEffects() {
    }

    /** Whether a step has several results and goes on to one place whatever it shows: then it might as well not be asked. */
    static boolean areInVain(Step step) {
        return step.outcomes().size() > 1 && step.outcomes().stream().flatMap(OutcomeEffects::targets).map(Name::text).distinct().count() == 1
                && step.outcomes().stream().allMatch(outcome -> outcome.target().isPresent() && outcome.proves().isEmpty());
    }

    /**
     * The same for the places of a procedure, and where the results of a step part only to come to the same conclusions, past no repair and
     * without it being asked again.
     */
    static Predicate<InlinedStep> inVain(ProcedurePaths paths) {
        Repairs repairs = new Repairs(paths.map().procedure());
        return place -> areInVain(place.step()) || comeToTheSame(paths, place, repairs);
    }

    private static boolean comeToTheSame(ProcedurePaths paths, InlinedStep place, Repairs repairs) {
        List<Outcome> outcomes = place.step().outcomes();
        if (outcomes.size() < 2 || outcomes.stream().anyMatch(outcome -> !outcome.proves().isEmpty())) {
            return false;
        }
        Set<Set<InlinedStep>> reached = outcomes.stream().map(outcome -> paths.routes().placesAfter(place,
                way -> way.outcome().filter(one -> one == outcome).isPresent(), other -> other == place || repairs.isRepair(other)).stream()
                .filter(end -> end.step() instanceof Step.Conclude).collect(Collectors.toSet())).collect(Collectors.toSet());
        return reached.size() == 1 && !reached.contains(Set.<InlinedStep>of());
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().stream().map(Outcome.Repeat::otherwise));
    }
}
