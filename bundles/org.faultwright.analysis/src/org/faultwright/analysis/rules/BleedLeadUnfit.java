/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.StoredEnergy;

/** A bleed lead that takes more power than it is made for, or is held too short. */
public final class BleedLeadUnfit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("bleed-lead-unfit", Severity.ERROR, Group.STATE,
            "A bleed lead takes more power than it is rated for, or is held too short to drain the charge.");
    /** Common practice for wire-wound resistors, from memory: five times the rating for a few seconds. */
    private static final Exact OVERLOAD = Exact.of(5);
    /** What a lead may take at first where its rating is not said, in watts: five times the 50 W of a common wire-wound one, from memory. */
    private static final Exact UNRATED = Exact.of(250);

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
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(paths::reaches).forEach(place -> place.handles().forEach(name ->
                    paths.map().scope().part(name).filter(part -> resistance(part).isPresent())
                            .ifPresent(part -> check(paths, place, name, part, findings, reported))));
        });
    }

    private static Optional<Exact> resistance(Part part) {
        return part.drains().map(Written::value).filter(ohms -> ohms.fits(QuantityKind.RESISTANCE) && ohms.value().signum() > 0)
                .map(Quantity::base);
    }

    private static void check(ProcedurePaths paths, InlinedStep place, Name name, Part part, Findings findings, Set<String> reported) {
        Exact ohms = resistance(part).orElseThrow();
        Optional<Exact> rated = part.rated().map(Written::value).filter(power -> power.fits(QuantityKind.POWER)).map(Quantity::base);
        Optional<Quantity> held = place.step().frame().waits().map(Written::value).filter(time -> time.fits(QuantityKind.TIME)
                && time.value().signum() > 0);
        List<StoredCharges.Stored> charges = StoredCharges.dangerous(paths);
        if (charges.isEmpty() && bleedsUnsaid(paths, place, name, part, ohms, rated, findings, reported)) {
            return;
        }
        Optional<StoredCharges.Stored> burning = charges.stream().filter(stored -> rated.filter(power -> power.times(OVERLOAD)
                .compareTo(atFirst(stored, ohms)) < 0).isPresent()).findFirst();
        Optional<StoredCharges.Stored> left = charges.stream().filter(stored -> held.filter(time -> stored.energy().drainedAlsoBy(ohms)
                .after(time.base()).base().compareTo(StoredEnergy.SAFE.base()) > 0).isPresent()).findFirst();
        if (burning.or(() -> left).isPresent() && reported.add(place.step().name() + " " + part.name())) {
            burning.ifPresentOrElse(stored -> findings.report(Severity.ERROR, PlaceText.at(place, name.at()), drains(place, stored, part)
                    + ", rated " + part.rated().orElseThrow().value() + "; it takes " + atFirst(stored, ohms).ceiling() + " W at first.",
                    "Use a lead of more ohms or watts: more than five times its rating is too much even for seconds."),
                    () -> left(place, name, part, left.orElseThrow(), ohms, held.orElseThrow(), findings));
        }
    }

    /** A charge of which nothing says how much it is: what the lead takes at first follows from its voltage alone. */
    private static boolean bleedsUnsaid(ProcedurePaths paths, InlinedStep place, Name name, Part part, Exact ohms, Optional<Exact> rated, Findings findings,
            Set<String> reported) {
        Optional<Point> hot = paths.bench().charged().stream().flatMap(condition -> condition.proved().stream()).flatMap(proof -> proof.points().stream())
                .flatMap(point -> paths.map().scope().point(point).stream()).filter(UnitVoltage::isDangerous).filter(point -> point.stores().isEmpty()
                        && point.carries().orElseThrow().kind() == QuantityKind.DC_VOLTAGE).max(Comparator.comparing(UnitVoltage::volts));
        Optional<Exact> taken = hot.map(point -> UnitVoltage.volts(point).squared().dividedBy(ohms));
        boolean burns = taken.filter(power -> rated.map(most -> most.times(OVERLOAD).compareTo(power) < 0).orElse(power.compareTo(UNRATED) > 0)).isPresent();
        if (burns && reported.add(place.step().name() + " " + part.name())) {
            findings.report(Severity.ERROR, PlaceText.at(place, name.at()), PlaceText.subject(place) + " drains " + hot.orElseThrow().name() + " through "
                    + part.name() + ", " + part.rated().map(power -> "rated " + power.value()).orElse("of which nothing says what power it is rated for")
                    + "; it takes " + taken.orElseThrow().ceiling() + " W at first.",
                    "Use a lead of more ohms or watts: more than five times its rating is too much even for seconds.");
        }
        return burns;
    }

    private static void left(InlinedStep place, Name name, Part part, StoredCharges.Stored stored, Exact ohms, Quantity held, Findings findings) {
        StoredEnergy bled = stored.energy().drainedAlsoBy(ohms);
        findings.report(Severity.WARNING, PlaceText.at(place, name.at()), drains(place, stored, part) + " for " + held.spelling() + "; "
                + WaitTooShort.volts(bled.after(held.base())) + " are left then.",
                "Hold it for " + bled.timeTo(StoredEnergy.SAFE.base()).orElseThrow().base().ceiling() + " s at least, then measure.");
    }

    private static String drains(InlinedStep place, StoredCharges.Stored stored, Part part) {
        return PlaceText.subject(place) + " drains " + stored.point().name() + " through " + part.name();
    }

    /** P = V²/R in the lead, in watts. */
    private static Exact atFirst(StoredCharges.Stored stored, Exact ohms) {
        return stored.energy().volts().squared().dividedBy(ohms);
    }
}
