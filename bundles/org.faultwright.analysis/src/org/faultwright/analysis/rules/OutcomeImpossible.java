/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.NearNames;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Interval;

/** A result that the step can never have. */
public final class OutcomeImpossible implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outcome-impossible", Severity.ERROR, Group.PATHS,
            "A step names an outcome that it cannot have.");

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
        for (Step step : DocumentSteps.of(subject)) {
            Optional<List<String>> possible = possible(step, subject.scope());
            for (Outcome outcome : step.outcomes()) {
                boolean measured = step instanceof Step.Measure || step instanceof Step.Calculate;
                if (outcome.head() instanceof Outcome.Band && !measured) {
                    findings.report(outcome.head().at(), step.name()
                            + " reads no quantity, so that none of its outcomes is a range.",
                            "Make it a measurement, or name the outcome in a word.");
                } else if (possible.isPresent() && (outcome.head() instanceof Outcome.Word
                        || outcome.head() instanceof Outcome.Code)
                        && !possible.get().contains(outcome.key())) {
                    report(step, outcome, possible.get(), findings);
                }
            }
        }
    }

    private static void report(Step step, Outcome outcome, List<String> possible, Findings findings) {
        List<String> free = possible.stream().filter(word -> step.outcomes().stream()
                .noneMatch(o -> o.key().equals(word))).toList();
        Fix[] fixes = NearNames.of(outcome.key(), free).stream()
                .map(near -> Fix.replacing("Write " + near, outcome.head().at(), near)).toArray(Fix[]::new);
        findings.report(outcome.head().at(), step.name() + " cannot have the outcome \"" + outcome.key() + "\".",
                possible.isEmpty() ? "Say what the step expects, or give ranges as outcomes."
                        : "It can have \"" + String.join("\", \"", possible) + "\".", fixes);
    }

    /** The result words of a step; absent where any word will do. */
    private static Optional<List<String>> possible(Step step, Scope scope) {
        if (step instanceof Step.Perform perform) {
            return perform.routine().flatMap(scope::routine).map(Routine::exits)
                    .map(exits -> exits.stream().map(Name::text).toList());
        }
        if (!(step instanceof Step.Measure || step instanceof Step.Calculate)) {
            return Optional.empty();
        }
        List<String> words = new ArrayList<>();
        if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            words.addAll(List.of(Step.ALL_WITHIN, Step.ANY_OUTSIDE, Step.DOUBTFUL));
            measure.rows().forEach(row -> words.add(row.outside()));
            return Optional.of(words);
        }
        StepExpectation.of(step).map(expected -> expected.limit().value().interval()).ifPresent(good -> words.addAll(words(good)));
        boolean bands = step.outcomes().stream().anyMatch(outcome -> outcome.head() instanceof Outcome.Band);
        if (!words.isEmpty() || bands) {
            words.add(Step.DOUBTFUL);
        } else if (step instanceof Step.Measure) {
            words.add(Step.DONE);
        }
        return Optional.of(words);
    }

    private static List<String> words(Interval good) {
        List<String> words = new ArrayList<>();
        good.lower().ifPresent(low -> words.add(Step.BELOW));
        words.add(Step.WITHIN);
        good.upper().ifPresent(high -> words.add(Step.ABOVE));
        words.add(Step.OUTSIDE);
        return words;
    }
}
