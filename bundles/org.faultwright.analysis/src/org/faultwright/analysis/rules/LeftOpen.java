/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;

/** A conclusion reached while a condition is not as it must be left. */
public final class LeftOpen implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("left-open", Severity.ERROR, Group.STATE,
            "A conclusion is reached while a condition is not at the value it must end with.");

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
            for (Condition condition : paths.map().conditions()) {
                condition.ends().filter(condition::has).ifPresent(end -> paths.states(condition)
                        .ifPresent(states -> paths.map().places().stream()
                                .filter(place -> place.step() instanceof Step.Conclude)
                                .forEach(place -> check(paths, place, end, states, findings, reported))));
            }
        });
    }

    private static void check(ProcedurePaths paths, InlinedStep place, Name end, ConditionStates states, Findings findings,
            Set<String> reported) {
        Name condition = states.condition().name();
        List<Name> wrong = states.holding(place).stream().filter(value -> !value.text().equals(end.text())).toList();
        if (!wrong.isEmpty() && reported.add(place.outermost().label() + " " + place.step().name() + " " + condition)) {
            Shortest shortest = Shortest.of(wrong, value -> states.pathHolding(place, value));
            findings.report(PlaceText.at(place),
                    PlaceText.subject(place) + " is reached with " + condition + " " + shortest.value()
                            + "; it must end " + end + ".",
                    "Put it back before concluding.", shortest.path(),
                    new SettingFixes(paths, states).before(place, end, value -> !value.text().equals(end.text())));
        }
    }
}
