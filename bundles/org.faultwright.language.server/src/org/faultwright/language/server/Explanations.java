/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.ComputedStudy;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.measure.BudgetLine;

/** Says what stands at a place: a limit with its whole budget, or a name with what it names. */
public final class Explanations {
    private Explanations() {
    }

    /** What there is to say there; absent between the words. */
    public static Optional<Explanation> at(OpenText text, int offset) {
        return limit(text, offset).or(() -> name(text, offset));
    }

    private static Optional<Explanation> limit(OpenText text, int offset) {
        for (StepGraph graph : text.document().graphs()) {
            for (Step step : graph.writtenSteps()) {
                if (holds(step.at(), offset) && (step instanceof Step.Measure || step instanceof Step.Calculate)) {
                    return limits(step).filter(limit -> holds(limit.at(), offset)).findFirst()
                            .flatMap(limit -> explained(text, step, limit));
                }
            }
        }
        return Optional.empty();
    }

    private static Stream<Written<Limit>> limits(Step step) {
        if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            return measure.rows().stream().map(Step.Row::limit);
        }
        Optional<Step.Expectation> expects = step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
        Stream<Written<Limit>> bands = step.outcomes().stream().map(Outcome::head)
                .filter(Outcome.Band.class::isInstance).map(head -> ((Outcome.Band) head).limit());
        return Stream.concat(expects.stream().map(Step.Expectation::limit), bands);
    }

    private static Optional<Explanation> explained(OpenText text, Step step, Written<Limit> limit) {
        if (step instanceof Step.Calculate calculate) {
            return ComputedStudy.of(text.document(), calculate).map(study -> table(limit, "computed", study.of(limit)
                    .map(one -> one.budget().explain()).orElseGet(study::explain)));
        }
        Step.Measure measured = ((Step.Measure) step).readings().stream().filter(one -> limits(one).anyMatch(limit::equals)).findFirst()
                .orElse((Step.Measure) step);
        return LimitStudy.of(text.document(), measured).map(study -> table(limit,
                "with " + Markdown.plain(study.instrument().name().text()), study.of(limit)
                        .map(one -> Stream.of(study.validity().stream(), Stream.of(study.choice().explain()),
                                one.explain().stream()).flatMap(lines -> lines).toList())
                        .orElseGet(study::explain)));
    }

    private static Explanation table(Written<Limit> limit, String how, List<BudgetLine> lines) {
        return new Explanation(limit.at(), "**" + Markdown.plain(limit.value().spelling()) + "** " + how
                + "\n\n| what | value | how | by |\n|---|---|---|---|\n"
                + lines.stream().map(Explanations::row).collect(Collectors.joining("\n")));
    }

    private static String row(BudgetLine line) {
        return "| " + Stream.of(line.label(), line.value(), line.formula(), line.clause()).map(Markdown::cell)
                .collect(Collectors.joining(" | ")) + " |";
    }

    private static Optional<Explanation> name(OpenText text, int offset) {
        return text.nameAt(offset).flatMap(name -> NamedThings.describe(text.document(), name)
                .map(words -> new Explanation(name.name().at(), words)));
    }

    private static boolean holds(SourceRange at, int offset) {
        return at.offset() <= offset && offset <= at.end();
    }
}
