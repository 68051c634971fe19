/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** An ammeter across a point is a short circuit; a current is read through an opened link or in a clamp. */
public final class CurrentAcrossPoint implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("current-across-a-point", Severity.ERROR, Group.INSTRUMENTS,
            "A current is read at a point instead of through it, or something else than a current is read through one.");

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
        DocumentSteps.of(subject, Step.Measure.class).filter(step -> step.kind().isPresent() && step.point().isPresent()).forEach(step -> {
            boolean current = step.kind().get().value().isCurrent();
            if (current && !step.through()) {
                across(step, subject, findings);
            } else if (!current && step.through()) {
                findings.report(step.point().get().at(), "\"" + step.name() + "\" measures " + step.kind().get().value().words()
                        + " through \"" + step.point().get() + "\", and only a current flows through a meter.",
                        "Write \"at\" the point.", word(step, "through", "at"));
            }
        });
    }

    private static void across(Step.Measure step, Subject subject, Findings findings) {
        String carries = subject.scope().point(step.point().get()).flatMap(Point::carries)
                .map(carried -> ", which carries up to " + carried.upTo().value()).orElse("");
        findings.report(step.point().get().at(), "\"" + step.name() + "\" measures a current at \"" + step.point().get() + "\"" + carries
                + ": a current range across a point is a short circuit.",
                "Open a link and read through it, or put a clamp round the wire: \"" + step.kind().get().value().words() + " through "
                        + step.point().get() + "\".", step.against().isPresent() ? new Fix[0] : word(step, "at", "through"));
    }

    /** Puts another word before the point. */
    private static Fix[] word(Step.Measure step, String now, String wanted) {
        SourceRange point = step.point().get().at();
        String before = point.source().content().substring(0, point.offset());
        int word = before.lastIndexOf(now);
        boolean alone = word >= 0 && before.substring(word + now.length()).isBlank();
        return alone ? new Fix[] {Fix.replacing("Write \"" + wanted + "\"",
                new SourceRange(point.source(), word, now.length()), wanted)} : new Fix[0];
    }
}
