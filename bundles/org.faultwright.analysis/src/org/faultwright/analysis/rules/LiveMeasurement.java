/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.QuantityKind;

/** A reading for which the instrument feeds a dead circuit, taken while the circuit may be live. */
public final class LiveMeasurement implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-measurement", Severity.ERROR, Group.STATE,
            "Resistance, continuity, a diode, capacitance or inductance is measured while the circuit may be live.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Set<String> reported = new HashSet<>();
            DeadCircuit.readings(paths).forEach((place, kind) -> paths.map().conditions().stream()
                    .filter(condition -> !condition.live().isEmpty())
                    .flatMap(condition -> paths.states(condition).stream())
                    .forEach(states -> check(paths, place, kind, states, findings, reported)));
        });
    }

    private static void check(ProcedurePaths paths, Place place, Written<QuantityKind> kind, ConditionStates states,
            Findings findings, Set<String> reported) {
        Condition condition = states.condition();
        List<Name> live = states.holding(place).stream().filter(value -> isAmong(condition.live(), value)).toList();
        String once = place.outermost().label() + " " + place.step().name() + " " + condition.name();
        if (live.isEmpty() || !reported.add(once)) {
            return;
        }
        Shortest shortest = Shortest.of(live, value -> states.pathHolding(place, value));
        findings.report(PlaceText.at(place, kind.at()),
                PlaceText.subject(place) + " measures " + kind.value().words() + " while " + condition.name()
                        + " may be " + shortest.value() + ", which is live.",
                "Make the circuit dead first: the reading would be wrong, and the instrument or the unit may be damaged.",
                shortest.path(), fixes(paths, place, states));
    }

    private static Fix[] fixes(ProcedurePaths paths, Place place, ConditionStates states) {
        Condition condition = states.condition();
        boolean asksForIt = place.needs().stream()
                .anyMatch(need -> need.condition().text().equals(condition.name().text()));
        return asksForIt ? new Fix[0] : condition.values().stream().filter(value -> !isAmong(condition.live(), value))
                .findFirst().map(dead -> new SettingFixes(paths, states)
                        .before(place, dead, value -> isAmong(condition.live(), value))).orElseGet(() -> new Fix[0]);
    }

    static boolean isAmong(List<Name> values, Name value) {
        return values.stream().anyMatch(one -> one.text().equals(value.text()));
    }
}
