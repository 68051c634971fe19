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
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** A step that leads nowhere. */
public final class EmptyOutcomes implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("empty-outcomes", Severity.ERROR, Group.PATHS,
            "A step that is no conclusion leads nowhere.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.ONE_BLOCK;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (Step step : DocumentSteps.of(subject)) {
            if (step.outcomes().isEmpty() && !(step instanceof Step.Conclude)) {
                findings.report(step.name().at(), step.name() + " has no outcome.",
                        "Say where each of its outcomes leads, as in \"yes -> NextStep\".");
            }
            step.outcomes().stream().filter(outcome -> outcome.target().isEmpty()).map(Outcome::head)
                    .forEach(head -> findings.report(head.at(), "The outcome \"" + head.key() + "\" of " + step.name()
                    + " leads nowhere.",
                            "Name the step it leads to."));
        }
    }
}
