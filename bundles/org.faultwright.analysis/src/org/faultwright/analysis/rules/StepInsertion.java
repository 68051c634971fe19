/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.ResultWords;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.analysis.paths.Transition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;

/** Writes a new step before one of the procedure's own and turns arrows that led to it towards the new one. */
final class StepInsertion {
    private final Procedure procedure;
    private final Step before;
    /** By the place of each, what the text puts before the name of the new step there, and behind it. */
    private final Map<Object, Arrow> arrows = new LinkedHashMap<>();
    private boolean takesOverBegin;

    StepInsertion(Procedure procedure, Step before) {
        this.procedure = procedure;
        this.before = before;
    }

    /** Turns the arrow of an outcome, or the one it takes when its bound is reached. */
    void turn(Transition way, boolean otherwise) {
        way.outcome().flatMap(outcome -> otherwise ? outcome.repeat().map(repeat -> repeat.otherwise())
                : outcome.target()).ifPresent(target -> arrows.put(target.isUnderstood() ? way.outcome().get() : target.at(), new Arrow(target.at(),
                        target.isUnderstood() ? way.outcome() : Optional.empty())));
    }

    /** @param unsaid the outcome whose line is to be written first */
    private record Arrow(SourceRange at, Optional<Outcome> unsaid) {
        Fix.Edit to(String name) {
            return new Fix.Edit(at, unsaid.map(outcome -> ResultWords.arrow(outcome, name)).orElse(name));
        }
    }

    /** Turns every arrow of the map that comes to the place. */
    void turnAll(List<Transition> ways, InlinedStep to) {
        for (Transition way : ways) {
            if (way.to().filter(place -> place == to).isPresent()) {
                turn(way, false);
            }
            if (way.otherwise().filter(place -> place == to).isPresent()) {
                turn(way, true);
            }
        }
        turnBegin();
    }

    /** Lets the procedure begin with the new step if it began with the one behind. */
    void turnBegin() {
        takesOverBegin = isFirst(before);
    }

    private boolean isFirst(Step step) {
        return procedure.first().filter(first -> first == step).isPresent();
    }

    /** A name that no step or other declaration of the file has yet: the one given, or that with a number. */
    String freeName(String wanted) {
        Set<String> taken = new HashSet<>();
        procedure.steps().forEach(step -> taken.add(step.name().text()));
        procedure.faults().forEach(fault -> taken.add(fault.name().text()));
        procedure.scope().conditions().forEach(one -> taken.add(one.name().text()));
        procedure.scope().routines().forEach(one -> taken.add(one.name().text()));
        procedure.scope().notes().forEach(one -> taken.add(one.name().text()));
        String name = wanted;
        for (int number = 2; taken.contains(name); number++) {
            name = wanted + number;
        }
        return name;
    }

    /**
     * @param name  of the new step, which the arrows lead to from now on
     * @param lines of the new step and what comes with it, without indentation
     */
    Fix fix(String title, String name, List<String> lines) {
        List<Fix.Edit> edits = new ArrayList<>();
        arrows.values().forEach(arrow -> edits.add(arrow.to(name)));
        if (takesOverBegin) {
            procedure.begin().map(Name::at).ifPresent(begin -> edits.add(new Fix.Edit(begin, name)));
        }
        boolean mustNotComeFirst = isFirst(before) && procedure.begin().isEmpty() && !takesOverBegin;
        edits.add(before.isUnderstood() ? behind(procedure.writtenSteps().stream().reduce((one, next) -> next).orElse(before), lines)
                : mustNotComeFirst ? behind(before, lines) : ahead(lines));
        return new Fix(title, List.copyOf(edits));
    }

    private Fix.Edit ahead(List<String> lines) {
        String text = procedure.source().content();
        int at = before.at().offset();
        String indent = indent(text, at);
        for (int above = lineStart(text, at); above > 0;) {
            int start = lineStart(text, above - 1);
            if (!text.substring(start, above).strip().startsWith("//")) {
                break;
            }
            at = start + indent(text, start + leadingBlanks(text, start)).length();
            above = start;
        }
        return new Fix.Edit(new SourceRange(procedure.source(), at, 0), joined(lines, indent) + "\n\n" + indent);
    }

    private Fix.Edit behind(Step step, List<String> lines) {
        String indent = indent(procedure.source().content(), step.at().offset());
        return new Fix.Edit(new SourceRange(procedure.source(), step.at().end(), 0),
                "\n\n" + indent + joined(lines, indent));
    }

    private static String joined(List<String> lines, String indent) {
        return String.join("\n" + indent, lines);
    }

    /** The blanks that a line begins with, if nothing else stands before this place. */
    private static String indent(String text, int at) {
        String before = text.substring(lineStart(text, at), at);
        return before.isBlank() ? before : "";
    }

    private static int leadingBlanks(String text, int lineStart) {
        int at = lineStart;
        while (at < text.length() && (text.charAt(at) == ' ' || text.charAt(at) == '\t')) {
            at++;
        }
        return at - lineStart;
    }

    private static int lineStart(String text, int at) {
        return text.lastIndexOf('\n', at - 1) + 1;
    }
}
