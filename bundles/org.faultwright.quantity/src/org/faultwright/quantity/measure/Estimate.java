/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import org.faultwright.quantity.Exact;

/**
 * A reading with its standard uncertainty, both in the coherent SI unit.
 *
 * @param uncertainty u, not negative
 */
public record Estimate(Exact value, Exact uncertainty) {
}
