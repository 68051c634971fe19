/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.measure.BudgetLine;

/**
 * How well the readings behind a computed value decide its limits, by the law of propagation of uncertainty.
 *
 * @param step    the decision
 * @param limits  each limit of the step: what it expects, then its bands in reading order; none when there is a problem
 * @param problem one sentence on what keeps the uncertainty from being computed
 */
public record ComputedStudy(Step.Calculate step, List<ComputedLimit> limits, Optional<String> problem) {

    /** The study of a decision; absent when it computes nothing or has no limit. Rules report each of these. */
    public static Optional<ComputedStudy> of(Document document, Step.Calculate step) {
        return new ComputedStudies(document).of(step);
    }

    /** What the step expects; absent where it has bands alone. */
    public Optional<ComputedLimit> expected() {
        return step.expects().flatMap(expected -> of(expected.limit()));
    }

    /** The study of one of the step's limits, as written. */
    public Optional<ComputedLimit> of(Written<?> limit) {
        return limits.stream().filter(studied -> studied.limit().equals(limit)).findFirst();
    }

    /** The numbers in the order in which they were computed, with their formulas and the clauses behind them. */
    public List<BudgetLine> explain() {
        List<BudgetLine> lines = new ArrayList<>();
        problem.ifPresent(sentence -> lines.add(new BudgetLine("uncertainty", sentence, "", "")));
        for (ComputedLimit limit : limits) {
            if (limits.size() > 1) {
                lines.add(new BudgetLine("limit", limit.limit().value().spelling(), "", "the step"));
            }
            lines.addAll(limit.budget().explain());
        }
        return List.copyOf(lines);
    }
}
