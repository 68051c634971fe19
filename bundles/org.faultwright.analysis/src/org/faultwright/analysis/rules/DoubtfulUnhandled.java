/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.LimitStudies;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.analysis.measurement.StudiedLimit;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.measure.Zones;

/** The house decides with guard bands, and the step does not say what to do with a doubtful reading. */
public final class DoubtfulUnhandled implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("doubtful-unhandled", Severity.ADVICE, Group.INSTRUMENTS,
            "A reading can be too near a limit to decide, and the step does not say what follows.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (LimitStudy study : LimitStudies.of(subject)) {
            boolean handled = Results.byKey(study.step(), Step.DOUBTFUL).isPresent() || study.step().outcomes().isEmpty();
            study.expected().filter(limit -> !handled && limit.budget().ratio().isPresent())
                    .filter(limit -> !limit.budget().zones().doubtful().isEmpty())
                    .ifPresent(limit -> report(study, limit, subject, findings));
        }
    }

    private static void report(LimitStudy study, StudiedLimit limit, Subject subject, Findings findings) {
        Unit unit = study.range().upTo().unit();
        Zones shown = limit.budget().zones().shown(study.range().resolution().difference(), unit.offset());
        String zones = shown.doubtful().stream().map((Interval zone) -> IntervalText.of(zone, unit))
                .collect(Collectors.joining(" and of "));
        if (zones.isEmpty()) {
            return;
        }
        Step.Measure step = study.step();
        Optional<String> target = subject.graphs().stream().filter((StepGraph graph) -> graph.steps().contains(step))
                .findFirst()
                .flatMap(EscapeTarget::in);
        findings.report(limit.limit().at(), "A reading of " + zones + " at " + step.name() + " is too near the limit for "
                + study.instrument().name() + " to decide.",
                "Add the outcome doubtful, for instance to measure again with a finer instrument.",
                target.stream().map(to -> Insertion.outcome("Let doubtful lead to " + to, step, "doubtful -> " + to))
                .toArray(Fix[]::new));
    }
}
