/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.Optional;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.measure.Budget;
import org.faultwright.quantity.measure.DecisionRule;

/** Which readings are too near a limit for the instrument to decide, by the rule in force. */
public final class DoubtfulReadings {
    private DoubtfulReadings() {
    }

    /** The budget by which a step is decided; absent where the limit itself decides, or the instrument is not known well enough. */
    public static Optional<Budget> of(Document document, Step step) {
        boolean doubtful = step.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
        return expected(document, step).filter(Budget::isComplete).filter(budget -> !budget.ends().isEmpty())
                .filter(budget -> doubtful || !(budget.rule() instanceof DecisionRule.Simple))
                // A way for doubtful readings needs to know which they are, whatever the house decides by.
                .map(budget -> budget.rule() instanceof DecisionRule.Simple ? budget.guarded() : budget);
    }

    private static Optional<Budget> expected(Document document, Step step) {
        if (step instanceof Step.Measure measure) {
            return LimitStudy.of(document, measure).flatMap(LimitStudy::expected).map(StudiedLimit::budget);
        }
        return step instanceof Step.Calculate calculate
                ? ComputedStudy.of(document, calculate).flatMap(ComputedStudy::expected).map(ComputedLimit::budget)
                : Optional.empty();
    }
}
