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
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.Hands;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** A reading of a dead circuit, or a part touched, while charge may still be stored. */
public final class ChargeNotProvedAbsent implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("charge-not-proved-absent", Severity.ERROR, Group.STATE,
            "Resistance or the like is measured, or a part handled, while stored charge is not proved absent.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Map<Place, Written<QuantityKind>> readings = DeadCircuit.readings(paths);
            Set<String> reported = new HashSet<>();
            for (Condition condition : paths.map().conditions()) {
                if (!condition.charged().isEmpty()) {
                    paths.states(condition).ifPresent(states -> paths.map().places().stream().filter(paths::reaches)
                            .forEach(place -> touched(paths, place, readings)
                                    .ifPresent(what -> check(paths, place, what, states, findings, reported))));
                }
            }
        });
    }

    /** What is done to the circuit, and the words that say so. */
    private record Touch(String what, SourceRange at) {
    }

    private static Optional<Touch> touched(ProcedurePaths paths, Place place, Map<Place, Written<QuantityKind>> readings) {
        if (readings.containsKey(place)) {
            return Optional.of(new Touch("measures " + readings.get(place).value().words(), readings.get(place).at()));
        }
        boolean told = place.notes().stream().flatMap(name -> paths.map().scope().note(name).stream())
                .anyMatch(note -> note.covers().stream().anyMatch(covered -> covered.value() == Hazard.STORED_CHARGE));
        return told ? Optional.empty() : Hands.inside(place, paths.map().scope()).stream().findFirst()
                .map(part -> new Touch("handles " + part, part.at()));
    }

    private static void check(ProcedurePaths paths, Place place, Touch touch, ConditionStates states, Findings findings,
            Set<String> reported) {
        Condition condition = states.condition();
        List<Name> charged = states.holding(place).stream()
                .filter(value -> LiveMeasurement.isAmong(condition.charged(), value)).toList();
        String once = place.outermost().label() + " " + place.step().name() + " " + condition.name();
        if (charged.isEmpty() || !reported.add(once)) {
            return;
        }
        Shortest shortest = Shortest.of(charged, value -> states.pathHolding(place, value));
        findings.report(PlaceText.at(place, touch.at()),
                PlaceText.subject(place) + " " + touch.what() + " while " + condition.name() + " may be "
                        + shortest.value() + ".",
                "Prove the charge absent first, by a result that says: proves " + condition.name() + " "
                        + uncharged(condition).map(Name::text).orElse("absent") + ".",
                shortest.path(), uncharged(condition).map(value -> new SettingFixes(paths, states)
                        .before(place, value, one -> LiveMeasurement.isAmong(condition.charged(), one)))
                        .orElseGet(() -> new Fix[0]));
    }

    private static Optional<Name> uncharged(Condition condition) {
        return condition.values().stream().filter(value -> !LiveMeasurement.isAmong(condition.charged(), value)).findFirst();
    }
}
