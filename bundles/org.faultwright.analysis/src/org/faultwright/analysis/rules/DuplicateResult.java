/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** One result with two ways on, or one code with two meanings. */
public final class DuplicateResult implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("duplicate-outcome", Severity.ERROR, Group.NAMES,
            "A step names one outcome twice, or an indicator one code twice.");

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
        DocumentSteps.of(subject).forEach(step -> {
            outcomes(step, findings);
            normal(step, findings);
        });
        subject.document().own().indicators().forEach(indicator -> codes(indicator, findings));
    }

    private static void outcomes(Step step, Findings findings) {
        Map<String, Outcome> first = new HashMap<>();
        for (Outcome outcome : step.outcomes()) {
            Outcome before = first.putIfAbsent(outcome.key(), outcome);
            if (before != null) {
                boolean same = target(before).equals(target(outcome));
                findings.report(outcome.head().at(), step.name() + " names the outcome \"" + outcome.key() + "\" twice.",
                        same ? "Remove one of them." : "Decide whether it leads to " + target(before) + " or to "
                                + target(outcome) + ".", Removal.of("Remove this one", outcome.at()));
            }
        }
    }

    /** A sound unit gives one outcome. */
    private static void normal(Step step, Findings findings) {
        step.outcomes().stream().filter(Outcome::normal).skip(1).forEach(outcome -> findings.report(outcome.head().at(),
                "\"" + step.name() + "\" marks a second outcome as normal, \"" + outcome.key() + "\".",
                "Keep \"normal\" at the one outcome that a sound unit gives."));
    }

    private static String target(Outcome outcome) {
        return outcome.target().map(Name::text).orElse("nothing");
    }

    private static void codes(Indicator indicator, Findings findings) {
        Map<String, Indicator.Code> first = new HashMap<>();
        for (Indicator.Code code : indicator.codes()) {
            Indicator.Code before = first.putIfAbsent(code.pattern().text(), code);
            if (before != null) {
                findings.report(code.pattern().at(), indicator.name() + " has the code \"" + code.pattern()
                        + "\" twice.",
                        "Keep the one that its document states: \"" + before.meaning() + "\" or \"" + code.meaning() + "\".",
                        Removal.of("Remove this one", code.at()));
            }
        }
    }
}
