/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.QuantityKind;

/** A charge called absent by a reading at a point that does not carry it. */
public final class ProofElsewhere implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("proof-elsewhere", Severity.ERROR, Group.STATE,
            "A charge is called absent by a reading at no point, or at one that does not carry it.");

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
        for (ChargeProofs.Claim claim : ChargeProofs.of(subject)) {
            if (claim.step() instanceof Step.Measure measure
                    && measure.kind().filter(kind -> kind.value() == QuantityKind.DC_VOLTAGE).isPresent()) {
                check(claim, measure, subject, findings);
            }
        }
    }

    private static void check(ChargeProofs.Claim claim, Step.Measure step, Subject subject, Findings findings) {
        String proves = " proves " + Contradictions.spoken(claim.setting());
        if (!step.rows().isEmpty()) {
            table(claim, step, proves, subject, findings);
            return;
        }
        Optional<Point> point = step.point().flatMap(subject.scope()::point);
        step.against().ifPresent(name -> subject.scope().point(name).filter(other -> mayHold(other, claim)).ifPresent(other ->
                findings.report(name.at(), step.name() + proves + " against " + other.name()
                        + ", which may be charged too: between two charged points nothing is read.",
                        "Read it against a point that holds no charge.")));
        if (step.point().isEmpty()) {
            findings.report(claim.setting().at(), step.name() + proves + " and does not say where it is read.",
                    "Say at which point: " + where(claim) + ".", at(step, claim));
        } else if (point.isPresent() && !carriesIt(point.get(), claim)) {
            findings.report(step.point().get().at(), step.name() + proves + " at " + point.get().name() + ", "
                    + reason(point.get(), claim) + ".", "Read it " + where(claim) + ".",
                    places(claim).stream().map(name -> Fix.replacing("Read at " + name, step.point().get().at(), name.text()))
                            .toArray(Fix[]::new));
        }
    }

    /** One of the readings is enough: the result holds for all of them. */
    private static void table(ChargeProofs.Claim claim, Step.Measure step, String proves, Subject subject, Findings findings) {
        if (step.rows().stream().flatMap(row -> subject.scope().point(row.point()).stream()).noneMatch(point -> carriesIt(point, claim))) {
            findings.report(claim.setting().at(), step.name() + proves + " and reads no point that carries it.",
                    "Add a reading " + where(claim) + ".");
        }
    }

    private static List<Name> places(ChargeProofs.Claim claim) {
        return claim.condition().proved().map(proof -> proof.points()).orElse(List.of());
    }

    private static boolean carriesIt(Point point, ChargeProofs.Claim claim) {
        return claim.condition().proved().isPresent()
                ? places(claim).stream().anyMatch(name -> name.text().equals(point.name().text()))
                : !isCutOff(point) && mayBeCharged(point);
    }

    /** Where the condition does not say, a point that declares charge or carries a dangerous dc voltage may be the one. */
    private static boolean mayBeCharged(Point point) {
        return DeadCircuit.stores(point) || point.carries().filter(carried -> carried.kind() == QuantityKind.DC_VOLTAGE)
                .filter(carried -> carried.upTo().value().fits(carried.kind())).filter(carried -> UnitVoltage.volts(point)
                        .compareTo(VoltageLimit.ENERGY_CLASS_1.volts(carried.kind()).orElseThrow()) > 0).isPresent();
    }

    private static boolean mayHold(Point point, ChargeProofs.Claim claim) {
        return point.stores().isPresent() || mayBeCharged(point) || places(claim).stream().anyMatch(name -> name.text().equals(point.name().text()));
    }

    private static boolean isCutOff(Point point) {
        return point.isolated().isPresent() && !DeadCircuit.stores(point);
    }

    private static String reason(Point point, ChargeProofs.Claim claim) {
        return claim.condition().proved().isPresent() ? "where it is not carried"
                : isCutOff(point) ? "which is isolated and can hold none" : "which says nothing of a charge";
    }

    private static String where(ChargeProofs.Claim claim) {
        return claim.condition().proved().isPresent() ? "at " + Listing.or(places(claim).stream().map(Name::text).toList())
                : "at the point that carries the charge, and say at " + claim.condition().name() + " which one that is: proved at";
    }

    private static Fix[] at(Step.Measure step, ChargeProofs.Claim claim) {
        return step.kind().stream().flatMap(kind -> places(claim).stream().map(name -> Fix.replacing("Read at " + name,
                new SourceRange(kind.at().source(), kind.at().end(), 0), " at " + name)))
                .toArray(Fix[]::new);
    }
}
