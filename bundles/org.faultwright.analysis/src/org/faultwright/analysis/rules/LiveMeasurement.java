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
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.BenchStates;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.InlinedStep;
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
    public Reach reach() {
        return Reach.PATHS;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).ifPresent(paths -> {
            Set<String> reported = new HashSet<>();
            DeadCircuit.readings(paths).forEach((place, kind) -> paths.bench().live()
                    .forEach(condition -> paths.bench().at(place).stream().filter(state -> state.isLive(condition))
                            .filter(state -> !DeadCircuit.isOutOfReach(state, paths.map().scope())).findFirst()
                            .filter(state -> reported.add(place.outermost().label() + " " + place.step().name() + " " + condition.name()))
                            .ifPresent(state -> report(paths, condition, kind, state, findings))));
        });
    }

    private static void report(ProcedurePaths paths, Condition condition, Written<QuantityKind> kind, BenchStates.State state,
            Findings findings) {
        InlinedStep place = state.place();
        findings.report(PlaceText.at(place, kind.at()),
                PlaceText.subject(place) + " measures " + kind.value().words() + " while " + condition.name()
                        + " may be " + state.value(condition) + ", which is live.",
                "Make the circuit dead first: the reading would be wrong, and the instrument or the unit may be damaged.",
                state.path(), paths.states(condition).map(states -> fixes(paths, place, states)).orElseGet(() -> new Fix[0]));
    }

    static Fix[] fixes(ProcedurePaths paths, InlinedStep place, ConditionStates states) {
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
