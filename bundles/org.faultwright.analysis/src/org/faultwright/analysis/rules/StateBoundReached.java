/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Locale;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.ConditionStates;
import org.faultwright.analysis.paths.Exploration;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.SourceRange;

/** More states than are looked at, so that something about the paths stays open. */
public final class StateBoundReached implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("state-bound-reached", Severity.WARNING, Group.PATHS,
            "There are more states than are looked at one by one, so that something stays open.");

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
            SourceRange at = paths.map().procedure().name().at();
            if (!paths.isComplete()) {
                findings.report(at, "There are more than " + spaced(Exploration.MOST_STATES)
                        + " states; what was not looked at may hold further findings.",
                        "Split the procedure, or give its steps to routines checked on their own.");
            } else if (!paths.countsRepeats()) {
                findings.report(at, "The bounds on repeats make more than " + spaced(ProcedurePaths.MOST_COUNTED)
                        + " states, so they were taken as open: no path is missed, but one shown may repeat too often.",
                        "Use smaller bounds, or fewer of them in one loop.");
            }
            if (paths.isComplete()) {
                paths.map().conditions().stream().flatMap(condition -> paths.states(condition).stream())
                        .forEach(states -> check(paths, states, at, findings));
            }
            paths.map().tooLarge().stream().filter(paths::reaches).findFirst().ifPresent(place ->
                    findings.report(PlaceText.at(place), place.label() + " and the routines inside it are not looked"
                            + " into: written out, they would make more than 50 000 steps or stand more than 100 levels deep.",
                            "Let fewer routines perform others."));
        });
    }

    private static void check(ProcedurePaths paths, ConditionStates states, SourceRange at, Findings findings) {
        String name = states.condition().name().text();
        if (!states.isComplete()) {
            findings.report(at, "The conditions that force " + name + " make more than " + spaced(Exploration.MOST_STATES)
                    + " states; nothing is claimed about the values not met.", "Let fewer conditions force it.");
        } else if (paths.countsRepeats() && !states.countsRepeats()) {
            findings.report(at, "The values of " + name + " and the bounds on repeats make more than "
                    + spaced(Exploration.MOST_STATES) + " states, so for it the bounds were taken as open: no path is"
                    + " missed, but one shown may repeat too often.", "Use smaller bounds, or fewer of them in one loop.");
        }
    }

    private static String spaced(int number) {
        return String.format(Locale.ROOT, "%,d", number).replace(',', ' ');
    }
}
