/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;

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
                findings.report(possible.words().at(), step.name() + " has no outcome \"" + possible.words() + "\".",
                        "It has " + Listing.and(keys.stream().map(key -> "\"" + key + "\"").toList()) + ": write one of these, or add the outcome to " + step.name() + ".", fixes);
            }
        }
    }
}
