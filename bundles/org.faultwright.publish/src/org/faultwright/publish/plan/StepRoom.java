/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Part;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.PrintFonts;

/**
 * How much room a step takes in a column of A4, reckoned before anything is set in type: what is arranged by it need be right to a
 * line or two only. In millimetres.
 */
final class StepRoom {
    private static final double LINE = 3.74;
    private static final double HEAD = 4.55;
    private static final double TITLE_LINE = 4.52;
    private static final double SPACE = 2.2;
    private static final double SPACE_INSIDE = 0.6;
    private static final double LIMIT = 7;
    private static final double SCALE = 9.5;
    private static final double PICTURE = 55;
    private static final double ROW = 5;
    private static final double LISTED = 5.4;
    private static final double HEADING = 9;
    private static final double CHART_LINE = 3.7;
    /** What is free and ruled around the heading of a routine, and to the left of its steps. */
    private static final double ROUTINE = 6.5;
    private static final double BORDER = 2;
    /** The width of a column, and what is lost of it in the box of another step. */
    private static final double COLUMN = 90;
    private static final double INSET = 3;
    /** Sizes of type. */
    private static final double BODY = 9;
    private static final double TITLE = 11;
    private static final double POINT = 25.4 / 72;
    private static final int SHORT = 26;
    /** An arrow with a number and the room for a page, where it stands. */
    private static final double ARROW = 20;

    private final Procedure procedure;
    private final Scope scope;

    private final SetUps setUps;
    private final Map<Step, Routine> routineOf = new IdentityHashMap<>();

    StepRoom(Procedure procedure) {
        this.procedure = procedure;
        this.scope = procedure.scope();
        Collection<Routine> routines = Routines.within(procedure, scope).values();
        this.setUps = new SetUps(procedure, routines);
        routines.forEach(routine -> routine.steps().forEach(step -> routineOf.put(step, routine)));
    }

    /** Without the steps of a routine in place. @param inside whether it is printed in the box of another step */
    double of(Step step, boolean inside) {
        return new Reckoning(step, inside).room();
    }

    /** What is seen of a step that performs a routine printed elsewhere. */
    double sending(Step step, boolean inside) {
        Reckoning reckoning = new Reckoning(step, inside);
        return HEAD + 0.2 + (reckoning.only() ? 0 : reckoning.outcomes());
    }

    /** Of a routine that is printed apart. */
    double heading(Routine routine) {
        String title = routine.title().isBlank() ? routine.name().text() : routine.title();
        String exits = routine.exits().stream().map(exit -> PlainText.phrase(exit.text())).collect(Collectors.joining(", "));
        return ROUTINE + HEAD * lines("Routine A: " + title, TITLE, true, COLUMN - BORDER, 0, 0)
                + LINE * lines("Came from step ______  ______ (12, 13b). Ends with: " + exits + ".", BODY, false, COLUMN - BORDER, 0, 0);
    }

    private static double width(String words, double size, boolean bold) {
        return PrintFonts.width(words, bold) * size * POINT;
    }

    /** On how many lines words stand, a word that does not fit beginning the next one. @param first what stands on the first line before them */
    private static int lines(String words, double size, boolean bold, double room, double first, double last) {
        int lines = 1;
        double x = first;
        double space = width(" ", size, bold);
        for (String word : words.split(" ")) {
            double width = width(word, size, bold);
            if (x > 0 && x + width > room) {
                lines++;
                x = 0;
            }
            x += width + space;
        }
        return last > 0 && x + last > room ? lines + 1 : lines;
    }

    private static double words(String words, double room) {
        return words.isEmpty() ? 0 : LINE * lines(words, BODY, false, room, 0, 0);
    }

    private static double words(int letters) {
        return LINE * Math.ceil(letters / 57.0);
    }

    private static double lines(double letters, double onLine) {
        return Math.ceil(letters / onLine);
    }

    private static String title(Step step) {
        return step.title().isBlank() ? step.name().text() : step.title();
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
        long instruments = steps.stream().flatMap(step -> Stream.concat(step.frame().precautions().tries().stream(),
                step instanceof Step.Measure measure ? measure.instrument().stream() : Stream.empty())).map(Name::text).distinct().count();
        room += likely.cases().isEmpty() ? 0 : HEADING + 2 * LINE + likely.cases().stream().mapToDouble(one -> 4.6 * lines(one.fault().title().length(), 28)).sum();
        room += HEADING + instruments * 2 * LINE + needed.size() * LINE;
        room += conditions.isEmpty() ? 0 : HEADING + LINE * lines(conditions.size(), 2);
        return room + HEADING + own * CHART_LINE + 4 * CHART_LINE;
    }

