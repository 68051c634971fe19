/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.paths.RunningOn;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.IntervalText;
import org.faultwright.quantity.Limit;

/** What an editor shows within a line, in small: the two ends of a tolerance, and the words of the step that an arrow leads to. */
public final class InlineHints {
    /**
     * One hint.
     *
     * @param offset where it stands in the text: right behind what it explains
     */
    public record Hint(int offset, String text) {
    }

    private InlineHints() {
    }

    /** The hints of a text between two offsets, in reading order. */
    public static List<Hint> between(OpenText text, int from, int to) {
        List<Hint> hints = new ArrayList<>();
        for (StepGraph graph : text.document().graphs()) {
            for (Step step : graph.writtenSteps()) {
                if (step.at().source() == text.source() && step.at().offset() <= to && from <= step.at().end()) {
                    limits(step).forEach(limit -> ends(step, limit).ifPresent(ends -> hints.add(new Hint(limit.at().end(), ends))));
                    step.outcomes().stream().filter(outcome -> !runsOn(graph, outcome)).forEach(outcome -> Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())
                            .forEach(target -> title(graph, target).ifPresent(title -> hints.add(new Hint(target.at().end(), title)))));
                }
            }
        }
        hints.addAll(runningOn(text));
        return hints.stream().filter(hint -> from <= hint.offset() && hint.offset() <= to)
                .sorted((one, other) -> Integer.compare(one.offset(), other.offset())).toList();
    }

    /** Where steps lead that do not say it themselves: behind the last word of each, in reading order. */
    public static List<Hint> runningOn(OpenText text) {
        return text.document().graphs().stream().flatMap(graph -> RunningOn.arrows(graph).stream()).filter(arrow -> arrow.step().at().source() == text.source())
                .map(arrow -> new Hint(lastWord(arrow.outcome().at()), ResultWords.arrow(arrow.outcome(), arrow.below().name().text()).strip()
                        + (arrow.below().title().isBlank() ? "" : "  " + arrow.below().title())))
                .sorted((one, other) -> Integer.compare(one.offset(), other.offset())).toList();
    }

    private static boolean runsOn(StepGraph graph, Outcome outcome) {
        return outcome.isUnderstood() && RunningOn.arrows(graph).stream().anyMatch(arrow -> arrow.outcome() == outcome);
    }

    /** The end of what stands in the step before the brace that closes it, on its own line. */
    private static int lastWord(SourceRange brace) {
        String text = brace.source().content();
        int at = brace.offset();
        while (at > 0 && Character.isWhitespace(text.charAt(at - 1))) {
            at--;
        }
        return at;
    }

    private static Stream<Written<Limit>> limits(Step step) {
        Stream<Written<Limit>> expected = step instanceof Step.Measure measure
                ? measure.readings().stream().flatMap(reading -> reading.expects().stream()).map(Step.Expectation::limit)
                : step instanceof Step.Calculate calculate ? calculate.expects().stream().map(Step.Expectation::limit) : Stream.empty();
        return Stream.concat(expected, step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit()));
    }

    private static Optional<String> ends(Step step, Written<Limit> limit) {
        boolean known = limit.value().quantities().stream().allMatch(end -> end.unit().isKnown()
                && end.dimension().equals(limit.value().quantities().get(0).dimension()));
        return known && limit.value() instanceof Limit.AroundNominal around
                ? Optional.of(IntervalText.of(around.interval(Results.kind(step)), around.written().unit())) : Optional.empty();
    }

    private static Optional<String> title(StepGraph graph, Name target) {
        return graph.namedSteps().stream().filter(step -> step.name().text().equals(target.text())).map(Step::title)
                .filter(title -> !title.isBlank()).findFirst();
    }
}
