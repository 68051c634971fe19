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
import org.faultwright.analysis.time.TimeStudy;
import org.faultwright.procedure.Step;

/** Steps that state no time, reported once. */
public final class MissingTime implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("missing-time", Severity.ADVICE, Group.FAULTS,
            "Steps do not say how long they take.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    private static final int MOST_NAMED = 5;

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        TimeStudy.in(subject).ifPresent(study -> report(subject, study.untimed(), findings));
    }

    private static void report(Subject subject, List<Step> untimed, Findings findings) {
        if (!untimed.isEmpty()) {
            List<String> names = untimed.stream().map(step -> step.name().text()).toList();
            findings.report(subject.document().name().at(), names.size() == 1 ? "One step states no time: " + names.get(0) + "."
                    : names.size() + " steps state no time: " + Listing.some(names, MOST_NAMED) + ".",
                    "Say with \"takes\" how long a practised technician needs: times to a conclusion and a better order rest on it.");
        }
    }
}
