/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/** What counts as repairing, changing or finding something. */
final class Repairs {
    private final Set<String> remedies;

    Repairs(Procedure procedure) {
        remedies = procedure.faults().stream().flatMap(fault -> fault.remedies().stream()).map(Name::text)
                .collect(Collectors.toSet());
    }

    /** An act that says it repairs, or that a fault names as its remedy. */
    boolean isRepair(InlinedStep place) {
        boolean says = place.step() instanceof Step.Do task && task.repairs().isPresent();
        // a question named as a remedy repairs nothing; remedy-repairs-nothing says so
        boolean does = place.step() instanceof Step.Do || place.step() instanceof Step.Perform;
        return says || does && place.isStep() && place.caller().isEmpty() && remedies.contains(place.step().name().text());
    }

    /** An act after which the unit is no longer as it came: it repairs, wipes or touches a part. */
    boolean isChange(InlinedStep place) {
        return isRepair(place)
                || place.step() instanceof Step.Do task && (task.erases().isPresent() || !place.handles().isEmpty());
    }

    static boolean findsFault(InlinedStep place) {
        return place.step() instanceof Step.Conclude conclude && !conclude.finds().isEmpty();
    }
}
