/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;

/** A code that is not in the indicator's table. */
public final class CodeUnknown implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("code-unknown", Severity.ERROR, Group.NAMES,
            "A step names a code that its indicator's table does not have.");
    /** No code at all: the lamp stays dark, the sounder silent. */
    /** What a step says where the indicator shows nothing. */
    static final String NONE = "none";

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
        DocumentSteps.of(subject, Step.Observe.class).forEach(step -> step.indicator().flatMap(subject.scope()::indicator)
                .ifPresent(indicator -> check(step, indicator, findings)));
    }

    private static void check(Step.Observe step, Indicator indicator, Findings findings) {
        List<String> codes = indicator.codes().stream().map(code -> code.pattern().text()).toList();
        for (Outcome outcome : step.outcomes()) {
            boolean named = outcome.head() instanceof Outcome.Word || outcome.head() instanceof Outcome.Code;
            String code = outcome.key();
            if (named && !code.equals(NONE) && !codes.contains(code)) {
                List<String> free = codes.stream().filter(one -> step.outcomes().stream()
                        .noneMatch(o -> o.key().equals(one))).toList();
                Fix[] fixes = NearNames.of(code, free).stream()
                        .map(near -> Fix.replacing("Write " + near, outcome.head().at(), written(near))).toArray(Fix[]::new);
                findings.report(outcome.head().at(), "The table of " + indicator.name() + " has no code \"" + code + "\".",
                        "Add it to the table with its meaning, or correct it; \"none\" is the outcome where nothing is shown.", fixes);
            }
        }
    }

    /** In quotation marks where it is more than a word, or a number and a word. */
    private static String written(String code) {
        return code.matches("([0-9]+ )?[\\p{L}_][\\p{L}\\p{N}_]*") ? code : '"' + code.replace("\"", "\\\"") + '"';
    }
}
