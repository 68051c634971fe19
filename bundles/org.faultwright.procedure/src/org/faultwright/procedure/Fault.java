/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Exact;

/**
 * A candidate cause.
 *
 * @param cases    how often it was met, counted as for all the other faults; 1 when not stated
 * @param shows    what each step shows when this is the fault
 * @param remedies the steps that repair it
 * @param report   the sentence for the customer, where an arrow leads to it
 */
public record Fault(Name name, String title, Optional<Written<Exact>> cases, List<Showing> shows,
        List<Name> remedies, List<Written<Hazard>> hazards, Optional<Written<String>> report, SourceRange at) implements Declaration {
    /** What stands in its words; the rest is understood. */
    public List<Showing> written() {
        return Showing.written(shows);
    }
}
