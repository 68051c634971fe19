/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.PartContact;
import org.faultwright.analysis.paths.ProbePoints;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** A point that stores more than a person may touch, in a procedure that knows no charge. */
public final class StoredChargeUnsaid implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("stored-charge-unsaid", Severity.ERROR, Group.STATE,
            "A point stores, or may store, more than a person may touch, and no condition says when it is charged or where it is proved absent.");

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
        ProcedurePaths.of(subject).filter(paths -> paths.bench().charged().isEmpty()).ifPresent(paths ->
                StoredCharges.dangerous(paths)
                        .forEach(stored -> findings.report(at(paths, stored.point()), stored.point().name()
                                + " holds more than a person may touch (IEC 60335-1), and no condition says when it is charged: "
                                + stored.energy().inWords() + ".",
                                "Declare one, such as: condition Charge { present, absent } charged when present becomes present when"
                                        + " Supply on proved at " + stored.point().name() + ".")));
        ProcedurePaths.of(subject).filter(paths -> paths.bench().charged().isEmpty() && reachesIn(paths)).ifPresent(paths ->
                paths.map().procedure().own().points().stream().filter(StoredChargeUnsaid::mayStore).findFirst()
                        .ifPresentOrElse(point -> mayStay(point.carries().orElseThrow().upTo().at(), point.name() + " carries up to "
                                + point.carries().orElseThrow().upTo().value() + " dc", point.name().text(), findings), () -> expected(paths, findings)));
        ProcedurePaths.of(subject).filter(paths -> provesElsewhere(paths)).ifPresent(paths -> provedAtLess(paths, findings));
        ProcedurePaths.of(subject).filter(paths -> provesElsewhere(paths)).ifPresent(paths -> StoredCharges.dangerous(paths).stream()
                .filter(stored -> paths.bench().charged().stream().noneMatch(condition -> isProvedAt(condition, stored.point())))
                .forEach(stored -> findings.report(Severity.WARNING, at(paths, stored.point()), stored.point().name()
                        + " holds more than a person may touch (IEC 60335-1), and no condition is proved there: " + stored.energy().inWords() + ".",
                        "Declare a condition for it, proved at " + stored.point().name() + ". Where it lies in parallel with a point that is proved, say"
                                + " there what both store together.")));
    }

    /** A harmless point is proved, and one that may hold a dangerous charge is not. */
    private static void provedAtLess(ProcedurePaths paths, Findings findings) {
        List<Point> proved = paths.map().procedure().own().points().stream().filter(point -> paths.bench().charged().stream()
                .anyMatch(condition -> isProvedAt(condition, point))).toList();
        if (proved.stream().anyMatch(point -> point.carries().isEmpty() || UnitVoltage.isDangerous(point) || point.stores().isPresent())) {
            return;
        }
        paths.map().procedure().own().points().stream().filter(point -> mayStore(point) && UnitVoltage.isDangerous(point)).findFirst().ifPresent(point ->
                findings.report(Severity.WARNING, point.carries().orElseThrow().upTo().at(), point.name() + " carries up to "
                        + point.carries().orElseThrow().upTo().value() + " dc and may stay charged, and charge is proved absent only at "
                        + Listing.and(proved.stream().map(one -> one.name() + ", which carries " + one.carries().orElseThrow().upTo().value()).toList()) + ".",
                        "Prove it at " + point.name() + ": name the largest capacitor where the condition is proved. Where it cannot stay charged,"
                                + " say what it stores."));
    }

    private static void mayStay(SourceRange at, String what, String where, Findings findings) {
        findings.report(Severity.WARNING, at, what + ", and nothing says whether it stays charged when the supply is off.",
                "Say what it stores, such as: stores 100 uF. Or declare a condition, such as: condition Charge { present, absent } charged"
                        + " when present becomes present when Supply on proved at " + where + ".");
    }

    /** Direct voltage that is read where no point says what is carried. */
    private static void expected(ProcedurePaths paths, Findings findings) {
        paths.map().places().stream().filter(place -> paths.reaches(place) && place.step() instanceof Step.Measure).flatMap(place ->
                ExpectedVoltages.dangerous((Step.Measure) place.step()).filter(one -> one.kind() == QuantityKind.DC_VOLTAGE
                        && ExpectedVoltages.isOnlyExpected(one.reading().point().flatMap(paths.map().scope()::point))).map(one -> new Read(place, one)))
                .findFirst().ifPresent(read -> mayStay(PlaceText.at(read.place(), read.expected().limit().at()), PlaceText.subject(read.place())
                        + " expects " + read.expected().limit().value().spelling() + " dc",
                        read.expected().reading().point().map(Name::text).orElse("the point that it is read at"), findings));
    }

    private record Read(InlinedStep place, ExpectedVoltages.Expected expected) {
    }

    /** Whether each charge is proved at points that are of this unit: one of a library stands for the largest capacitor of any. */
    private static boolean provesElsewhere(ProcedurePaths paths) {
        List<Condition> charged = paths.bench().charged();
        return !charged.isEmpty() && charged.stream().allMatch(condition -> condition.proved().isPresent() && condition.proved().get().points().stream()
                .allMatch(name -> paths.map().procedure().own().points().stream().anyMatch(point -> point.name().text().equals(name.text()))));
    }

    private static boolean isProvedAt(Condition condition, Point point) {
        return condition.proved().stream().flatMap(proof -> proof.points().stream()).anyMatch(name -> name.text().equals(point.name().text()));
    }

    /** Direct voltage is smoothed by capacitors (common practice), which hold it after switching off. */
    private static boolean mayStore(Point point) {
        return point.stores().isEmpty() && point.isolated().isEmpty() && point.carries().filter(carried -> carried.kind() == QuantityKind.DC_VOLTAGE
                && carried.upTo().value().fits(carried.kind()) && VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point))
                        .filter(VoltageLimit::asksForNote).isPresent()).isPresent();
    }

    /** Whether a dead circuit is measured, a part is handled, or something is repaired or worked at with tools in the open unit. */
    private static boolean reachesIn(ProcedurePaths paths) {
        Repairs repairs = new Repairs(paths.map().procedure());
        return !DeadCircuit.readings(paths).isEmpty() || paths.map().places().stream().filter(paths::reaches).anyMatch(place ->
                paths.bench().at(place).stream().anyMatch(state -> !PartContact.inside(state, paths.map().scope()).isEmpty()
                        || state.isOpen() && LiveWork.isWork(place, repairs)));
    }

    /** Where the point says what it stores; of a point of a library, where the procedure first reads it. */
    private static SourceRange at(ProcedurePaths paths, Point point) {
        return paths.map().procedure().own().points().contains(point) ? point.stores().orElseThrow().at()
                : paths.map().places().stream().filter(paths::reaches).filter(place -> place.step() instanceof Step.Measure measure
                        && ProbePoints.points(measure, paths.map().scope()).contains(point)).findFirst()
                        .map(place -> PlaceText.at(place, place.step().name().at())).orElseThrow();
    }
}
