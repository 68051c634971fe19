/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.paths.Place;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** What counts as repairing, changing or finding something. */
final class Repairs {
    private Repairs() {
    }

    /** An act that says it repairs, or that a fault names as its remedy. */
    static boolean isRepair(Procedure procedure, Place place) {
        boolean says = place.step() instanceof Step.Act act && act.repairs().isPresent();
        boolean remedies = place.isStep() && place.caller().isEmpty() && procedure.faults().stream()
                .flatMap(fault -> fault.remedies().stream())
                .anyMatch(name -> name.text().equals(place.step().name().text()));
        return says || remedies;
    }

    /** An act after which the unit is no longer as it came: it repairs, wipes or touches a part. */
    static boolean isChange(Procedure procedure, Place place) {
        return isRepair(procedure, place)
                || place.step() instanceof Step.Act act && (act.wipes().isPresent() || !place.handles().isEmpty());
    }

    static boolean findsFault(Place place) {
        return place.step() instanceof Step.Conclude conclude && !conclude.finds().isEmpty();
    }
}
