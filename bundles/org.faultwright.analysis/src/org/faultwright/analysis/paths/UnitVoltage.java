/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;

/** The highest voltage inside the unit, from what its points carry. */
public final class UnitVoltage {
    /** The peak of 50 V rms of a sine, in volts. */
    private static final Exact PEAK = Exact.of("70.7");

    /** The frequencies of the mains, in hertz (IEC 60196). */
    private static final List<Exact> MAINS = List.of(Exact.of(50), Exact.of(60));


    private final List<Point> points;

    private UnitVoltage(List<Point> points) {
        this.points = points;
    }

    /**
     * From the points that the procedure declares and those that steps of its own text probe; where none of them says,
     * from those that a routine of a library probes, which stand for the largest of any unit.
     */
    public static UnitVoltage of(ProcedurePaths paths) {
        return paths.voltage();
    }

    static UnitVoltage found(ProcedurePaths paths) {
        Procedure procedure = paths.map().procedure();
        List<Point> own = stating(Stream.concat(procedure.own().points().stream(), probed(paths, true)));
        return new UnitVoltage(!own.isEmpty() ? own : stating(probed(paths, false)));
    }

    private static Stream<Point> probed(ProcedurePaths paths, boolean byItself) {
        String text = paths.map().procedure().source().name();
        return paths.map().places().stream().filter(paths::reaches).map(InlinedStep::step).filter(Step.Measure.class::isInstance)
                .map(Step.Measure.class::cast).filter(step -> !byItself || step.at().source().name().equals(text))
                .flatMap(step -> ProbePoints.points(step, paths.map().scope()).stream());
    }

    /** Each once; a name means the same object everywhere. */
    private static List<Point> stating(Stream<Point> points) {
        Set<Point> seen = Collections.newSetFromMap(new IdentityHashMap<>());
        return points.filter(point -> seen.add(point) && point.carries().filter(carried -> carried.upTo().value().fits(carried.kind()))
                .isPresent()).toList();
    }

    /** Whether no point says what it carries. */
    public boolean isUnknown() {
        return points.isEmpty();
    }

    /** The point with the highest voltage above the limits that ask for a shock note. */
    public Optional<Point> dangerous() {
        return above().max(Comparator.comparing(UnitVoltage::volts));
    }

    /** Every point above these limits. */
    public Stream<Point> above() {
        return points.stream().filter(UnitVoltage::isDangerous);
    }

    /** Whether a point says that it carries more than these limits. */
    public static boolean isDangerous(Point point) {
        return point.carries().filter(carried -> carried.upTo().value().fits(carried.kind())).flatMap(carried ->
                VoltageLimit.exceededBy(carried.kind(), volts(point))).filter(VoltageLimit::asksForNote).isPresent();
    }

    /** What a point carries, in volts. */
    public static Exact volts(Point point) {
        return point.carries().map(carried -> carried.upTo().value().base().absolute()).orElse(Exact.ZERO);
    }

    /** Whether mains is inside: a point of a measurement category, or one that carries more than 50 V ac. */
    public boolean hasMains() {
        return points.stream().anyMatch(point -> point.category().isPresent() || mostOf(point.carries().orElseThrow().kind())
                .filter(most -> volts(point).compareTo(most) > 0).isPresent());
    }

    /** Whether a point says that it is of the mains: by its category, or by the frequencies of the mains at more than 50 V. */
    public static boolean isOnMains(Point point) {
        return point.category().isPresent() || point.carries().filter(carried -> carried.frequency().filter(UnitVoltage::isOfMains).isPresent()
                && mostOf(carried.kind()).filter(most -> volts(point).compareTo(most) > 0).isPresent()).isPresent();
    }

    private static boolean isOfMains(Point.Frequencies frequencies) {
        return MAINS.stream().anyMatch(hertz -> frequencies.lowest().value().base().compareTo(hertz) <= 0
                && frequencies.highest().value().base().compareTo(hertz) >= 0);
    }

    private static Optional<Exact> mostOf(QuantityKind kind) {
        return kind == QuantityKind.AC_VOLTAGE_PEAK ? Optional.of(PEAK)
                : kind.isAlternating() ? VoltageLimit.EXTRA_LOW.volts(kind) : Optional.empty();
    }
}
