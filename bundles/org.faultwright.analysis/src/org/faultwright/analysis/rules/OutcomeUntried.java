/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.MissingExamples;

/** Outcomes and conclusions that no example takes, counted. */
public final class OutcomeUntried implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outcome-untried", Severity.ADVICE, Group.EXAMPLES,
            "Outcomes or conclusions that no example takes.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    private static final int MOST_NAMED = 4;

    @Override
    public boolean takesLong() {
        return true;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        ExampleCoverage.in(subject).filter(coverage -> !coverage.isComplete())
                .ifPresent(coverage -> report(subject, coverage, findings));
    }

    private static void report(Subject subject, ExampleCoverage coverage, Findings findings) {
        List<String> missing = new ArrayList<>();
        coverage.unreached().forEach(end -> missing.add(end.name().text()));
        coverage.untried().forEach(way -> missing.add(way.toString()));
        int outcomes = coverage.tried().size() + coverage.untried().size();
        int ends = coverage.reached().size() + coverage.unreached().size();
        String examples = coverage.runs().isEmpty() ? "No example is given" : coverage.runs().size() == 1 ? "The one example takes "
                + coverage.tried().size() : "The " + coverage.runs().size() + " examples take " + coverage.tried().size();
        String counts = coverage.runs().isEmpty() ? " for " + Phrases.counted(outcomes, "outcome") + " and " + Phrases.counted(ends, "conclusion")
                : " of " + Phrases.counted(outcomes, "outcome") + " and " + coverage.reached().size() + " of " + Phrases.counted(ends, "conclusion");
        Fix[] fixes = MissingExamples.fix(subject, coverage).stream().toArray(Fix[]::new);
        findings.report(subject.document().name().at(), examples + counts + "; not tried: " + Listing.some(missing, MOST_NAMED)
                + ".", "Add an example for each, so that every path has been tried on paper.", fixes);
    }
}
