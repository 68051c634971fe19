/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/** What a step shows: in an example one result, in a fault's signature one or several possible ones. */
public record Showing(Name step, List<Possible> possible, SourceRange at) {
    /** Those that stand in the words of the thing itself, as they stand there; on a path they may be come to in another order. */
    static List<Showing> written(List<Showing> shows) {
        return shows.stream().filter(showing -> !showing.step().isUnderstood()).sorted(Comparator.comparingInt(showing -> showing.at().offset())).toList();
    }

    /**
     * @param words   a result word, code or reading, in one spelling
     * @param reading the same as a quantity where it is a number with a unit
     * @param share   how often it shows, in percent, where the author knows
     */
    public record Possible(Name words, Optional<Quantity> reading, Optional<Exact> share) {
    }
}
