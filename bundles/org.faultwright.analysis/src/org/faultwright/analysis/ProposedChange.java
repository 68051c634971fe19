/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;
import java.util.Optional;

/**
 * A change of the whole procedure, for its author to look at before it is made.
 *
 * @param outcome what it brings, or why there is none, in a sentence
 * @param reasons lines for the author; those that begin with blanks belong to the line above
 * @param change  absent where there is nothing to change
 */
public record ProposedChange(String outcome, List<String> reasons, Optional<Fix> change) {
    public ProposedChange {
        reasons = List.copyOf(reasons);
    }
}
