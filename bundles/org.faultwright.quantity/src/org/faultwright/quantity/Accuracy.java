/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Optional;

/**
 * A maker's accuracy statement: ± (percent of reading + percent of range + digits × resolution + amount).
 *
 * @param percentOfReading 0 when not stated
 * @param percentOfRange   of the range's upper end; 0 when not stated
 * @param digits           counts of the last digit shown; 0 when not stated
 * @param amount           an absolute share, such as 2 degC; taken as a difference
 */
public record Accuracy(Exact percentOfReading, Exact percentOfRange, Exact digits, Optional<Quantity> amount) {
}
