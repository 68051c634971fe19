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
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.examples.ExampleRepair;
import org.faultwright.analysis.examples.ExampleRun;
import org.faultwright.procedure.Example;

/** An example that does not go as it says. */
public final class ExampleFails implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("example-fails", Severity.ERROR, Group.EXAMPLES,
            "An example takes another path than it says, or ends elsewhere.");

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
        ExampleCoverage.in(subject).filter(runs -> subject.procedure().flatMap(p -> p.first()).isPresent())
                .ifPresent(coverage -> coverage.runs().stream()
                        .filter(run -> run.problem().filter(p -> p.failure() != ExampleRun.Failure.UNKNOWN_RESULT).isPresent())
                        .forEach(run -> report(coverage, run, findings)));
    }

    private static void report(ExampleCoverage coverage, ExampleRun run, Findings findings) {
        ExampleRun.Problem problem = run.problem().orElseThrow();
        Fix[] fixes = ExampleRepair.of(coverage, run).toArray(Fix[]::new);
        findings.report(problem.at(), message(run.example(), problem), advice(problem.failure()), run.path(), fixes);
    }

    private static String message(Example example, ExampleRun.Problem problem) {
        String title = "The example " + example.called();
        String step = problem.step().map(s -> s.name().text()).orElse("nothing");
        return switch (problem.failure()) {
            case NOTHING_SAID -> title + " comes to " + step + " and does not say what it shows.";
            case UNKNOWN_RESULT -> title + " gives an outcome that " + step + " does not have.";
            case LEADS_NOWHERE -> title + " comes to " + step + ", and from there its path leads nowhere.";
            case NO_END -> title + " goes round for ever"
                    + problem.step().map(s -> ": it comes to " + s.name() + " again as before").orElse("") + ".";
            case NEVER_ASKED -> title + " says what " + step + " shows, and its path does not come there"
                    + (example.shows().stream().filter(s -> s.step().text().equals(step)).count() > 1 ? " so often" : "") + ".";
            case OTHER_END -> title + " ends at " + step + ", not at " + example.endsAt().map(Object::toString).orElse("") + ".";
            case OTHER_FAULT -> title + " is a case of " + example.of().map(Object::toString).orElse("") + " and ends at " + step
                    + ", which does not find it.";
        };
    }

    private static String advice(ExampleRun.Failure failure) {
        return switch (failure) {
            case NOTHING_SAID -> "Say what it shows, or correct the arrow that leads there.";
            case UNKNOWN_RESULT -> "Write an outcome that the step has.";
            case LEADS_NOWHERE -> "Give the outcome a step to lead to.";
            case NO_END -> "Bound the loop with \"at most\", or say the next outcome in the example.";
            case NEVER_ASKED -> "Correct the outcome before it or the arrow that leads past it, or leave the entry out.";
            case OTHER_END -> "Correct the arrows if the example is right, or the example if they are.";
            case OTHER_FAULT -> "Name the fault it is a case of, or lead its path to where that is found.";
        };
    }
}
