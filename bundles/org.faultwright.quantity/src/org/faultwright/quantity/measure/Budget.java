/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Optional;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;

/** Whether a limit can be decided, and where readings or computed values decide it. Values are in the coherent SI unit. */
public sealed interface Budget permits MeasurementBudget, ComputedBudget {
    /** What is decided. */
    Interval limits();

    /** In use; guarded where one by risk lacks the spread. */
    DecisionRule rule();

    /** Each finite end of the limits, lower first; none when a problem forbids the computation. */
    List<LimitUncertainty> ends();

    /** The test uncertainty ratio; absent where there is no uncertainty, or the limit has no width. */
    Optional<Exact> ratio();

    DecisionZones zones();

    /** Each a sentence. */
    List<String> problems();

    /** In which its values are printed. */
    Unit unit();

    /** The same limits judged with a guard band of the whole U. */
    Budget guarded();

    /** The zones to the digits that are read or worth computing. */
    DecisionZones shown();

    /** The numbers in the order in which they were computed, each with its formula and the clause behind it. */
    List<BudgetLine> explain();

    /** Whether every number could be computed. */
    default boolean isComplete() {
        return problems().isEmpty();
    }

    /** The largest U of its ends; absent where there is none. */
    default Optional<Exact> expanded() {
        return ends().stream().map(LimitUncertainty::expanded).reduce(Exact::max);
    }
}
