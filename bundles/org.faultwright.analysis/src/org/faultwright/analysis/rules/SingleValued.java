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
import org.faultwright.procedure.Step;

/** A question with one answer asks nothing. */
public final class SingleValued implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("single-valued", Severity.WARNING, Group.PATHS,
            "A check, observation, measurement or calculation has a single outcome.");

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
            if (step.asks() && step.outcomes().size() == 1 && !isRecorded(step)) {
                findings.report(step.name().at(), step.name() + " has the single outcome \"" + step.outcomes().get(0)
                        .key() + "\".",
                        "Say what else can come of it, or make it a \"do\" step.");
            }
        }
    }

    /** A measurement with the one result {@code then} is written down for later. */
    private static boolean isRecorded(Step step) {
        return step instanceof Step.Measure && step.outcomes().get(0).key().equals(Step.DONE);
    }
}
