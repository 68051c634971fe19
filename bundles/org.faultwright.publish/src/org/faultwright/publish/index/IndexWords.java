/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.index;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.publish.page.PlainText;

/** The words by which somebody at a bench looks for a procedure: complaints, faults, codes, parts. */
final class IndexWords {
    /** A code is looked for even where its card has no result for it. */
    private static final String UNNAMED = " (on the card under \"anything else\")";

    private IndexWords() {
    }

    /** What they are, and the words on one line; nothing empty. */
    static Map<String, String> of(Procedure procedure) {
        Map<String, Stream<String>> words = new LinkedHashMap<>();
        words.put("Complaints", procedure.complaints().stream().map(Written::value));
        words.put("Faults", procedure.faults().stream().map(Declaration::title));
        Set<String> named = named(procedure);
        Stream<Indicator> read = procedure.steps().stream().filter(Step.Observe.class::isInstance).map(Step.Observe.class::cast)
                .flatMap(observe -> observe.indicator().flatMap(procedure.scope()::indicator).stream());
        words.put("Codes", Stream.concat(procedure.own().indicators().stream(), read).distinct().flatMap(indicator -> indicator.codes().stream()
                .map(code -> code.pattern() + (code.meaning().isBlank() ? "" : ": " + code.meaning()) + (named.contains(indicator.name().text() + " " + code.pattern()) ? "" : UNNAMED))));
        words.put("Parts", procedure.own().parts().stream()
                .map(part -> part.title() + part.number().map(number -> " " + number.value()).orElse("")));
        Map<String, String> lines = new LinkedHashMap<>();
        words.forEach((what, all) -> {
            String line = all.map(PlainText::line).filter(one -> !one.isBlank()).distinct().collect(Collectors.joining("; "));
            if (!line.isEmpty()) {
                lines.put(what, line);
            }
        });
        return lines;
    }

    /** The codes that a step has a result for, each behind its indicator. */
    private static Set<String> named(Procedure procedure) {
        return procedure.graphs().stream().flatMap(graph -> graph.steps().stream()).filter(Step.Observe.class::isInstance).map(Step.Observe.class::cast)
                .flatMap(step -> step.indicator().stream().flatMap(indicator -> step.outcomes().stream().map(outcome -> indicator + " " + outcome.key())))
                .collect(Collectors.toSet());
    }
}
