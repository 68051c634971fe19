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
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.procedure.StatedDecisionRule;
import org.faultwright.quantity.measure.DecisionRule.Guarded;

/** The house decides by risk, and a limit lacks the spread that the risk is computed from. */
public final class UnitDeviationMissing implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("unit-deviation-missing", Severity.ADVICE, Group.INSTRUMENTS,
            "The decision rule goes by risk, and a measurement does not state how much good units vary.");

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
        boolean byRisk = subject.procedure().map(procedure -> procedure.decisionRule() instanceof StatedDecisionRule.ByRisk)
                .orElse(false);
        if (byRisk) {
            LimitStudies.of(subject).forEach(study -> study.expected()
                    .filter(limit -> limit.budget().rule() instanceof Guarded)
                    .ifPresent(limit -> report(study, limit, findings)));
        }
    }

    private static void report(LimitStudy study, StudiedLimit limit, Findings findings) {
        boolean stated = study.step().unitDeviation().isPresent();
        findings.report(limit.limit().at(), study.step().name() + " is to be decided by risk, and "
                + (stated ? "how much good units vary and the limit do not give one."
                : "how much good units vary is not stated."),
                "Add the standard deviation of good units, as in \"units vary by 0.1 V\"; until then the guard band is the whole uncertainty.");
    }
}
