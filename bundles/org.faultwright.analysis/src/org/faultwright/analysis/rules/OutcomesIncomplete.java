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
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bands;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** A result that can come and that nothing is said about. */
public final class OutcomesIncomplete implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("outcomes-incomplete", Severity.ERROR, Group.PATHS,
            "An outcome that a step can have leads nowhere.");

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
            boolean takesTheRest = Results.byKey(step, "anything else").isPresent();
            if (!step.outcomes().isEmpty() && !takesTheRest) {
                StepExpectation.of(step).ifPresent(expected -> expected(step, expected.limit(), findings));
                if (step instanceof Step.Perform perform) {
                    perform.routine().flatMap(subject.scope()::routine).ifPresent(routine -> exits(step, routine, findings));
                }
            }
        }
    }

    private static void expected(Step step, Written<Limit> limit, Findings findings) {
        for (String result : missing(step, limit.value())) {
            findings.report(limit.at(), "A reading " + words(result) + " " + limit.value().spelling() + " at "
                    + step.name() + " leads nowhere.",
                    "Say where the outcome \"" + result + "\" leads"
                    + (result.equals(Step.WITHIN) ? "." : ", or join the two as \"outside\"."),
                    fixes(step, result));
        }
    }

    private static String words(String result) {
        return result.equals(Step.WITHIN) ? "within" : result.equals(Step.BELOW) ? "below" : "above";
    }

    /** The result words that the limit makes possible, that no outcome names and no band takes. */
    private static List<String> missing(Step step, Limit limit) {
        QuantityKind kind = step instanceof Step.Measure measure && measure.kind().isPresent()
                ? measure.kind().get().value() : QuantityKind.TEMPERATURE;
        Interval good = limit.interval(kind);
        List<Interval> bands = step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit().value().interval(kind)).toList();
        List<String> missing = new ArrayList<>();
        good.lower().filter(low -> isMissing(step, Step.BELOW, Interval.below(low.opposite()), bands))
                .ifPresent(low -> missing.add(Step.BELOW));
        // where there are bands, expected-outside-bands says with numbers which of them leave it out
        if (bands.isEmpty() && isMissing(step, Step.WITHIN, good, bands)) {
            missing.add(Step.WITHIN);
        }
        good.upper().filter(high -> isMissing(step, Step.ABOVE, Interval.above(high.opposite()), bands))
                .ifPresent(high -> missing.add(Step.ABOVE));
        return missing;
    }

    private static boolean isMissing(Step step, String result, Interval values, List<Interval> bands) {
        return Results.byKey(step, result).isEmpty() && !Bands.partition(bands, values).isComplete();
    }

    private static Fix[] fixes(Step step, String result) {
        String opposite = result.equals(Step.BELOW) ? Step.ABOVE : Step.BELOW;
        Optional<Outcome> other = step.outcomes().stream().filter(outcome -> outcome.key().equals(opposite)).findFirst();
        return other.isPresent() && !result.equals(Step.WITHIN) ? new Fix[] {Fix.replacing("Let outside lead to "
                + Readings.target(other.get()), other.get().head().at(), Step.OUTSIDE)} : new Fix[0];
    }

    private static void exits(Step step, Routine routine, Findings findings) {
        for (Name exit : routine.exits()) {
            if (Results.byKey(step, exit.text()).isEmpty()) {
                findings.report(step.name().at(), routine.name() + " can be left by the exit \"" + exit + "\", and " + step.name()
                        + " does not say where that leads.", "Add an outcome \"" + exit + "\" with the step that follows.");
            }
        }
    }
}
