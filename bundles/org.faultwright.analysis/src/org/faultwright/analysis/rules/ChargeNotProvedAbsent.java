/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.PartContact;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.analysis.paths.UnitVoltage;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** A reading of a dead circuit, or a part touched, while charge may still be stored. */
public final class ChargeNotProvedAbsent implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("charge-not-proved-absent", Severity.ERROR, Group.STATE,
            "Resistance or the like is measured, a part handled, or work done inside, while stored charge is not proved absent.");

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
            Map<InlinedStep, Written<QuantityKind>> readings = DeadCircuit.readings(paths);
            Repairs repairs = new Repairs(paths.map().procedure());
            boolean dangerous = UnitVoltage.of(paths).dangerous().isPresent();
            Set<String> reported = new HashSet<>();
            for (Condition condition : paths.bench().charged()) {
                paths.map().places().forEach(place -> paths.bench().at(place).stream()
                        .filter(state -> state.isCharged(condition) && touched(paths, repairs, dangerous, state, readings).isPresent()).findFirst()
                        .filter(state -> reported.add(place.outermost().label() + " " + place.step().name() + " " + condition.name()))
                        .ifPresent(state -> report(paths, condition, touched(paths, repairs, dangerous, state, readings).get(), state, findings)));
            }
        });
    }

    /** What is done to the circuit, and the words that say so. */
    private record Touch(String what, SourceRange at) {
    }

    private static Optional<Touch> touched(ProcedurePaths paths, Repairs repairs, boolean dangerous, BenchStates.State state,
            Map<InlinedStep, Written<QuantityKind>> readings) {
        InlinedStep place = state.place();
        Scope scope = paths.map().scope();
        if (readings.containsKey(place)) {
            return DeadCircuit.isOutOfReachOfCharge(state, scope) ? Optional.empty()
                    : Optional.of(new Touch("measures " + readings.get(place).value().words(), readings.get(place).at()));
        }
        boolean told = place.notes().stream().flatMap(name -> scope.note(name).stream())
                .anyMatch(note -> note.covers().stream().anyMatch(covered -> covered.value() == Hazard.STORED_CHARGE));
        boolean drains = !repairs.isRepair(place) && drains(paths, place);
        boolean waits = dangerous && (repairs.isRepair(place) || isInside(state) && !drains);
        return PartContact.inside(place, scope).stream().filter(name -> !isKeptFrom(state, scope.part(name)))
                .filter(name -> !told || !isEnoughToKnow(waits, scope.part(name))).findFirst()
                .map(part -> new Touch("handles " + part, part.at()))
                .or(() -> dangerous && isInside(state) && worksAtCharge(place, repairs) && !(told && (drains || place.step() instanceof Step.Check))
                        ? Optional.of(new Touch("works in the open unit", place.step().name().at())) : Optional.empty());
    }

    /** What is drawn is kept from the charge of the unit, and keeps its own. */
    private static boolean isKeptFrom(BenchStates.State state, Optional<Part> part) {
        return state.keepsAway(part.flatMap(Part::isolated))
                && part.stream().flatMap(one -> one.hazards().stream()).noneMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE);
    }

    /**
     * A cover comes off before anything can be measured, and a bleed lead goes where charge is. Where the unit is open already, or repaired, a
     * dangerous voltage waits for the proof.
     */
    private static boolean isEnoughToKnow(boolean waits, Optional<Part> part) {
        return part.flatMap(Part::drains).isPresent() || !waits && !PartContact.isDangerous(part);
    }

    /** Whether hands go into what is open already, and neither open nor close anything. What is done live is asked of by other rules. */
    private static boolean isInside(BenchStates.State state) {
        return state.isOpen() && state.staysLive().isEmpty() && !state.movesClosure();
    }

    /** Whether one goes to the charge on purpose: the step has that hazard itself, or nothing comes between it and the reading that proves. */
    private static boolean drains(ProcedurePaths paths, InlinedStep place) {
        return place.step().frame().hazards().stream().anyMatch(hazard -> hazard.value() == Hazard.STORED_CHARGE)
                || !paths.map().ways(place).isEmpty() && paths.map().ways(place).stream().allMatch(way -> way.to().filter(to -> proves(paths, to)).isPresent());
    }

    private static boolean proves(ProcedurePaths paths, InlinedStep place) {
        return place.step() instanceof Step.Measure && place.step().outcomes().stream().flatMap(outcome -> outcome.proves().stream())
                .anyMatch(setting -> paths.map().scope().condition(setting.condition()).filter(condition -> condition.isWithoutCharge(setting.value())).isPresent());
    }

    /** A repair, or tools in use; not a meter tried at the bench edge, nor a lead that drains. */
    private static boolean worksAtCharge(InlinedStep place, Repairs repairs) {
        return LiveWork.isWork(place, repairs) && place.handles().isEmpty() && place.step().frame().precautions().tries().isEmpty();
    }

    private static void report(ProcedurePaths paths, Condition condition, Touch touch, BenchStates.State state, Findings findings) {
        InlinedStep place = state.place();
        findings.report(PlaceText.at(place, touch.at()),
                PlaceText.subject(place) + " " + touch.what() + " while " + condition.name() + " may be "
                        + state.value(condition) + voided(condition, state) + ".",
                "Prove the charge absent first, by an outcome that says \"proves " + condition.name() + " "
                        + uncharged(condition).map(Name::text).orElse("absent") + "\".",
                state.path(), paths.states(condition).flatMap(states -> uncharged(condition).map(value ->
                        new SettingFixes(paths, states).before(place, value, one -> LiveMeasurement.isAmong(condition.charged(), one))))
                        .orElseGet(() -> new Fix[0]));
    }

    /** Where it had been proved absent on the way, and came back. */
    private static String voided(Condition condition, BenchStates.State state) {
        List<BenchStates.State> way = state.way();
        for (int i = way.size() - 1; i > 0; i--) {
            if (!way.get(i - 1).isCharged(condition)) {
                return "; that it was proved absent no longer counts since " + way.get(i - 1).place().label();
            }
        }
        return "";
    }

    private static Optional<Name> uncharged(Condition condition) {
        return condition.values().stream().filter(value -> !LiveMeasurement.isAmong(condition.charged(), value)).findFirst();
    }
}
