/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.function.Supplier;
import org.faultwright.procedure.SourceRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/**
 * A quantity where it is written.
 *
 * @param place     its own words; absent when these cannot be told from what stands around them
 * @param whole     the part it belongs to
 * @param neighbour the unit of the other end of its limit, where that is known
 */
record StatedQuantity(Quantity quantity, Supplier<Optional<SourceRange>> place, SourceRange whole, WantedQuantity wanted,
        Optional<Unit> neighbour) {
    SourceRange at() {
        return place.get().orElse(whole);
    }

    /** The unit to propose for it, as it is written. */
    String proposedUnit() {
        return neighbour.map(Units::spelling).orElse(wanted.usualUnit());
    }
}
