/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;

/** What a step does not name would lead to a conclusion that says something of the unit, or to work: then it leads nowhere. */
public final class OtherwiseClaims implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("otherwise-claims", Severity.ERROR, Group.PATHS,
            "What a step does not name leads to a conclusion that refers the unit to nobody.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        subject.procedure().ifPresent(procedure -> procedure.elsewhere()
                .filter(name -> procedure.step(name).isPresent() && !Understood.refers(procedure, name)).ifPresent(name -> report(procedure, name, findings)));
    }

    private static void report(Procedure procedure, Name name, Findings findings) {
        findings.report(name.at(), "\"otherwise\" leads to \"" + name + "\", which does not refer the unit to anybody.",
                EscapeTarget.in(procedure).map(escape -> "Write: otherwise " + escape + ".")
                        .orElse("Let it lead to a conclusion that says whom the unit is referred to: what a step does not name proves nothing of the unit."),
                EscapeTarget.in(procedure).map(escape -> new Fix[] {Fix.replacing("Lead to " + escape, name.at(), escape)})
                        .orElseGet(() -> new Fix[0]));
    }
}
