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
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Setting;

/** A step that needs a condition which some path to it has not established. */
public final class NeedNotEstablished implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("need-not-established", Severity.ERROR, Group.STATE,
            "A step needs a condition that not every path to it has established.");

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
            for (InlinedStep place : paths.map().places()) {
                for (Setting need : place.needs()) {
                    if (!Contradictions.isContradicted(need, place.needs(), paths.map().scope())) {
                        check(paths, place, need, findings, reported);
                    }
                }
            }
        });
    }

    private static void check(ProcedurePaths paths, InlinedStep place, Setting need, Findings findings, Set<String> reported) {
        Optional<Condition> condition = paths.map().scope().condition(need.condition()).filter(c -> c.has(need.value()));
        Optional<ConditionStates> states = condition.flatMap(paths::states);
        if (states.isEmpty()) {
            return;
        }
        List<Name> wrong = states.get().arriving(place).stream().filter(value -> !isSame(value, need.value())).toList();
        String once = place.outermost().label() + " " + place.step().name() + " " + need.condition();
        if (!wrong.isEmpty() && reported.add(once)) {
            Shortest shortest = Shortest.of(wrong, value -> states.get().pathArriving(place, value));
            findings.report(PlaceText.at(place, need.at()),
                    PlaceText.subject(place) + " needs " + need.condition() + " " + need.value()
                            + ", but a path comes to it with " + need.condition() + " " + shortest.value() + ".",
                    "Set it before, by a step that \"sets\" it or by a routine.", shortest.path(),
                    new SettingFixes(paths, states.get()).before(place, need.value(), value -> !isSame(value, need.value())));
        }
    }

    private static boolean isSame(Name one, Name other) {
        return one.text().equals(other.text());
    }
}
