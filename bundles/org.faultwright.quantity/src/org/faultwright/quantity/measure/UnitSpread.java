/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Optional;

import org.faultwright.quantity.Exact;

/**
 * How the true values of the units that come to the bench are distributed, taken as normal.
 *
 * @param mean      in the coherent SI unit; absent means the middle of the tolerance
 * @param deviation the standard deviation, in the coherent SI unit, above zero
 */
public record UnitSpread(Optional<Exact> mean, Exact deviation) {
}
