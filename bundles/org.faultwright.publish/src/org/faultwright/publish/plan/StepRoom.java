/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;

/**
 * How much room a step takes in a column of A4, reckoned before anything is set in type: what is arranged by it need be right to a
 * line or two only. In millimetres.
 */
final class StepRoom {
    private static final double LINE = 3.88;
    private static final double HEAD = 4.6;
    private static final double SPACE = 2.6;
    private static final double SPACE_INSIDE = 0.8;
    /** Letters on a line of a title, and of other words. */
    private static final double TITLE_LETTERS = 38.5;
    private static final double LETTERS = 58;
    private static final double LIMIT = 6;
    private static final double SCALE = 9;
    private static final double PICTURE = 55;
    private static final double OUTCOME = 5.8;
    private static final int SHORT = 26;
    private static final double HEADING = 9;
    private static final double CHART_LINE = 3.3;

    private final Procedure procedure;
    private final Scope scope;

    StepRoom(Procedure procedure) {
        this.procedure = procedure;
        this.scope = procedure.scope();
    }

    /** Without the steps of a routine in place. @param inside whether it is printed in the box of another step */
    double of(Step step, boolean inside) {
        StepFrame frame = step.frame();
        boolean only = step.outcomes().size() == 1 && !(step instanceof Step.Check || step instanceof Step.Observe)
                && step.outcomes().get(0).proves().isEmpty() && step.outcomes().get(0).repeat().isEmpty();
        double body = body(step, inside);
        double room = (inside ? SPACE_INSIDE : SPACE) + HEAD * lines(9 + title(step).length() + more(frame), TITLE_LETTERS) + body;
        if (step instanceof Step.Perform) {
            return room;
        }
        if (only) {
            return room + (frame.sets().isEmpty() ? body == 0 ? 0 : inside ? 0 : HEAD : HEAD);
        }
        return room + (frame.sets().isEmpty() ? 0 : HEAD) + outcomes(step) + (step instanceof Step.Conclude ? LINE : 0);
    }

    /** What is read before the steps begin, but for the head of the first page. @param steps all that are printed @param own how many of them are the procedure's */
    double front(Collection<Step> steps, int own, Likely likely) {
        double room = HEADING + 3 * LINE;
        Set<String> notes = new LinkedHashSet<>();
        Set<String> needed = new LinkedHashSet<>();
        Set<String> conditions = new LinkedHashSet<>();
        procedure.tools().forEach(tool -> needed.add(tool.value()));
        for (Step step : steps) {
            step.frame().notes().forEach(note -> notes.add(note.text()));
            step.frame().tools().forEach(tool -> needed.add(tool.value()));
            step.frame().handles().forEach(part -> needed.add(part.text()));
            step.frame().needs().forEach(need -> conditions.add(need.condition().text()));
            step.frame().sets().forEach(set -> conditions.add(set.condition().text()));
        }
        for (Note note : scope.notes()) {
            room += notes.contains(note.name().text()) ? 2.5 + words(note.hazard().length() * 6 / 5 + note.consequence().length() + note.avoid().length() + 45) : 0;
        }
        long instruments = steps.stream().filter(Step.Measure.class::isInstance).flatMap(step -> ((Step.Measure) step).instrument().stream())
                .map(Name::text).distinct().count();
        room += likely.cases().isEmpty() ? 0 : HEADING + 2 * LINE + likely.cases().stream().mapToDouble(one -> 4.6 * lines(one.fault().title().length(), 28)).sum();
        room += HEADING + instruments * 2 * LINE + needed.size() * LINE;
        room += conditions.isEmpty() ? 0 : HEADING + LINE * lines(conditions.size(), 2);
        return room + HEADING + own * CHART_LINE + 4 * CHART_LINE + HEADING;
    }

    /** What is filled in after the steps. */
    double end(Collection<Step> steps, Likely likely) {
        long sources = steps.stream().flatMap(step -> step.frame().source().stream()).distinct().count();
        long tests = steps.stream().filter(step -> !step.frame().precautions().tests().isEmpty()).count();
        double faults = likely.cases().stream().mapToDouble(one -> words(one.fault().title().length() + 4)).sum();
        return HEADING + LINE * 3 + faults + 24 + HEADING + 2 * LINE + tests * 6 + 30 + HEADING + sources * LINE * 1.2 + 3 * LINE;
    }

    /** What is seen of a step that performs a routine printed elsewhere. */
    double sending(Step step) {
        return LINE + 0.4 + outcomes(step);
    }

