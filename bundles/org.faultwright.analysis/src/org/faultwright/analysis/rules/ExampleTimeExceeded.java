/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.analysis.time.PrintedNumbers;
import org.faultwright.analysis.time.TimeText;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/** An example that takes longer than it may. */
public final class ExampleTimeExceeded implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("example-time-exceeded", Severity.WARNING, Group.EXAMPLES,
            "The steps of an example take longer than the example allows.");

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
        ExampleCoverage.in(subject).ifPresent(coverage -> coverage.runs().stream().filter(run -> run.end().isPresent())
                .forEach(run -> run.example().within().ifPresent(within -> check(run, within, findings))));
    }

    private static void check(ExampleRun run, Written<Quantity> within, Findings findings) {
        Optional<Exact> allowed = TimeText.seconds(within.value());
        if (allowed.filter(time -> run.time().compareTo(time) > 0).isPresent()) {
            findings.report(within.at(), "The steps of the example " + run.example().called() + " take "
                    + PrintedNumbers.minutes(run.time()) + " and not " + PrintedNumbers.minutes(allowed.get()) + ".",
                    "Allow the time, shorten the path, or correct the times of its steps.", run.path(),
                    Fix.replacing("Allow " + TimeText.upToMinutes(run.time()), within.at(),
                            TimeText.upToMinutes(run.time())));
        }
    }
}
