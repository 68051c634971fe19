/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** More voltage at a point than the instrument's terminals are rated for. */
public final class InputRatingTooLow implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("input-rating-too-low", Severity.ERROR, Group.INSTRUMENTS,
            "A point carries, or a limit reckons with, more voltage than the instrument is said to be rated for.");

    private static final String SAY_IT = "Say it at the instrument, as its maker states it, such as: rated 600 V category 3.";

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.READINGS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument().flatMap(subject.scope()::instrument)
                .ifPresent(instrument -> rated(instrument).ifPresent(rated -> above(step, rated, subject)
                        .forEach(point -> findings.report(step.instrument().get().at(), point.name() + " can carry "
                                + point.carries().orElseThrow().upTo().value() + ", and " + instrument.name() + " is rated for " + rated + ".",
                                "Use an instrument or a probe that its maker rates for this voltage.")))));
        unrated(subject, findings);
        for (LimitStudy study : LimitStudies.of(subject)) {
            if (study.kind().isVoltage()) {
                rated(study.instrument()).filter(rated -> above(study.step(), rated, subject).findAny().isEmpty()).ifPresent(rated ->
                        study.limits().stream().filter(limit -> isAbove(limit, study.range().shown(), rated)).findFirst()
                                .ifPresent(limit -> findings.report(limit.limit().at(), study.step().name() + " reckons with " + limit.limit().value().spelling() + ", and " + study.instrument().name() + " is rated for " + rated + ".",
                                "Use an instrument or a probe that its maker rates for this voltage.")));
            }
        }
    }

    /** A voltage above what one may touch, and terminals of which nobody says what they withstand. */
    private static void unrated(Subject subject, Findings findings) {
        Set<String> told = new HashSet<>();
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument().flatMap(subject.scope()::instrument)
                .filter(instrument -> instrument.rated().isEmpty() && !told.contains(instrument.name().text())).ifPresent(instrument -> points(step, subject)
                        .filter(point -> point.carries().flatMap(carried -> VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point)))
                                .filter(VoltageLimit::asksForNote).isPresent() && told.add(instrument.name().text())).findFirst()
                        .ifPresent(point -> findings.report(Severity.ADVICE, step.instrument().get().at(), point.name() + " can carry "
                                + point.carries().orElseThrow().upTo().value() + ", and nothing says what " + instrument.name() + " is rated for.",
                                SAY_IT))));
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> step.instrument().flatMap(subject.scope()::instrument)
                .filter(instrument -> instrument.rated().isEmpty() && !told.contains(instrument.name().text())).ifPresent(instrument -> ExpectedVoltages.dangerous(step)
                        .filter(expected -> told.add(instrument.name().text())).findFirst()
                        .ifPresent(expected -> findings.report(Severity.ADVICE, step.instrument().get().at(), step.name() + " expects "
                                + expected.limit().value().spelling() + ", and nothing says what " + instrument.name() + " is rated for.", SAY_IT))));
    }

    private static Stream<Point> points(Step.Measure step, Subject subject) {
        return Stream.of(step.point(), step.against()).flatMap(Optional::stream).flatMap(name -> subject.scope().point(name).stream());
    }

    /** Between two points there can be more than from either to earth. What the range does not even show is told by another rule. */
    private static boolean isAbove(StudiedLimit limit, Interval shown, Quantity rated) {
        return Stream.of(limit.budget().limits().lower(), limit.budget().limits().upper()).flatMap(Optional::stream)
                .anyMatch(end -> shown.contains(end.value()) && end.value().absolute().compareTo(rated.base()) > 0);
    }

    private static Optional<Quantity> rated(Instrument instrument) {
        return instrument.rated().map(Written::value).filter(rated -> rated.fits(QuantityKind.DC_VOLTAGE));
    }

    /** The points with more than that. Peak values are held against the rating itself, which is the careful way: ratings are stated in dc or rms. */
    private static Stream<Point> above(Step.Measure step, Quantity rated, Subject subject) {
        return points(step, subject)
                .filter(point -> point.carries().map(carries -> carries.upTo().value()).filter(voltage -> voltage.fits(QuantityKind.DC_VOLTAGE))
                        .filter(voltage -> voltage.base().absolute().compareTo(rated.base()) > 0).isPresent());
    }
}
