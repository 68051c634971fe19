/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.Optional;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.measure.BudgetLine;

/**
 * The range in use.
 *
 * @param named   whether the author named it; else it is the smallest that holds the limits
 * @param problem one sentence when it does not hold the limits, or when the one named does not exist
 */
public record ChosenRange(MeterRange range, boolean named, Optional<String> problem) {
    public BudgetLine explain() {
        return new BudgetLine("choice of range", range.kind().words() + " up to " + range.upTo(), "",
                problem.orElse(named ? "named in the step" : "the smallest range that holds the limits"));
    }
}
