/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;

/** A procedure that concludes nothing, or a routine that is never left. */
public final class NoConclusion implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("no-conclusion", Severity.ERROR, Group.PATHS,
            "A procedure has no conclusion, or a routine no exit.");

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
        subject.procedure().ifPresent(procedure -> procedure(procedure, findings));
        subject.document().own().routines().forEach(routine -> routine(routine, findings));
    }

    private static void procedure(Procedure procedure, Findings findings) {
        Name name = procedure.name();
        if (procedure.steps().isEmpty()) {
            findings.report(name.at(), (name.text().isEmpty() ? "This text" : name.text()) + " has no step.",
                    "Add the first check, and a conclusion for it to lead to.");
        } else if (procedure.steps().stream().noneMatch(Step.Conclude.class::isInstance)) {
            findings.report(name.at(), name + " has no conclusion.",
                    "Add one, as in this line: conclude Repaired \"Repaired\" { finds SomeFault }.");
        }
    }

    private static void routine(Routine routine, Findings findings) {
        if (routine.exits().isEmpty()) {
            findings.report(routine.name().at(), "The routine " + routine.name() + " has no exit.",
                    "Name its exits, as in \"exits done, failed\".");
        }
    }
}
