/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.paths.Place;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Step;

/** A reason for working live at a step where nothing is. */
public final class LiveReasonIdle implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("live-reason-idle", Severity.ADVICE, Group.STATE,
            "A step says why it is done live, and nothing is live there on any path.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ProcedurePaths.of(subject).filter(paths -> paths.bench().isComplete()).ifPresent(paths ->
                paths.map().procedure().steps().stream().filter(LiveWork::saysWhy).forEach(step -> {
                    List<Place> places = paths.map().places().stream().filter(place -> place.step() == step)
                            .filter(paths::reaches).toList();
                    if (!places.isEmpty() && !LiveToolUnfit.mayBeLive(paths, step)) {
                        report(step, findings);
                    }
                }));
    }

    private static void report(Step step, Findings findings) {
        findings.report(step.frame().precautions().liveBecause().orElseThrow().at(),
                step.name() + " says why it is done live, but nothing is live there on any path.",
                "Leave the reason out, or look whether the supply was meant to be on.");
    }
}
