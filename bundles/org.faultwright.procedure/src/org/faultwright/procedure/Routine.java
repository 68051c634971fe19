/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;

/**
 * Shared steps, left by one of its exits.
 *
 * @param normalExit the exit by which a sound unit leaves, where one is marked
 * @param usualTime  how long it takes, for the steps that perform it and do not say so themselves
 */
public record Routine(Name name, String title, List<Name> exits, Optional<Name> normalExit, Optional<Written<Quantity>> usualTime, Optional<Name> begin,
        List<Step> steps, SourceRange at) implements Declaration, StepGraph {
    public Routine {
        steps = StepsByName.of(steps);
    }
}
