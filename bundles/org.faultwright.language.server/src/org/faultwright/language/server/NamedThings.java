/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.Understood;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.NamedSetUp;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** A few lines about whatever has a name. */
final class NamedThings {
    private NamedThings() {
    }

    static Optional<String> describe(Document document, NameInText name) {
        return name.declared().flatMap(declared -> all(document)
                .filter(thing -> thing.name().equals(declared)).findFirst()).map(NamedThings::lines);
    }

    private static Stream<? extends Declaration> all(Document document) {
        Stream<Declaration> steps = document.graphs().stream().map(StepGraph::writtenSteps).flatMap(List::stream);
        Stream<Fault> faults = document instanceof Procedure procedure ? procedure.faults().stream() : Stream.of();
        return Stream.of(document.scope().all(), steps, faults).flatMap(one -> one);
    }

    private static String lines(Declaration thing) {
        String heading = "**" + Markdown.plain(thing.name().text()) + "** " + Markdown.plain(thing.title());
        String more = details(thing);
        return more.isEmpty() ? heading : heading + "\n\n" + more;
    }

    private static String details(Declaration thing) {
        if (thing instanceof Step step) {
            return step.outcomes().stream().map(NamedThings::outcome).collect(Collectors.joining("\n"));
        }
        if (thing instanceof Condition condition) {
            return "Values: " + names(condition.values())
                    + condition.starts().map(start -> ". Starts " + start).orElse("")
                    + condition.ends().map(end -> ". Ends " + end).orElse("") + ".";
        }
        if (thing instanceof NamedSetUp setUp) {
            return setUp.settings().stream().map(one -> Markdown.plain(one.condition() + " " + one.value())).collect(Collectors.joining(", "));
        }
        if (thing instanceof Note note) {
            return "*" + note.word().name().toLowerCase(Locale.ROOT) + "* " + Markdown.plain(note.consequence()) + " "
                    + Markdown.plain(note.avoid());
        }
        if (thing instanceof Point point) {
            return point.carries().map(carried -> "Carries up to " + Markdown.plain(carried.upTo().value().spelling())
                    + " " + carried.kind().words().replace(" voltage", "")
                    + carried.frequency().map(frequency -> " at " + Markdown.plain(frequency.toString())).orElse("")
                    + carried.waveform().map(form -> ", " + form.value().word()).orElse("") + ".").orElse("")
                    + point.storedEnergy().map(stored -> " Stores " + Markdown.plain(stored.inWords()) + ".").orElse("");
        }
        if (thing instanceof Part part) {
            return part.number().map(number -> "Part number " + Markdown.plain(number.value()) + ". ").orElse("")
                    + part.stock().map(stock -> "Have " + stock.value() + " at hand.").orElse("");
        }
        if (thing instanceof Indicator indicator) {
            return indicator.codes().stream()
                    .map(code -> "- " + Markdown.plain(code.pattern().text()) + ": " + Markdown.plain(code.meaning()))
                    .collect(Collectors.joining("\n"));
        }
        if (thing instanceof Instrument instrument) {
            return instrument.ranges().stream().map(range -> "- " + Markdown.plain(range.at().text()))
                    .collect(Collectors.joining("\n"));
        }
        return thing instanceof Fault fault ? fault(fault) : "";
    }

    private static String outcome(Outcome outcome) {
        return "- " + Markdown.plain(outcome.key()) + " → "
                + outcome.target().map(target -> Markdown.plain(target.text())).orElse("?");
    }

    private static String fault(Fault fault) {
        return fault.cases().map(cases -> "Cases: " + cases.value() + ". ").orElse("")
                + (fault.remedies().isEmpty() ? "" : "Remedy: " + names(fault.remedies()) + ". ")
                + "Report: " + Markdown.plain(Understood.conclusion(fault).report().orElseThrow().value());
    }

    private static String names(List<Name> names) {
        return names.stream().map(name -> Markdown.plain(name.text())).collect(Collectors.joining(", "));
    }
}
