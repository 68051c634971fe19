/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.Closures;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.StoredEnergy;

/** A wait for a charge to drain that ends while it is still dangerous: V(t) = V0·e^(−t/RC). */
public final class WaitTooShort implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("wait-too-short", Severity.WARNING, Group.STATE,
            "A wait for a charge to drain ends while the charge is still dangerous.");

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
        ProcedurePaths.of(subject).filter(paths -> !paths.bench().charged().isEmpty()).ifPresent(paths -> {
            Set<String> reported = new HashSet<>();
            paths.map().places().stream().filter(InlinedStep::isStep).forEach(place -> wait(paths, place).ifPresent(wait ->
                    StoredCharges.dangerous(paths).stream().filter(stored -> isLeft(stored.energy(), wait))
                            .filter(stored -> mayBeCharged(paths, place) && isForCharge(paths, place, subject)).findFirst()
                            .filter(stored -> reported.add(place.step().name() + " " + place.step().at().source().name()))
                            .ifPresent(stored -> report(paths, place, wait, stored, findings))));
        });
    }

    /** Of a step that bleeds it is another rule that says how long; hands on any other part drain nothing. */
    private static Optional<Quantity> wait(ProcedurePaths paths, InlinedStep place) {
        boolean bleeds = place.handles().stream().flatMap(name -> paths.map().scope().part(name).stream()).anyMatch(part -> part.drains().isPresent());
        return bleeds ? Optional.empty() : place.step().frame().waits().map(Written::value)
                .filter(time -> time.fits(QuantityKind.TIME) && time.value().signum() > 0);
    }

    private static boolean isLeft(StoredEnergy stored, Quantity wait) {
        return stored.after(wait.base()).base().compareTo(StoredEnergy.SAFE.base()) > 0;
    }

    private static boolean mayBeCharged(ProcedurePaths paths, InlinedStep place) {
        return charged(paths, place).isPresent();
    }

    private static Optional<BenchStates.State> charged(ProcedurePaths paths, InlinedStep place) {
        return paths.bench().at(place).stream().filter(state -> state.staysLive().isEmpty()
                && paths.bench().charged().stream().anyMatch(state::isCharged)).findFirst();
    }

    /** Whether it is the charge that is waited for: the step tells of it, or goes in at once, or a proof follows before any other wait. */
    private static boolean isForCharge(ProcedurePaths paths, InlinedStep place, Subject subject) {
        return goesIn(paths, place) || place.notes().stream().flatMap(name -> paths.map().scope().note(name).stream())
                .anyMatch(note -> note.covers().stream().anyMatch(covered -> covered.value() == Hazard.STORED_CHARGE))
                || proofFollows(paths, place, subject);
    }

    /** Whether hands go in at this very step, without anything measured. */
    private static boolean goesIn(ProcedurePaths paths, InlinedStep place) {
        return place.hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE)
                || place.sets().stream().anyMatch(setting -> paths.map().scope().condition(setting.condition())
                        .filter(Closures::isClosure).flatMap(closure -> closure.ends())
                        .filter(end -> !end.text().equals(setting.value().text())).isPresent());
    }

    private static boolean proofFollows(ProcedurePaths paths, InlinedStep from, Subject subject) {
        Deque<InlinedStep> open = new ArrayDeque<>(paths.map().ways(from).stream().flatMap(way -> way.to().stream()).toList());
        Set<InlinedStep> seen = new HashSet<>();
        while (!open.isEmpty()) {
            InlinedStep place = open.remove();
            if (!seen.add(place) || !place.caller().equals(from.caller()) || place.step().frame().waits().isPresent()) {
                continue;
            }
            if (place.step() instanceof Step.Measure && place.step().outcomes().stream().flatMap(one -> one.proves().stream())
                    .anyMatch(setting -> ChargeProofs.claimed(setting, subject).isPresent())) {
                return true;
            }
            paths.map().ways(place).stream().flatMap(way -> Stream.concat(way.to().stream(), way.otherwise().stream())).forEach(open::add);
        }
        return false;
    }

    private static void report(ProcedurePaths paths, InlinedStep place, Quantity wait, StoredCharges.Stored stored, Findings findings) {
        BenchStates.State state = charged(paths, place).orElseThrow();
        findings.report(goesIn(paths, place) ? Severity.ERROR : Severity.WARNING,
                PlaceText.at(place, place.step().frame().waits().orElseThrow().at()), PlaceText.subject(place) + " waits " + wait.spelling()
                        + ", and " + stored.point().name() + " can then still have " + volts(stored.energy().after(wait.base())) + ". It holds "
                        + stored.energy().inWords() + ".",
                stored.energy().ohms().isPresent() ? "Bleed it through a lead made for it, or wait that long; then measure."
                        : "Waiting does not help: bleed it through a lead made for it, then measure.", state.path());
    }

    static String volts(Quantity voltage) {
        return voltage.base().ceiling() + " V";
    }
}
