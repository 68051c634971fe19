/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.measure.BudgetLine;
import org.faultwright.quantity.measure.Loading;
import org.faultwright.quantity.measure.MeasurementBudget;

/**
 * One limit and how well it can be decided.
 *
 * @param limit   as written
 * @param budget  the uncertainty at its ends, the test uncertainty ratio and the zones
 * @param loading what connecting the instrument changes at the end where it changes most; absent where
 *                the source resistance or the instrument's own is not stated
 */
public record StudiedLimit(Written<Limit> limit, MeasurementBudget budget, Optional<Loading> loading) {
    /** The error by loading as a part of the tolerance; of the limit itself where it is one-sided. */
    public Optional<Exact> loadingShare() {
        return loading.flatMap(load -> load.shareOf(budget.limits()).or(() -> budget.limits().width().isPresent()
                ? Optional.empty() : Optional.of(load.relativeError().absolute())));
    }

    public List<BudgetLine> explain() {
        return Stream.concat(budget.explain().stream(), loading.stream().flatMap(load -> load.explain().stream())).toList();
    }
}
