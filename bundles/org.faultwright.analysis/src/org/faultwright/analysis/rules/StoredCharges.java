/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.measure.StoredEnergy;

/** The capacitors of a unit that a person may not touch, by what its points say they store. */
final class StoredCharges {
    /** IEC 60335-1 8.1.4, from memory: above 42.4 V peak, 0.1 uF up to 450 V, 45 uC up to 15 kV, 350 mJ beyond. */
    private static final Exact HARMLESS_VOLTS = Exact.of("42.4");
    private static final Exact LOW_VOLTS = Exact.of(450);
    private static final Exact HIGH_VOLTS = Exact.of(15_000);
    private static final Exact MOST_FARADS = Exact.of("0.0000001");
    private static final Exact MOST_COULOMBS = Exact.of("0.000045");
    private static final Exact MOST_JOULES = Exact.of("0.35");

    private StoredCharges() {
    }

    /** A point and what it stores. */
    record Stored(Point point, StoredEnergy energy) {
    }

    /** Those that the procedure declares or probes, above the thresholds. */
    static List<Stored> dangerous(ProcedurePaths paths) {
        Stream<Point> probed = paths.map().places().stream().filter(paths::reaches).map(InlinedStep::step)
                .filter(Step.Measure.class::isInstance).flatMap(step -> ProbePoints.points((Step.Measure) step, paths.map().scope()).stream());
        Set<Point> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        return Stream.concat(paths.map().procedure().own().points().stream(), probed).filter(seen::add)
                .flatMap(point -> dangerous(point).stream()).toList();
    }

    static Optional<Stored> dangerous(Point point) {
        return point.storedEnergy().filter(StoredCharges::isDangerous).map(energy -> new Stored(point, energy));
    }

    private static boolean isDangerous(StoredEnergy stored) {
        if (stored.volts().compareTo(HARMLESS_VOLTS) <= 0) {
            return false;
        }
        if (stored.volts().compareTo(LOW_VOLTS) <= 0) {
            return stored.farads().compareTo(MOST_FARADS) > 0;
        }
        return stored.volts().compareTo(HIGH_VOLTS) <= 0 ? stored.charge().base().compareTo(MOST_COULOMBS) > 0
                : stored.energy().base().compareTo(MOST_JOULES) > 0;
    }
}
