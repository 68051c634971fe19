/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** The highest voltage inside the unit, from what its points carry. */
public final class UnitVoltage {
    private final List<Point> points;

    private UnitVoltage(List<Point> points) {
        this.points = points;
    }

    /** From the points that the procedure declares; where none of them says, from those that its steps probe. */
    public static UnitVoltage of(ProcedurePaths paths) {
        Procedure procedure = paths.map().procedure();
        List<Point> own = stating(procedure.own().points().stream());
        return new UnitVoltage(!own.isEmpty() ? own : stating(paths.map().places().stream().filter(paths::reaches)
                .map(Place::step).filter(Step.Measure.class::isInstance).map(Step.Measure.class::cast)
                .flatMap(step -> Probes.points(step, paths.map().scope()).stream()).distinct()));
    }

    private static List<Point> stating(Stream<Point> points) {
        return points.filter(point -> point.carries().filter(carried -> carried.upTo().value().fits(carried.kind()))
                .isPresent()).toList();
    }

    /** Whether no point says what it carries. */
    public boolean isUnknown() {
        return points.isEmpty();
    }

    /** The point with the highest voltage above the limits that ask for a shock note. */
    public Optional<Point> dangerous() {
        return points.stream().filter(point -> VoltageLimit.exceededBy(point.carries().orElseThrow().kind(), volts(point))
                .filter(VoltageLimit::asksForNote).isPresent()).max(Comparator.comparing(UnitVoltage::volts));
    }

    /** What a point carries, in volts. */
    public static Exact volts(Point point) {
        return point.carries().map(carried -> carried.upTo().value().base().absolute()).orElse(Exact.ZERO);
    }

    /** Whether mains is inside: a point of a measurement category, or one that carries more than 50 V ac. */
    public boolean hasMains() {
        return points.stream().anyMatch(point -> point.category().isPresent() || point.carries().orElseThrow().kind()
                .isAlternating() && VoltageLimit.exceededBy(point.carries().orElseThrow().kind(), volts(point))
                        .filter(limit -> limit == VoltageLimit.EXTRA_LOW).isPresent());
    }
}
