/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/**
 * What else makes a reading uncertain beside the instrument's accuracy: repeatability, probe, temperature.
 *
 * @param label  what it is
 * @param amount in the coherent SI unit, a difference, not negative
 * @param stated which of its measures the amount is
 */
public record UncertaintyContribution(String label, Exact amount, Form stated) {
    /** How a contribution is stated. */
    public enum Form {
        /** Bounds ±a within which every value is equally likely; u = a/√3 (JCGM 100:2008, 4.3.7). */
        HALF_WIDTH,
        /** A standard deviation, such as that of the mean of repeated readings (JCGM 100:2008, 4.2.3). */
        STANDARD_UNCERTAINTY
    }

    public static UncertaintyContribution halfWidth(String label, Quantity bounds) {
        return new UncertaintyContribution(label, bounds.difference(), Form.HALF_WIDTH);
    }

    public static UncertaintyContribution standard(String label, Quantity uncertainty) {
        return new UncertaintyContribution(label, uncertainty.difference(), Form.STANDARD_UNCERTAINTY);
    }

    /** u², exact. */
    Exact variance() {
        return stated == Form.HALF_WIDTH ? amount.squared().dividedBy(Exact.of(3)) : amount.squared();
    }
}
