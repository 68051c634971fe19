/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;

/** An exit that no step of the routine leads to. */
public final class UnusedExit implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unused-exit", Severity.WARNING, Group.PATHS,
            "A routine names an exit that none of its steps leads to.");

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
        for (Routine routine : subject.document().own().routines()) {
            Set<String> used = routine.steps().stream().flatMap(step -> step.outcomes().stream())
                    .flatMap(UnusedExit::targets)
                    .map(Name::text).collect(Collectors.toSet());
            routine.exits().stream().filter(exit -> !used.contains(exit.text())).forEach(exit -> findings.report(exit.at(),
                    "No step of " + routine.name() + " leads to its exit \"" + exit + "\".",
                    "Let an outcome lead to it, or remove it from the exits."));
        }
    }

    private static Stream<Name> targets(Outcome outcome) {
        return Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream());
    }
}
