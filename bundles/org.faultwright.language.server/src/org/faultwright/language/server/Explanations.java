/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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

    /** The budget of a measurement's limits, line by line; empty where it names no instrument or has no limit. */
    public static List<BudgetLine> budget(OpenText text, Step.Measure step) {
        return LimitStudy.of(text.document(), step).map(LimitStudy::explain).orElseGet(List::of);
    }

    private static Optional<Explanation> limit(OpenText text, int offset) {
        for (StepGraph graph : text.document().graphs()) {
            for (Step step : graph.steps()) {
                if (step instanceof Step.Measure measure && holds(step.at(), offset)) {
                    return limits(measure).filter(limit -> holds(limit.at(), offset)).findFirst()
                            .flatMap(limit -> explained(text, measure, limit));
                }
            }
        }
        return Optional.empty();
    }

    private static Stream<Written<Limit>> limits(Step.Measure step) {
        Stream<Written<Limit>> bands = step.outcomes().stream().map(Outcome::head)
                .filter(Outcome.Band.class::isInstance).map(head -> ((Outcome.Band) head).limit());
        return Stream.concat(step.expects().stream().map(Step.Expectation::limit), bands);
    }

    private static Optional<Explanation> explained(OpenText text, Step.Measure step, Written<Limit> limit) {
        return LimitStudy.of(text.document(), step).map(study -> {
            List<BudgetLine> lines = study.of(limit)
                    .map(one -> Stream.concat(Stream.of(study.choice().explain()), one.explain().stream()).toList())
                    .orElseGet(study::explain);
            String table = lines.stream().map(Explanations::row).collect(Collectors.joining("\n"));
            return new Explanation(limit.at(), "**" + Markdown.plain(limit.value().spelling()) + "** with "
                    + Markdown.plain(study.instrument().name().text())
                    + "\n\n| what | value | how | by |\n|---|---|---|---|\n" + table);
        });
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
