/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import org.faultwright.procedure.Written;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.measure.ComputedBudget;

/** One limit on a computed value and how well its readings decide it. @param limit as written */
public record ComputedLimit(Written<Limit> limit, ComputedBudget budget) {
}
