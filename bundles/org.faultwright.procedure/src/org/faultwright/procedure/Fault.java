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
 * @param weight   how often it is met, in any unit shared by all faults; 1 when not stated
 * @param shows    what each step shows when this is the fault
 * @param remedies the acts that repair it
 */
public record Fault(Name name, String title, Optional<Written<Exact>> weight, List<Showing> shows,
        List<Name> remedies, List<Written<Hazard>> hazards, SourceRange at) implements Declaration {
}