    /** What is filled in after the steps: two parts that are kept whole, and what runs on behind them. */
    double[] end(Collection<Step> steps, Likely likely) {
        long sources = steps.stream().flatMap(step -> step.frame().source().stream()).distinct().count();
        long tests = steps.stream().filter(step -> !step.frame().precautions().tests().isEmpty()).count();
        double faults = likely.cases().stream().mapToDouble(one -> words(one.fault().title().length() + 4)).sum();
        return new double[] { HEADING + LINE * 3 + faults + 24, HEADING + 2 * LINE + tests * 6 + 30, HEADING + sources * LINE * 1.2 + 3 * LINE };
    }

    /** One step being reckoned. */
    private final class Reckoning {
        private final Step step;
        private final StepFrame frame;
        private final boolean inside;
        private final double room;

        Reckoning(Step step, boolean inside) {
            this.step = step;
            this.frame = step.frame();
            this.inside = inside;
            this.room = COLUMN - (inside ? INSET : 0);
        }

        double room() {
            double notes = notes();
            double body = body();
            boolean sets = !frame.sets().isEmpty();
            boolean only = only();
            boolean way = only && notes + body == 0 && !sets;
            double total = (inside ? SPACE_INSIDE : SPACE) + TITLE_LINE * head(way) + notes + body;
            if (step instanceof Step.Perform) {
                return total;
            }
            if (only) {
                // where no chips go before it an arrow stands at the end of what is said last, if that is no note
                return total + (sets ? chips("Then ", frame.sets(), ARROW) : notes > 0 && body == 0 ? HEAD : 0);
            }
            return total + (sets ? chips("Then ", frame.sets(), 0) : 0) + outcomes() + (step instanceof Step.Conclude ? LINE : 0);
        }

        boolean only() {
            return step.outcomes().size() == 1 && step.answer() != Step.Answer.SEEN
                    && step.outcomes().get(0).proves().isEmpty() && step.outcomes().get(0).repeat().isEmpty();
        }

        private int head(boolean way) {
            double number = width("12b  ", inside ? 10 : 12, true) + width(step.keyword() + "   ", BODY, false);
            String more = Stream.of(frame.takes().map(time -> time.value().spelling()), frame.waits().map(wait -> "wait " + wait.value().spelling()),
                    frame.confirms().map(at -> "confirms the complaint"), frame.verifies().map(at -> "proves the repair"))
                    .flatMap(Optional::stream).collect(Collectors.joining(" \u00B7 "));
            double last = width(more, BODY, false) + (frame.source().isPresent() ? 4 : 0) + (way ? 18 : 0);
            return lines(title(step), TITLE, true, room, number, Math.min(last, way ? last : 12));
        }

        private double notes() {
            return frame.notes().stream().flatMap(name -> scope.note(name).stream()).mapToDouble(note -> 0.8
                    + words("! " + note.word() + "  " + Wording.hazards(note) + " " + note.avoid() + " note 1", room - 3)).sum();
        }

        /** @param last whether nothing is said behind it, so that an arrow may stand at its end */
        private double lastly(String words, boolean last) {
            return words.isEmpty() ? 0 : LINE * lines(words, BODY, false, room, 0, last && only() && frame.sets().isEmpty() ? ARROW : 0);
        }

        private static String named(String key, String words) {
            return words.isEmpty() ? "" : key + words;
        }

        /** Settings in a row, each in its frame. @param last what stands behind them */
        private double chips(String key, List<Setting> settings, double last) {
            return HEAD * lines(key + settings.stream().map(setting -> Wording.setting(setting, scope).replace(' ', '\u00A0') + "\u00A0\u00A0\u00A0")
                    .collect(Collectors.joining(" ")), BODY, true, room, 0, last);
        }

        private double body() {
            List<Setting> needs = inside ? frame.needs() : setUps.toTell(step);
            double total = frame.precautions().tries().size() * LINE
                    + frame.precautions().liveBecause().map(why -> words("Live work " + why.value(), room)).orElse(0.0)
                    + frame.hint().map(hint -> lastly(hint.value(), true)).orElse(0.0)
                    + (needs.isEmpty() ? 0 : chips("With ", needs, 0)) + PICTURE * frame.pictures().size();
            String parts = frame.handles().stream().map(name -> scope.part(name).map(Part::title).orElse("")).collect(Collectors.joining(", "));
            String handling = Stream.of(named("Part ", parts), named("Tools ", Wording.tools(frame)), named("Mind ", Wording.hazards(frame, scope)))
                    .filter(words -> !words.isEmpty()).collect(Collectors.joining("   "));
            return total + lastly(handling, frame.hint().isEmpty()) + ownClauses();
        }

