/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.stream.Stream;
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

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().stream().map(Outcome.Repeat::otherwise));
    }
}
