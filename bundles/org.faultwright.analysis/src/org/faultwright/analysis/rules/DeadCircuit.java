/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** The readings that are taken by a current of the instrument's own, and so of a dead circuit. */
final class DeadCircuit {
    private DeadCircuit() {
    }

    /** The places of such readings that can be come to, each with the words of its kind. */
    static Map<InlinedStep, Written<QuantityKind>> readings(ProcedurePaths paths) {
        Map<InlinedStep, Written<QuantityKind>> readings = new LinkedHashMap<>();
        for (InlinedStep place : paths.map().places()) {
            if (paths.reaches(place) && place.isStep() && place.step() instanceof Step.Measure measure) {
                measure.kind().filter(kind -> kind.value().needsDeadCircuit())
                        .ifPresent(kind -> readings.put(place, kind));
            }
        }
        return readings;
    }

    /** Whether all the probes are on what no supply reaches in this state. */
    static boolean isOutOfReach(BenchStates.State state, Scope scope) {
        List<Point> points = points(state, scope);
        return !points.isEmpty() && points.stream().allMatch(point -> state.keepsAway(point.isolated()));
    }

    /** Whether they are on what can hold no charge either. What a point stores itself it keeps when it is isolated. */
    static boolean isOutOfReachOfCharge(BenchStates.State state, Scope scope) {
        return isOutOfReach(state, scope) && points(state, scope).stream().noneMatch(DeadCircuit::stores);
    }

    /** Whether a charge stands at the point itself. */
    static boolean stores(Point point) {
        return point.stores().isPresent() || point.hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE);
    }

    private static List<Point> points(BenchStates.State state, Scope scope) {
        return state.place().step() instanceof Step.Measure measure ? ProbePoints.points(measure, scope) : List.of();
    }
}