        double outcomes() {
            List<Outcome> outcomes = step.outcomes();
            if (outcomes.isEmpty()) {
                return 0;
            }
            boolean row = outcomes.stream().allMatch(outcome -> outcome.proves().isEmpty() && outcome.repeat().isEmpty() && seen(outcome).length() <= SHORT);
            if (row) {
                double x = 0;
                int lines = 1;
                for (Outcome outcome : outcomes) {
                    double width = 5.5 + width(seen(outcome), BODY, true) + arrow(outcome);
                    lines += x > 0 && x + width > room ? 1 : 0;
                    x = (x > 0 && x + width > room ? 0 : x) + width + width("     ", BODY, false);
                }
                return 0.4 + ROW * lines;
            }
            return outcomes.stream().mapToDouble(outcome -> LISTED * lines(seen(outcome) + (outcome.proves().isEmpty() ? ""
                    : " (proves " + "Stored charge absent)"), BODY, false, room - 5, 0, 3 + arrow(outcome)) + (outcome.repeat().isPresent() ? HEAD + 0.6 : 0)).sum();
        }

        /** Out of a routine that stands apart it is words. */
        private double arrow(Outcome outcome) {
            Optional<String> exit = inside ? Optional.empty() : outcome.target().filter(name -> Optional.ofNullable(routineOf.get(step))
                    .filter(routine -> routine.isExit(name)).isPresent()).map(Name::text);
            return exit.map(name -> width("back with: " + PlainText.phrase(name), BODY, true)).orElse(ARROW);
        }

        private String seen(Outcome outcome) {
            String detail = outcome.head() instanceof Outcome.Band it && it.label().isPresent() ? " " + it.limit().value().spelling()
                    : outcome.head() instanceof Outcome.Code code && step instanceof Step.Observe observe ? " ______ " + observe.indicator().flatMap(scope::indicator).stream()
                            .flatMap(indicator -> indicator.codes().stream()).filter(one -> one.pattern().text().equals(code.key()))
                            .map(one -> one.meaning()).findFirst().orElse("") : "";
            return outcome.key() + detail;
        }

        /** What a step of this kind alone says. */
        private double ownClauses() {
            double drawn = 0;
            if (step instanceof Step.Observe observe) {
                drawn = observe.indicator().isPresent() ? LINE + 0.6 : 0;
            } else if (step instanceof Step.Measure measure) {
                drawn = measure(measure);
            } else if (step instanceof Step.Do task) {
                drawn = task.adjusts().size() * HEAD;
            } else if (step instanceof Step.Calculate calculate) {
                drawn = calculate(calculate);
            } else if (step instanceof Step.Conclude conclude) {
                drawn = conclude.report().map(report -> words("Report " + report.value(), room)).orElse(0.0);
            }
            return drawn + PlainClauses.of(step, procedure).stream()
                    .mapToDouble(clause -> LINE * lines(clause.key() + " " + clause.words(), BODY, true, room, 0, 0)).sum();
        }

        private double measure(Step.Measure measure) {
            String at = Stream.concat(measure.point().stream(), measure.against().stream()).map(name -> Wording.point(name, scope)).collect(Collectors.joining(" against "));
            String with = measure.instrument().flatMap(scope::instrument).map(instrument -> instrument.title().split(",")[0] + ", ").orElse("")
                    + measure.kind().map(kind -> kind.value().words()).orElse("") + measure.sensor().map(sensor -> ", type " + sensor.value()).orElse("")
                    + ", range " + measure.range().map(range -> range.value().spelling()).orElse("600 V");
            boolean scale = measure.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
            double readings = measure.rows().isEmpty() ? LIMIT + (scale ? SCALE : 0) : LINE + measure.rows().stream().mapToDouble(this::row).sum();
            return (at.isEmpty() ? 0 : LINE * lines("At " + at, BODY, true, room, 0, 0)) + words("Instrument  " + with, room) + readings
                    + (measure.point().flatMap(scope::point).flatMap(Point::storedEnergy).isPresent() ? LINE : 0);
        }

        private double row(Step.Row row) {
            String title = scope.point(row.point()).map(Point::title).orElse(row.point().text());
            return Math.max(LIMIT, Math.max(LINE * lines(title, BODY, true, room * 0.4, 0, 0),
                    HEAD * lines(row.limit().value().spelling(), TITLE, true, room * 0.28, 0, 0)));
        }

        private double calculate(Step.Calculate calculate) {
            boolean scale = calculate.outcomes().stream().anyMatch(outcome -> outcome.key().equals(Step.DOUBTFUL));
            return 3 * LINE + LIMIT + (scale ? SCALE : 0);
        }
    }
}
