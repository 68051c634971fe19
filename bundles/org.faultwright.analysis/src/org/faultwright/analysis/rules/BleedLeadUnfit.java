/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

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
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
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
