/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Dimension;

/** Reports a result that a step does not have, with those it has. */
final class UnknownResult {
    private UnknownResult() {
    }

    static void report(Step step, Showing showing, Findings findings) {
        for (Showing.Possible possible : showing.possible()) {
            if (Results.outcome(step, possible).isEmpty()) {
                List<String> keys = step.outcomes().stream().map(Outcome::key).toList();
                Fix[] fixes = NearNames.of(possible.words().text(), keys).stream().filter(ResultText::isWritable)
                        .map(near -> Fix.replacing("Write " + near, possible.words().at(), ResultText.written(near)))
                        .toArray(Fix[]::new);
                if (possible.reading().filter(reading -> reading.unit().isKnown() && !Results.isReadThere(step, reading)).isPresent()) {
                    findings.report(possible.words().at(), "\"" + step.name() + "\" reads " + DimensionWords.of(read(step)) + ", and "
                            + possible.reading().get() + " is " + DimensionWords.of(possible.reading().get()) + ".",
                            "Write the reading in a unit of what the step reads.");
                    continue;
                }
                findings.report(possible.words().at(), step.name() + " has no outcome \"" + possible.words() + "\".",
                        "It has " + Listing.and(keys.stream().map(key -> "\"" + key + "\"").toList()) + ": write one of these, or add the outcome to " + step.name() + ".", fixes);
            }
        }
    }

    private static Dimension read(Step step) {
        return step instanceof Step.Measure measure ? measure.kind().orElseThrow().value().dimension()
                : Stream.concat(StepExpectation.of(step).map(expects -> expects.limit().value()).stream(), step.outcomes().stream()
                        .map(Outcome::head).filter(Outcome.Band.class::isInstance).map(head -> ((Outcome.Band) head).limit().value()))
                        .flatMap(limit -> limit.quantities().stream()).filter(end -> end.unit().isKnown()).findFirst().orElseThrow().dimension();
    }
}
