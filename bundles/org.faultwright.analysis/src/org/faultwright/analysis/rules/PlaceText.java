/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.procedure.SourceRange;

/** How to speak of a place in a finding about the procedure. */
final class PlaceText {
    private PlaceText() {
    }

    /** The words of a step of the procedure; for a step of a routine the perform step, for there it can be put right. */
    static SourceRange at(InlinedStep place, SourceRange own) {
        return place.caller().isEmpty() ? own : place.outermost().step().name().at();
    }

    static SourceRange at(InlinedStep place) {
        return place.outermost().step().name().at();
    }

    /** {@code HeadSupply}, or {@code MakeSafe, performing SwitchOff,}. */
    static String subject(InlinedStep place) {
        return place.caller().isEmpty() ? place.label()
                : place.outermost().label() + ", performing " + place.step().name() + ",";
    }
}
