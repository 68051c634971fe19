/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** A dangerous voltage in a procedure that has no condition which is live: no reading and no hand is then held against it. */
public final class LiveStateUnsaid implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-state-unsaid", Severity.ERROR, Group.STATE,
            "A point carries a dangerous voltage, or one is read, and no condition says when it is live.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).filter(paths -> paths.bench().live().isEmpty())
                .ifPresent(paths -> byPoint(paths).ifPresentOrElse(point -> at(paths, point).ifPresent(at -> report(at, point.name() + " carries up to "
                        + point.carries().orElseThrow().upTo().value(), findings)), () -> byReading(paths, findings)));
    }

    private static Optional<Point> byPoint(ProcedurePaths paths) {
        return UnitVoltage.of(paths).above()
                // what a point stores is a charge, and what is always isolated is never live
                .filter(point -> point.stores().isEmpty() && point.isolated().filter(isolated -> isolated.when().isEmpty()).isEmpty())
                .max(Comparator.comparing(UnitVoltage::volts));
    }

    private static void byReading(ProcedurePaths paths, Findings findings) {
        for (InlinedStep place : paths.map().places()) {
            Optional<ExpectedVoltages.Expected> expected = paths.reaches(place) && place.step() instanceof Step.Measure step
                    ? ExpectedVoltages.dangerous(step).filter(one -> ExpectedVoltages.isOnlyExpected(one.reading().point().flatMap(paths.map().scope()::point)))
                            .findFirst() : Optional.empty();
            if (expected.isPresent()) {
                report(PlaceText.at(place, expected.get().limit().at()), PlaceText.subject(place) + " expects "
                        + expected.get().limit().value().spelling(), findings);
                return;
            }
        }
    }

    private static void report(SourceRange at, String what, Findings findings) {
        findings.report(at, what + ", and no condition says when it is live.",
                "Declare one, such as: condition Supply { off, on } live when on starts off ends off. Then say at the steps what they set and need.");
    }

    /** Where the point is declared; of a point of a library, the step of the procedure that first reads it. */
    private static Optional<SourceRange> at(ProcedurePaths paths, Point point) {
        if (paths.map().procedure().own().points().contains(point)) {
            return Optional.of(point.name().at());
        }
        Stream<InlinedStep> reading = paths.map().places().stream().filter(paths::reaches).filter(place -> place.step() instanceof Step.Measure measure
                && ProbePoints.points(measure, paths.map().scope()).contains(point));
        return reading.findFirst().map(place -> PlaceText.at(place, place.step().name().at()));
    }
}