    private static int more(StepFrame frame) {
        return (frame.takes().isPresent() ? 5 : 0) + (frame.waits().isPresent() ? 10 : 0) + (frame.confirms().isPresent() ? 20 : 0)
                + (frame.verifies().isPresent() ? 15 : 0);
    }

    private static String title(Step step) {
        return step.title().isBlank() ? step.name().text() : step.title();
    }

    private double body(Step step, boolean inside) {
        StepFrame frame = step.frame();
        double room = frame.notes().stream().flatMap(name -> scope.note(name).stream()).mapToDouble(note -> 0.8
                + words(36 + note.avoid().split("(?<=[.!?]) ", 2)[0].length())).sum() + frame.precautions().tries().size() * LINE
                + frame.precautions().liveBecause().map(why -> words(10 + why.value().length())).orElse(0.0)
                + frame.hint().filter(hint -> !inside).map(hint -> words(hint.value().length())).orElse(0.0) + (frame.needs().isEmpty() ? 0 : HEAD * 0.8)
                + PICTURE * frame.pictures().size();
        int handling = Stream.concat(frame.handles().stream().map(name -> scope.part(name).map(Part::title).orElse("")),
                frame.tools().stream().map(tool -> tool.value())).mapToInt(words -> words.length() + 2).sum();
        room += handling + frame.hazards().size() > 0 ? words(handling + 12 * frame.hazards().size() + 8) : 0;
        return room + step.match(new Detail());
    }

    private static double words(int letters) {
        return LINE * lines(letters, LETTERS);
    }

    private static double lines(double letters, double onLine) {
        return Math.ceil(letters / onLine);
    }

    private double outcomes(Step step) {
        List<Outcome> outcomes = step.outcomes();
        if (outcomes.isEmpty()) {
            return 0;
        }
        boolean plain = outcomes.stream().allMatch(outcome -> outcome.proves().isEmpty() && outcome.repeat().isEmpty()
                && letters(outcome) <= SHORT);
        if (plain) {
            return 0.5 + OUTCOME * Math.ceil(outcomes.stream().mapToInt(outcome -> letters(outcome) + 13).sum() / LETTERS);
        }
        return outcomes.stream().mapToDouble(outcome -> OUTCOME * lines(letters(outcome) + 14, LETTERS)
                + (outcome.repeat().isPresent() ? HEAD : 0)).sum();
    }

    private static int letters(Outcome outcome) {
        int band = outcome.head() instanceof Outcome.Band it && it.label().isPresent() ? it.limit().value().spelling().length() + 1 : 0;
        return outcome.key().length() + band + (outcome.head() instanceof Outcome.Code ? 25 : 0) + outcome.proves().size() * 30;
    }

    /** What one kind of step says and another does not. */
    private final class Detail implements Step.Cases<Double> {
        @Override
        public Double check(Step.Check step) {
            return 0.0;
        }

        @Override
        public Double observe(Step.Observe step) {
            return step.indicator().isPresent() ? LINE : 0.0;
        }

        @Override
        public Double measure(Step.Measure step) {
            int at = Stream.concat(step.point().stream(), step.against().stream()).flatMap(name -> scope.point(name).stream())
                    .map(Point::title).mapToInt(title -> title.length() + 18).sum();
            int with = step.instrument().flatMap(scope::instrument).map(instrument -> instrument.title().split(",")[0].length()).orElse(0)
                    + (step.instrument().isPresent() ? 12 : 0) + 26;
            boolean scale = LimitStudy.of(procedure, step).flatMap(LimitStudy::expected).isPresent()
                    && step.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
            return (at > 0 ? words(at) : 0) + words(with) + (step.rows().isEmpty() ? LIMIT + (scale ? SCALE : 0) : LINE + LIMIT * step.rows().size());
        }

        @Override
        public Double carryOut(Step.Do step) {
            return step.adjusts().size() * LINE + (step.erases().isPresent() ? LINE : 0);
        }

        @Override
        public Double calculate(Step.Calculate step) {
            boolean scale = step.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
            return 3 * LINE + LIMIT + (scale ? SCALE : 0);
        }

        @Override
        public Double perform(Step.Perform step) {
            return 0.0;
        }

        @Override
        public Double conclude(Step.Conclude step) {
            int found = step.finds().stream().flatMap(name -> procedure.fault(name).stream()).mapToInt(fault -> fault.title().length() + 2).sum();
            return (found > 0 || step.findsNothing().isPresent() ? words(found + 6) : 0) + (step.refersTo().isPresent() ? LINE : 0)
                    + step.report().map(report -> words(report.value().length() + 10)).orElse(0.0);
        }
    }
}
