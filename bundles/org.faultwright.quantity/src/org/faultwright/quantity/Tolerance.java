/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/** How far from nominal a limit lies. A percentage is of the nominal. */
public sealed interface Tolerance {
    /** @param percent of the nominal, never negative when well written */
    record Percent(Exact percent) implements Tolerance {
        @Override
        public Exact distance(Quantity nominal) {
            return nominal.difference().absolute().times(percent).dividedBy(Exact.of(100));
        }
    }

    /** @param amount a difference in the unit written */
    record Amount(Quantity amount) implements Tolerance {
        @Override
        public Exact distance(Quantity nominal) {
            return amount.difference();
        }
    }

    /** The distance from nominal in the coherent SI unit; a temperature tolerance is a difference. */
    Exact distance(Quantity nominal);
}
