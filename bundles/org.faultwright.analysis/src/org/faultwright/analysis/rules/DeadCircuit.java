/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.LinkedHashMap;
import java.util.Map;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** The readings that are taken by a current of the instrument's own, and so of a dead circuit. */
final class DeadCircuit {
    private DeadCircuit() {
    }

    /** The places of such readings that can be come to, each with the words of its kind. */
    static Map<Place, Written<QuantityKind>> readings(ProcedurePaths paths) {
        Map<Place, Written<QuantityKind>> readings = new LinkedHashMap<>();
        for (Place place : paths.map().places()) {
            if (paths.reaches(place) && place.step() instanceof Step.Measure measure) {
                measure.kind().filter(kind -> kind.value().needsDeadCircuit())
                        .ifPresent(kind -> readings.put(place, kind));
            }
        }
        return readings;
    }
}
