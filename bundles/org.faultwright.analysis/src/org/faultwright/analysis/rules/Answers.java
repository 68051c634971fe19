/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** What the results of a step decide. */
final class Answers {
    private Answers() {
    }

    /** Whether a step has several results and goes on to one place whatever it shows: then it might as well not be asked. */
    static boolean areInVain(Step step) {
        return step.outcomes().size() > 1 && step.outcomes().stream().flatMap(Answers::targets).map(Name::text).distinct().count() == 1
                && step.outcomes().stream().allMatch(outcome -> outcome.target().isPresent() && outcome.proves().isEmpty());
    }

    /** The same, and where its results part only to come to the same conclusions, past no repair and without it being asked again. */
    static boolean areInVain(ProcedurePaths paths, Place place) {
        Step step = place.step();
        if (areInVain(step)) {
            return true;
        }
        if (step.outcomes().size() < 2 || step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty())) {
            return false;
        }
        Repairs repairs = new Repairs(paths.map().procedure());
        List<Place> ends = paths.map().places().stream().filter(end -> end.step() instanceof Step.Conclude).toList();
        Set<List<Place>> reached = step.outcomes().stream().map(outcome -> paths.routes().afterTaking(
                way -> way.from() == place && way.outcome().filter(outcome::equals).isPresent(), other -> other == place || repairs.isRepair(other)))
                .map(after -> ends.stream().filter(after::has).toList()).collect(Collectors.toSet());
        return reached.size() == 1 && !reached.contains(List.<Place>of());
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().stream().map(Outcome.Repeat::otherwise));
    }
}
