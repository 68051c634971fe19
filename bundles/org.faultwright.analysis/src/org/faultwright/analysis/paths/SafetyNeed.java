/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import org.faultwright.procedure.Hazard;

/**
 * A hazard that a note must be read about before a step.
 *
 * @param reason   what makes it one, as a clause: {@code HeadRail carries up to 325 V dc, above 120 V dc (…)}
 * @param advised  whether a note is only advised
 * @param atStep   whether it must be read at the step itself, whatever was read before
 */
public record SafetyNeed(Hazard hazard, String reason, boolean advised, boolean atStep) {
    SafetyNeed(Hazard hazard, String reason, boolean advised) {
        this(hazard, reason, advised, false);
    }

    /** The one that asks for more. */
    SafetyNeed or(SafetyNeed other) {
        return advised && !other.advised || advised == other.advised && !atStep && other.atStep ? other : this;
    }
}
