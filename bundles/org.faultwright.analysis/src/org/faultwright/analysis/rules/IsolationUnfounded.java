/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.PartContact;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Isolation;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** A point that carries a dangerous voltage or stores a charge, and is said to be isolated whatever the set-up. */
public final class IsolationUnfounded implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("isolation-unfounded", Severity.ERROR, Group.STATE,
            "A point or part that carries a dangerous voltage or stores a charge is said to be isolated always, or by switching off alone.");

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
        subject.document().own().points().stream().filter(point -> point.isolated().filter(isolated -> isolated.when().isEmpty()).isPresent())
                .forEach(point -> check(point, DocumentSteps.of(subject, Step.Measure.class).flatMap(ExpectedVoltages::dangerous)
                        .filter(one -> one.reading().point().filter(name -> name.text().equals(point.name().text())).isPresent()).findFirst(), findings));
        subject.document().own().points().stream().filter(point -> holdsCharge(point)).forEach(point -> point.isolated()
                .filter(isolated -> isOnlySwitchedOff(isolated, subject.scope())).ifPresent(isolated -> switchedOff(point.name(), isolated, findings)));
        subject.document().own().parts().stream().filter(part -> PartContact.isDangerous(Optional.of(part)))
                .forEach(part -> part.isolated().ifPresent(isolated -> check(part, isolated, subject.scope(), findings)));
    }

    private static void check(Part part, Isolation isolated, Scope scope, Findings findings) {
        if (isolated.when().isEmpty()) {
            findings.report(isolated.at(), part.name() + " is said to be always isolated, and it declares "
                    + Listing.and(part.hazards().stream().map(hazard -> hazard.value().word()).toList()) + ".",
                    "Say when it is isolated, as in: isolated when Plug drawn. What is drawn keeps its own charge.");
        } else if (isOnlySwitchedOff(isolated, scope) && part.hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE)) {
            switchedOff(part.name(), isolated, findings);
        }
    }

    private static void switchedOff(Name name, Isolation isolated, Findings findings) {
        findings.report(isolated.at(), name + " is said to be isolated when " + Contradictions.spoken(isolated.when().get(0))
                + ", and it may hold a charge: switching off keeps no charge away.",
                "Take it out, and prove the charge absent; or say what cuts it off, such as: isolated when Plug drawn.");
    }

    /** Whether nothing but a supply that is off is to keep everything away. */
    private static boolean isOnlySwitchedOff(Isolation isolated, Scope scope) {
        return !isolated.when().isEmpty() && isolated.when().stream().allMatch(setting -> scope.condition(setting.condition())
                .filter(condition -> !condition.live().isEmpty() && !LiveMeasurement.isAmong(condition.live(), setting.value())).isPresent());
    }

    /** A dangerous direct voltage is smoothed by capacitors (common practice). */
    private static boolean holdsCharge(Point point) {
        return DeadCircuit.stores(point) || point.carries().filter(carried -> carried.kind() == QuantityKind.DC_VOLTAGE
                && carried.upTo().value().fits(carried.kind()) && VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point))
                        .filter(VoltageLimit::asksForNote).isPresent()).isPresent();
    }

    private static void check(Point point, Optional<ExpectedVoltages.Expected> expected, Findings findings) {
        boolean carries = point.carries().filter(carried -> carried.upTo().value().fits(carried.kind()))
                .flatMap(carried -> VoltageLimit.exceededBy(carried.kind(), UnitVoltage.volts(point))).filter(VoltageLimit::asksForNote).isPresent();
        if (carries || StoredCharges.dangerous(point).isPresent() || expected.isPresent()) {
            findings.report(point.isolated().orElseThrow().at(), point.name() + " is said to be always isolated, and "
                    + (carries ? "it carries up to " + point.carries().orElseThrow().upTo().value()
                    : expected.isPresent() ? expected.get().reading().name() + " expects " + expected.get().limit().value().spelling() + " there"
                            : "it stores a charge") + ".",
                    "Say when it is isolated, as in: isolated when Plug drawn. What never carries a voltage needs no \"carries\".");
        }
    }
}
