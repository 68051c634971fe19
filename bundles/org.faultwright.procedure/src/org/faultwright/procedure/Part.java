/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;

/**
 * A part that is taken out, fitted or swapped, or an aid that is put on.
 *
 * @param isolated that it is cut off from the supply and from charge
 * @param drains   the resistance by which it takes charge away, as a bleed lead does
 * @param rated    the power it is rated for, in watts
 * @param number   the number it is ordered by
 * @param stock    how many to have at hand
 */
public record Part(Name name, String title, List<Written<Hazard>> hazards, Optional<Isolation> isolated,
        Optional<Written<Quantity>> drains, Optional<Written<Quantity>> rated, Optional<Written<String>> number,
        Optional<Written<Integer>> stock, SourceRange at) implements Declaration {
}
