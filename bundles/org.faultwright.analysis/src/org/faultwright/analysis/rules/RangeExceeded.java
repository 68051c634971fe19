/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.RangeChoice;

/** A limit, or the worst voltage at the point, beyond what the range can show. */
public final class RangeExceeded implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("range-exceeded", Severity.ERROR, Group.INSTRUMENTS,
            "The limit or the voltage at the point lies outside the instrument's range.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (LimitStudy study : LimitStudies.of(subject)) {
            study.limits().stream().filter(limit -> !holds(study.range(), limit)).findFirst()
                    .ifPresent(limit -> outside(study, limit, findings));
        }
        DocumentSteps.of(subject, Step.Measure.class).forEach(step -> {
            noSuchRange(step, subject, findings);
            carried(step, subject, findings);
        });
    }

    private static boolean holds(MeterRange range, StudiedLimit limit) {
        return Stream.of(limit.budget().limits().lower(), limit.budget().limits().upper()).flatMap(Optional::stream)
                .allMatch(end -> range.shown().contains(end.value()));
    }

    private static void outside(LimitStudy study, StudiedLimit limit, Findings findings) {
        String range = "range up to " + study.range().upTo();
        findings.report(limit.limit().at(), "The limit " + limit.limit().value().spelling() + " of " + study.step().name()
                + " does not lie within the " + range + " of " + study.instrument().name() + ".",
                study.choice().named() ? "Name a larger range, or leave the choice to the instrument's ranges."
                        : "Use an instrument with a range that holds the limit.",
                study.choice().named() ? new Fix[] {withoutRange(study.step())} : new Fix[0]);
    }

    private static Fix withoutRange(Step.Measure step) {
        SourceRange instrument = step.instrument().get().at();
        SourceRange range = step.range().get().at();
        return Fix.replacing("Leave out the range", new SourceRange(instrument.source(), instrument.end(),
                range.end() - instrument.end()), "");
    }

    private static void noSuchRange(Step.Measure step, Subject subject, Findings findings) {
        if (step.kind().isEmpty() || step.range().isEmpty() || !step.range().get().value().fits(step.kind().get().value())) {
            return;
        }
        QuantityKind kind = step.kind().get().value();
        step.instrument().flatMap(subject.scope()::instrument).ifPresent(instrument -> {
            boolean reads = instrument.ranges().stream().anyMatch(range -> range.value().kind() == kind);
            Optional<MeterRange> named = RangeChoice.named(instrument.ranges().stream().map(Written::value).toList(), kind,
                    step.range().get().value()).range();
            if (reads && named.isEmpty()) {
                findings.report(step.range().get().at(), instrument.name() + " has no " + kind.words() + " range up to "
                        + step.range().get().value() + ".", "Name one that it has, or leave the choice to the limit.",
                        withoutRange(step));
            }
        });
    }

    /**
     * A range named by the author stays where it is when a point carries more; else the largest one counts. Against another point there can be as much as
     * that one carries.
     */
    private static void carried(Step.Measure step, Subject subject, Findings findings) {
        Optional<QuantityKind> kind = step.kind().map(Written::value);
        Optional<Point> point = Stream.of(step.point(), step.against()).flatMap(Optional::stream).flatMap(name -> subject.scope().point(name).stream())
                .filter(one -> one.carries().filter(carried -> kind.filter(carried.kind()::equals).isPresent() && carried.upTo().value().fits(carried.kind())).isPresent())
                .reduce((one, other) -> worst(one).compareTo(worst(other)) >= 0 ? one : other);
        if (point.isEmpty()) {
            return;
        }
        Quantity carried = point.get().carries().orElseThrow().upTo().value();
        step.instrument().flatMap(subject.scope()::instrument).ifPresent(instrument -> {
            Optional<Quantity> largest = instrument.ranges().stream().map(Written::value)
                    .filter(range -> range.kind() == kind.get() && range.upTo().fits(kind.get()))
                    .filter(range -> step.range().map(named -> named.value().fits(kind.get())
                            && named.value().base().equals(range.upTo().base())).orElse(true))
                    .map(MeterRange::upTo).max((one, other) -> one.base().compareTo(other.base()));
            largest.filter(upTo -> upTo.base().compareTo(worst(point.get())) < 0).ifPresent(upTo -> findings.report(
                    step.instrument().get().at(), point.get().name() + " can carry " + carried
                    + ", and the "
                            + (step.range().isPresent() ? "range" : "largest range") + " of " + instrument.name()
                            + " ends at " + upTo + ".",
                    "Use a range or an instrument that shows the worst voltage too.",
                    step.range().isPresent() ? new Fix[] {withoutRange(step)} : new Fix[0]));
        });
    }

    private static Exact worst(Point point) {
        return point.carries().orElseThrow().upTo().value().base();
    }
}
