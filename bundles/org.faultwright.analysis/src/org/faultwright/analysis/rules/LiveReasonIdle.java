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
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.ProcedurePaths;

/** A reason for working live at a step where nothing is. */
public final class LiveReasonIdle implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-reason-idle", Severity.ADVICE, Group.STATE,
            "A step says why it is done live, and nothing is live there on any path.");

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
        ProcedurePaths.of(subject).filter(paths -> paths.bench().isComplete()).ifPresent(paths ->
                LiveToolUnfit.places(paths).filter(place -> !LiveToolUnfit.mayBeLive(paths, place.step()))
                        .forEach(place -> report(place, findings)));
    }

    private static void report(InlinedStep place, Findings findings) {
        findings.report(PlaceText.at(place, place.step().frame().precautions().liveBecause().orElseThrow().at()),
                PlaceText.subject(place) + " says why it is done live, but nothing is live there on any path.",
                "Leave the reason out, or look whether the supply was meant to be on.");
    }
}
