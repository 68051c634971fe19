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
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** A routine that performs itself, straight or by way of another, never comes to an end; a library that uses itself is read by halves. */
public final class RoutineRecursion implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("routine-recursion", Severity.ERROR, Group.PATHS,
            "A routine performs itself, or a library uses itself.");

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
        UsedLibraries.circles(subject, findings);
        for (Routine routine : subject.document().own().routines()) {
            for (Step step : routine.steps()) {
                Optional<Routine> performed = subject.scope().performedBy(step);
                if (performed.isPresent() && performs(performed.get(), routine, subject.scope(), new HashSet<>())) {
                    Step.Perform perform = (Step.Perform) step;
                    findings.report(perform.routine().get().at(), routine.name() + " performs "
                            + (performed.get() == routine ? "itself" : performed.get().name() + ", which performs "
                            + routine.name() + " again")
                            + " in " + step.name() + ".",
                            "Write the steps that are to be repeated as a bounded loop instead.");
                }
            }
        }
    }

    private static boolean performs(Routine from, Routine wanted, Scope scope, Set<String> seen) {
        if (from == wanted) {
            return true;
        }
        if (!seen.add(from.name().text())) {
            return false;
        }
        List<Routine> next = from.steps().stream().flatMap(step -> scope.performedBy(step).stream()).toList();
        return next.stream().anyMatch(routine -> performs(routine, wanted, scope, seen));
    }
}
