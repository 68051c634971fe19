/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import org.faultwright.quantity.Exact;

/** How readings near a limit are judged. */
public sealed interface StatedDecisionRule {
    /** The reading is compared with the limit itself. */
    record Simple() implements StatedDecisionRule {
    }

    /** Accepted only inside the limit less the expanded uncertainty (ISO 14253-1). */
    record Guarded() implements StatedDecisionRule {
    }

    /** Guarded so that the probability of a false accept is at most this (JCGM 106). @param percent 0 to 50 */
    record ByRisk(Exact percent) implements StatedDecisionRule {
    }
}
