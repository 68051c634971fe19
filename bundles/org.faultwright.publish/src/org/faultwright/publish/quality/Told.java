/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.examples.ExampleCoverage;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;

/** What steps and their outcomes are called in the report: by their titles, as they are read on a card, never by their names in the text. */
final class Told {
    private static final String INSIDE = "/";

    private Told() {
    }

    static String step(Step step) {
        return "\"" + PlainText.line(Wording.title(step)) + "\"";
    }

    static List<String> steps(List<? extends Step> steps) {
        return steps.stream().map(Told::step).distinct().toList();
    }

    /** Each step once, with its outcomes: {@code "Is the lamp lit?" with yes or no}. */
    static List<String> ways(List<ExampleCoverage.Way> ways) {
        return together(ways.stream().collect(Collectors.groupingBy(way -> step(way.step()), LinkedHashMap::new,
                Collectors.mapping(way -> PlainText.phrase(way.outcome()), Collectors.toList()))));
    }

    static List<String> codes(List<QaSummary.Code> codes) {
        return together(codes.stream().collect(Collectors.groupingBy(code -> step(code.step()), LinkedHashMap::new,
                Collectors.mapping(QaSummary.Code::pattern, Collectors.toList()))));
    }

    /** With what each means, since that is what goes unheeded. */
    static List<String> codesIn(QualityReport.Line line) {
        return line.summary().open().codes().stream().map(code -> step(code.step()) + " has no outcome for \"" + code.pattern() + "\""
                + meaning(code, line.publication().procedure()).map(words -> " (" + words + ")").orElse("") + ".").toList();
    }

    private static Optional<String> meaning(QaSummary.Code code, Procedure procedure) {
        return code.step() instanceof Step.Observe observe ? observe.indicator().flatMap(procedure.scope()::indicator).stream()
                .flatMap(indicator -> indicator.codes().stream()).filter(one -> one.pattern().text().equals(code.pattern()))
                .map(one -> PlainText.line(one.meaning())).filter(words -> !words.isEmpty()).findFirst() : Optional.empty();
    }

    private static List<String> together(Map<String, List<String>> of) {
        return of.entrySet().stream().map(entry -> entry.getKey() + " with " + entry.getValue().stream().distinct().collect(Collectors.joining(" or "))).toList();
    }

    static List<String> examples(List<Example> examples) {
        return examples.stream().map(example -> PlainText.line(example.called())).toList();
    }

    static String note(Note note) {
        return note.word() + " \"" + PlainText.line(note.hazard().isBlank() ? note.name().text() : note.hazard()) + "\"";
    }

    /** Such as {@code "Is the lamp lit?" (yes)}; a step inside a routine is called by its own title. */
    static String step(PathStep on, Procedure procedure) {
        return find(on.step(), procedure).map(Told::step).orElse("\"" + on.step() + "\"") + (on.outcome().isEmpty() ? "" : " (" + PlainText.phrase(on.outcome()) + ")");
    }

    private static Optional<Step> find(String path, Procedure procedure) {
        String[] names = path.split(INSIDE);
        Optional<Step> step = named(procedure.steps(), names[0]);
        for (int i = 1; i < names.length; i++) {
            String inner = names[i];
            step = step.flatMap(procedure.scope()::performedBy).map(Routine::steps).flatMap(steps -> named(steps, inner));
        }
        return step;
    }

    private static Optional<Step> named(List<Step> steps, String name) {
        return steps.stream().filter(step -> step.name().text().equals(name)).findFirst();
    }
}
