/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * A procedure that was walked to a conclusion, written as an example at the end of its text. Readings stand in it as they were read; a result that a
 * sound unit shows, and a step that has only one result, need no word.
 */
public final class WalkedExample {
    /**
     * A reading.
     *
     * @param words as it is written in a text: {@code 3.1 V}, or {@code OL} for what a meter shows above its range
     * @param base  in the coherent SI unit, of a difference of temperatures without the zero of a scale; absent above the range
     */
    public record Reading(String words, Optional<Exact> base) {
    }

    /** What one of the procedure's own steps showed; a routine counts by its exit. */
    public record Result(Step step, Outcome outcome, Optional<Reading> reading) {
    }

    private final Procedure procedure;
    private final List<Result> results;

    private WalkedExample(Procedure procedure, List<Result> results) {
        this.procedure = procedure;
        this.results = results.stream().filter(result -> !ClosingStep.is(result.step())).toList();
    }

    /**
     * What is to be added to the text. It is tried by nobody yet.
     *
     * @param results of the walk from the beginning to the conclusion, in their order
     */
    public static Fix of(Procedure procedure, String title, List<Result> results, Step.Conclude end) {
        WalkedExample walked = new WalkedExample(procedure, results);
        String content = procedure.source().content();
        String entries = ExampleEntries.wrapped(walked.entries());
        String example = (content.endsWith("\n") ? "" : "\n") + "\nexample " + Quotation.of(title) + walked.of(results, end) + " {\n"
                + (entries.isEmpty() ? "" : "    " + entries + "\n") + "    ends at " + end.name() + "\n}\n";
        return Fix.replacing("Keep the walk as an example", new SourceRange(procedure.source(), content.length(), 0),
                Fix.inLinesAs(content, example));
    }

    /** A title that no example has: that of the conclusion, with a number where it must be told apart. */
    public static String title(Procedure procedure, Step.Conclude end) {
        Set<String> taken = procedure.examples().stream().map(example -> example.title().text()).collect(Collectors.toCollection(HashSet::new));
        String about = end.title().isBlank() ? end.name().text() : end.title();
        String title = about;
        for (int i = 2; taken.contains(title); i++) {
            title = about + ", " + i;
        }
        return title;
    }

    private List<String> entries() {
        Map<String, Integer> lastSaid = new HashMap<>();
        for (int i = 0; i < results.size(); i++) {
            if (mustBeSaid(results.get(i))) {
                lastSaid.put(results.get(i).step().name().text(), i);
            }
        }
        List<String> entries = new ArrayList<>();
        for (int i = 0; i < results.size(); i++) {
            Result result = results.get(i);
            // of a step that comes round again each entry counts for one visit, so none before the last may be missing
            if (result.step().outcomes().size() > 1 && i <= lastSaid.getOrDefault(result.step().name().text(), -1)) {
                entries.add(result.step().name() + " " + words(result));
            }
        }
        return entries;
    }

    private boolean mustBeSaid(Result result) {
        return result.step().outcomes().size() > 1 && (asRead(result).isPresent()
                || Results.normal(result.step(), procedure.scope()).filter(normal -> normal == result.outcome()).isEmpty());
    }

    private static String words(Result result) {
        return asRead(result).orElseGet(() -> ResultWords.leadingTo(result.step(), result.outcome()));
    }

    /** The reading where the text alone leads from it to the same result; one that the instrument cannot decide is told by its result. */
    private static Optional<String> asRead(Result result) {
        return result.step() instanceof Step.Measure measure && measure.rows().isEmpty() ? result.reading().filter(reading -> reading.base()
                .map(base -> Results.reading(measure, base)).orElseGet(() -> Results.outcome(measure, new Showing.Possible(
                        new Name(reading.words(), measure.at()), Optional.empty(), Optional.empty())))
                .filter(outcome -> outcome == result.outcome()).isPresent()).map(Reading::words) : Optional.empty();
    }

    /** The fault it is a case of, where its end finds only one and that one explains every result. */
    private String of(List<Result> all, Step.Conclude end) {
        List<Suspects.Evidence> evidence = all.stream().map(result -> new Suspects.Evidence(result.step(), result.outcome().key())).toList();
        Optional<Fault> found = end.finds().size() == 1 ? procedure.fault(end.finds().get(0)) : Optional.empty();
        return found.filter(fault -> Suspects.of(procedure).after(evidence).stream().anyMatch(one -> one.fault() == fault))
                .map(fault -> " of " + fault.name()).orElse("");
    }
}
