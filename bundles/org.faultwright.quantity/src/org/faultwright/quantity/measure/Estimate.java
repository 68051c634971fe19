/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.RoundingMode;

import org.faultwright.quantity.Exact;

/**
 * A reading with its standard uncertainty, both in the coherent SI unit.
 *
 * @param uncertainty u, not negative
 * @param shape       how the values lie about the reading; counts for a simulation only
 */
public record Estimate(Exact value, Exact uncertainty, Shape shape) {
    /** The probability distribution that stands for what is known of a reading (JCGM 101:2008, 6.4). */
    public enum Shape { NORMAL, RECTANGULAR }

    public Estimate(Exact value, Exact uncertainty) {
        this(value, uncertainty, Shape.NORMAL);
    }

    /** From bounds ±a of equal likelihood: u = a/√3 (JCGM 100:2008, 4.3.7). */
    public static Estimate within(Exact value, Exact halfWidth) {
        return new Estimate(value, halfWidth.squared().dividedBy(Exact.of(3))
                .squareRoot(RoundingMode.CEILING), Shape.RECTANGULAR);
    }
}
