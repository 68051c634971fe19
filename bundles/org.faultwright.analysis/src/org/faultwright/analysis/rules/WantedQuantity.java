/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/**
 * What kind of quantity is meant at a place.
 *
 * @param what        what is stated there, such as "the time of SeeIt"
 * @param dimensions  those that fit; empty where anything may stand
 * @param usualUnit   the unit to propose
 * @param kind        where it is a reading of one kind
 * @param numberAlone whether a number without a unit is complete, as for counts and ratios
 * @param level       whether decibels are meant
 */
record WantedQuantity(String what, List<Dimension> dimensions, String usualUnit, Optional<QuantityKind> kind,
        boolean numberAlone, boolean level) {
    static WantedQuantity of(String what, QuantityKind kind) {
        return new WantedQuantity(what, List.of(kind.dimension()), kind.usualUnit(), Optional.of(kind),
                kind == QuantityKind.RATIO || kind == QuantityKind.COUNT, false);
    }

    static WantedQuantity of(String what, String usualUnit, Dimension... dimensions) {
        return new WantedQuantity(what, List.of(dimensions), usualUnit, Optional.empty(),
                List.of(dimensions).contains(Dimension.NONE), false);
    }

    static WantedQuantity level(String what) {
        return new WantedQuantity(what, List.of(Dimension.NONE), "dB", Optional.empty(), false, true);
    }

    static WantedQuantity anything(String what) {
        return new WantedQuantity(what, List.of(), "", Optional.empty(), true, false);
    }

    /** The unit that a prefix alone probably stands for: {@code kohm} for the k of 470 k. */
    Optional<String> behindPrefix(String written) {
        Unit whole = Units.named(written + usualUnit);
        return written.length() <= 2 && !usualUnit.isEmpty() && whole.isKnown() && !dimensions.isEmpty()
                && dimensions.contains(whole.dimension()) ? Optional.of(written + usualUnit) : Optional.empty();
    }

    /** Whether a unit is missing there. */
    boolean lacksUnit(Quantity quantity) {
        return quantity.unit().status() == Unit.Status.MISSING && !numberAlone;
    }

    /** Whether the quantity is of another dimension than what is meant; one without a known unit is not. */
    boolean refuses(Quantity quantity) {
        return quantity.unit().isKnown() && !dimensions.isEmpty()
                && (quantity.unit().isLogarithmic() != level || !dimensions.contains(quantity.dimension()));
    }
}
