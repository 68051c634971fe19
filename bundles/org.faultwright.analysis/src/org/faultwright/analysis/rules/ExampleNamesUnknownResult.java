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

/** An example gives an outcome that the step does not have. */
public final class ExampleNamesUnknownResult implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("example-names-unknown-outcome", Severity.ERROR, Group.EXAMPLES,
            "An example gives an outcome that the step does not have.");

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
        subject.procedure().ifPresent(procedure -> procedure.examples().stream().flatMap(example -> example.shows().stream())
                .forEach(showing -> procedure.step(showing.step()).filter(step -> !step.outcomes().isEmpty())
                        .ifPresent(step -> UnknownResult.report(step, showing, findings))));
    }
}
