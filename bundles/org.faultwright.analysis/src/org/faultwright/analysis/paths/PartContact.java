/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import java.util.Optional;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;

/** Which parts a step handles where charge may be met: inside the unit, unless the step itself says that it is closed. */
public final class PartContact {
    private PartContact() {
    }

    /**
     * The parts that hands are put on inside the unit. A step that is done with the unit closed, as in
     * {@code needs Cover fitted} where the cover ends fitted, handles parts from outside: there only a part that itself
     * declares charge or shock counts. Where a step does not say, every part counts.
     */
    public static List<Name> inside(InlinedStep place, Scope scope) {
        if (place.handles().isEmpty()) {
            return List.of();
        }
        List<Setting> closures = place.needs().stream().filter(need -> scope.condition(need.condition())
                .filter(Closures::isClosure).isPresent()).toList();
        boolean closed = !closures.isEmpty() && closures.stream().allMatch(need -> isClosed(need, scope));
        return closed ? place.handles().stream().filter(name -> isDangerous(scope.part(name))).toList() : place.handles();
    }

    /** As {@link #inside(Place, Scope)}; where the step does not say, what holds here tells whether the unit is closed. */
    public static List<Name> inside(BenchStates.State state, Scope scope) {
        List<Name> inside = inside(state.place(), scope);
        return !inside.isEmpty() && state.isClosed() ? inside.stream().filter(name -> isDangerous(scope.part(name))).toList() : inside;
    }

    private static boolean isClosed(Setting need, Scope scope) {
        return scope.condition(need.condition()).flatMap(Condition::ends)
                .map(end -> end.text().equals(need.value().text())).orElse(false);
    }

    /** Whether a part declares charge or shock itself. */
    public static boolean isDangerous(Optional<Part> part) {
        return part.stream().flatMap(one -> one.hazards().stream())
                .anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE || hazard.value() == Hazard.SHOCK);
    }
}
