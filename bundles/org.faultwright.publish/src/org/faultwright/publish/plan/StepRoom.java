/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.measurement.DoubtfulReadings;
import org.faultwright.analysis.measurement.LimitStudy;
import org.faultwright.procedure.Instrument;
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
import org.faultwright.publish.Caution;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Paper;
import org.faultwright.publish.page.PlainText;
import org.faultwright.publish.page.PrintFonts;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.measure.ReadingBox;

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
    private static final double HEADING_OF_TWO_LINES = 13.5;
    private static final double CHART_LINE = 3.7;
    /** Of the head: the name of the procedure, its equipment, the job in hand, the code beside them. */
    private static final double NAME = 17;
    private static final double NAME_LINE = 7.06;
    private static final double EQUIPMENT_LINE = 4.94;
    private static final double JOB = 17.5;
    private static final double CODE = 23;
    /** What a frame around words takes, with what is free around it. */
    private static final double FRAME = 2.6;
    /** Of a heading, what is free above it and left out at the top of a column. */
    private static final double ABOVE = 3;
    /** A table of faults has columns for their cases, times and ends; what is ticked is set in behind its box. */
    private static final double FAULT_COLUMNS = 48;
    private static final double INSET_BOX = 5;
    private static final String PART = ", part no. 12";
    /** How many routines are named below the chart, usually. */
    private static final int ROUTINES = 3;
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
    private static final int MOST_BOXES = 6;
    /** An arrow with a number and the room for a page, where it stands. */
    private static final double ARROW = 20;
    private static final double LETTER = 2.5;
    /** A box for a digit, and the room for a value of unknown digits with its unit. */
    private static final double BOX = 4.5;
    private static final double WRITING = 32;
    private static final double CLOSE = 40;
    /** What stands between the boxes of two visits. */
    private static final double TWICE = 12;

    private final Procedure procedure;
    private final Scope scope;

    private final ToldSettings setUps;
    private final Map<Step, Routine> routineOf = new IdentityHashMap<>();
    private final Set<Routine> comeToAgain = Collections.newSetFromMap(new IdentityHashMap<>());

    StepRoom(Procedure procedure) {
        this.procedure = procedure;
        this.scope = procedure.scope();
        Collection<Routine> routines = PerformedRoutines.within(procedure, scope).values();
        this.setUps = new ToldSettings(procedure, routines);
        routines.forEach(routine -> routine.steps().forEach(step -> routineOf.put(step, routine)));
        routines.stream().filter(routine -> RoutineVisits.of(procedure, routine, scope, step -> true) > 1).forEach(comeToAgain::add);
    }

    /** Without the steps of a routine in place. @param inside whether it is printed in the box of another step */
    double of(Step step, boolean inside) {
        return new Reckoning(step, inside, !inside && isTwice(step)).room();
    }

    /** The same in the box of a step that may be come by twice. */
    double insideTwice(Step step) {
        return new Reckoning(step, true, true).room();
    }

    /** Whether it may be come by twice, where its routine is printed apart: then what is filled in has room twice. */
    boolean isTwice(Step step) {
        return Optional.ofNullable(routineOf.get(step)).filter(comeToAgain::contains).isPresent();
    }

    /** What is seen of a step that performs a routine printed elsewhere. */
    double sending(Step step, boolean inside) {
        Reckoning reckoning = new Reckoning(step, inside, !inside && isTwice(step));
        return HEAD + 0.2 + (reckoning.only() ? 0 : reckoning.outcomes());
    }

    /** Of the heading of the steps, with what is said once for all of them. */
    double beginning() {
        boolean reads = Stream.concat(procedure.steps().stream(), routineOf.keySet().stream()).anyMatch(step -> step instanceof Step.Measure measure
                && measure.instrument().isPresent());
        return HEADING_OF_TWO_LINES + (comeToAgain.isEmpty() ? 0 : LINE) + (reads ? words(Wording.OVERLOAD, COLUMN) : 0) + words(Wording.WRONG, COLUMN);
    }

    /** Of a routine that is printed apart. */
    double heading(Routine routine) {
        String title = routine.title().isBlank() ? routine.name().text() : routine.title();
        String exits = routine.exits().stream().map(exit -> PlainText.phrase(exit.text())).collect(Collectors.joining(", "));
        return ROUTINE + HEAD * lines("Routine A: " + title, TITLE, true, COLUMN - BORDER, 0, 0)
                + LINE * lines("Came from step 1st ______ 2nd ______ (12, 13b). Ends with: " + exits + ".", BODY, false, COLUMN - BORDER, 0, 0);
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

    private static double lines(double letters, double onLine) {
        return Math.ceil(letters / onLine);
    }

    private static String title(Step step) {
        return step.title().isBlank() ? step.name().text() : step.title();
    }

    /** The head of the first page, above its columns. */
    double head() {
        double room = Paper.A4.room() - CODE;
        String equipment = procedure.equipment().map(Wording::equipment).orElse("");
        String complaints = procedure.complaints().isEmpty() ? "" : "Complaints such as  " + procedure.complaints().stream()
                .map(complaint -> "\u201C" + complaint.value() + "\u201D").collect(Collectors.joining(", "));
        return Math.max(CODE, NAME_LINE * lines(procedure.title(), NAME, true, room, 0, 0) + (equipment.isEmpty() ? 0 : EQUIPMENT_LINE) + words(complaints, room) + LINE) + JOB;
    }

    /** What is read before the steps begin, but for the head of the first page: parts that are kept whole, and what runs on behind them. @param steps all that are printed @param rows of the chart */
    double[] front(Collection<Step> steps, int rows, LikelyFaults likely) {
        List<Double> rooms = new ArrayList<>();
        double room = HEADING - ABOVE + words(Caution.FIRST + "  " + Caution.TRAINED, COLUMN);
        Map<String, Integer> notes = new LinkedHashMap<>();
        Set<String> needed = new LinkedHashSet<>();
        Set<String> conditions = new LinkedHashSet<>();
        Map<Instrument, Set<String>> kinds = new LinkedHashMap<>();
        procedure.tools().forEach(tool -> needed.add(tool.value()));
        for (Step step : steps) {
            step.frame().notes().forEach(note -> notes.merge(note.text(), 1, Integer::sum));
            step.frame().tools().forEach(tool -> needed.add(tool.value()));
            step.frame().handles().forEach(part -> needed.add(scope.part(part).map(Part::title).orElse("") + PART));
            step.frame().needs().forEach(need -> conditions.add(need.condition().text()));
            step.frame().sets().forEach(set -> conditions.add(set.condition().text()));
            step.frame().precautions().tries().stream().flatMap(name -> scope.instrument(name).stream())
                    .forEach(tried -> kinds.computeIfAbsent(tried, none -> new LinkedHashSet<>()));
            if (step instanceof Step.Measure measure) {
                measure.instrument().flatMap(scope::instrument).ifPresent(with -> kinds.computeIfAbsent(with, none -> new LinkedHashSet<>())
                        .add(measure.kind().map(kind -> kind.value().words()).orElse("") + " 600 ohm; "));
            }
        }
        for (Note note : scope.notes()) {
            int times = notes.getOrDefault(note.name().text(), 0);
            String words = "! " + note.word() + "  note 1 " + note.hazard() + "  " + note.consequence() + " " + note.avoid() + " Steps" + " 12a,".repeat(times);
            if (times > 0) {
                rooms.add(room + FRAME + words(words, COLUMN - FRAME));
                room = 0;
            }
        }
        room += likely.cases().isEmpty() ? 0 : HEADING + 2 * LINE
                + likely.cases().stream().mapToDouble(one -> words(one.fault().title(), COLUMN - FAULT_COLUMNS)).sum();
        rooms.add(room);
        room = HEADING + kinds.entrySet().stream().mapToDouble(one -> words(one.getKey().title() + ": " + String.join("", one.getValue()) + "calibrated until 2027-03-31", COLUMN - INSET_BOX)).sum();
        room += LINE * lines(needed.stream().map(tool -> "O\u00A0" + tool.replace(' ', '\u00A0') + "\u00A0\u00A0").collect(Collectors.joining(" ")), BODY, false, COLUMN - INSET_BOX, 0, 0);
        room += conditions.isEmpty() ? 0 : HEADING + LINE * lines(conditions.size(), 2);
        rooms.add(room + HEADING + rows * CHART_LINE + ROUTINES * CHART_LINE);
        return rooms.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** What is filled in after the steps: two parts that are kept whole, and what runs on behind them. */
    double[] end(Collection<Step> steps, LikelyFaults likely) {
        long sources = steps.stream().flatMap(step -> step.frame().source().stream()).distinct().count();
        long tests = steps.stream().filter(step -> !step.frame().precautions().tests().isEmpty()).count();
        long conventions = steps.stream().anyMatch(step -> DoubtfulReadings.of(procedure, step).isPresent()) ? 1 : 0;
        double faults = likely.cases().stream().mapToDouble(one -> words(one.fault().title(), COLUMN - INSET_BOX)).sum();
        return new double[] { HEADING + LINE * 2 + faults + 24, HEADING + 2 * LINE + tests * 6 + 30, HEADING + sources * LINE * 1.2 + 5 * LINE * conventions };
    }

    /** One step being reckoned. */
    private final class Reckoning {
        private final Step step;
        private final StepFrame frame;
        private final boolean inside;
        private final double room;
        private final double arrow;
        private final boolean twice;

        Reckoning(Step step, boolean inside, boolean twice) {
            this.step = step;
            this.frame = step.frame();
            this.inside = inside;
            this.room = COLUMN - (inside ? INSET : 0);
            this.arrow = ARROW + (inside ? LETTER : 0);
            this.twice = twice;
        }

        double room() {
            double notes = notes();
            double body = body();
            boolean only = only();
            boolean way = only && body == 0 && !(step instanceof Step.Perform);
            double total = (inside ? SPACE_INSIDE : SPACE) + TITLE_LINE * head(way) + notes + body;
            if (step instanceof Step.Perform) {
                return total;
            }
            return total + (body == 0 && step instanceof Step.Conclude ? HEAD : 0) + (only ? 0 : outcomes());
        }

        boolean only() {
            return step.outcomes().size() == 1 && step.answer() != Step.Answer.SEEN
                    && step.outcomes().get(0).proves().isEmpty() && step.outcomes().get(0).repeat().isEmpty();
        }

        private int head(boolean way) {
            double number = width(inside ? "12b   " : "12   ", inside ? 10 : 12, true);
            String more = Stream.of(frame.takes().map(time -> Wording.printed(time.value())), frame.waits().map(wait -> "wait " + Wording.printed(wait.value())),
                    frame.confirms().map(at -> "confirms the complaint"), frame.verifies().map(at -> "proves the repair"))
                    .flatMap(Optional::stream).collect(Collectors.joining(" \u00B7 "));
            double last = width(more, BODY, false) + (frame.source().isPresent() ? 4 : 0) + (way ? 18 : 0);
            return lines(title(step), TITLE, true, room, number, Math.min(last, way ? last : 12));
        }

        private double notes() {
            return frame.notes().stream().flatMap(name -> scope.note(name).stream()).mapToDouble(note -> 0.8
                    + words("! " + note.word() + "  " + Wording.hazards(note) + " " + note.avoid() + " note 1", room - 3)).sum();
        }

        /** Words with what goes on behind them on the same line. */
        private final class Line {
            private double x;
            private int lines;

            Line say(String words, boolean bold) {
                double space = width(" ", BODY, bold);
                for (String word : words.isEmpty() ? new String[0] : words.split(" ")) {
                    end(width(word, BODY, bold));
                    x += space;
                }
                return this;
            }

            Line end(double width) {
                lines = lines == 0 || x > 0 && x + width > room ? lines + 1 : lines;
                x = (x > 0 && x + width > room ? 0 : x) + width;
                return this;
            }

            Line chips(String key, List<Setting> settings) {
                return settings.isEmpty() ? this : say(key, false).say(settings.stream().map(setting -> Wording.setting(setting, scope)
                        .replace(' ', '\u00A0') + "\u00A0\u00A0").collect(Collectors.joining(" ")), true);
            }

            Line named(String key, String words) {
                return words.isEmpty() ? this : say(key + "\u00A0" + words + "\u00A0", false);
            }

            boolean isEmpty() {
                return lines == 0;
            }

            double room() {
                return lines * HEAD;
            }
        }

        /** What is needed, handled and set goes on in one line where nothing is said between. */
        private double body() {
            double between = frame.precautions().tries().size() * LINE + ownClauses() + PICTURE * frame.pictures().size();
            String hint = frame.hint().map(hinted -> hinted.value()).orElse("");
            double live = frame.precautions().liveBecause().map(why -> words("Live work " + why.value(), room)).orElse(0.0);
            Line needs = new Line().chips("With", setUps.toTell(step));
            Line handling = between > 0 ? new Line() : needs;
            handling.named("In hand", frame.handles().stream().map(name -> scope.part(name).map(Part::title).orElse("")).collect(Collectors.joining(", ")))
                    .named("Tools", Wording.tools(frame)).named("Mind", Wording.hazards(frame, scope));
            Line then = live > 0 || !hint.isEmpty() ? new Line() : handling;
            boolean performs = step instanceof Step.Perform;
            then.chips("Then", performs ? List.of() : frame.sets());
            if (only() && !performs && !then.isEmpty()) {
                then.end(arrow);
            }
            boolean last = only() && !performs && then.isEmpty();
            double total = between + live + LINE * (hint.isEmpty() ? 0 : lines(hint, BODY, false, room, 0, last ? arrow : 0));
            return total + Stream.of(needs, handling, then).distinct().mapToDouble(Line::room).sum();
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
                    double width = (twice ? 10 : 6) + width(seen(outcome), BODY, true) + arrow(outcome, ARROW);
                    lines += x > 0 && x + width > room ? 1 : 0;
                    x = (x > 0 && x + width > room ? 0 : x) + width + width("     ", BODY, false);
                }
                return 0.4 + ROW * lines;
            }
            return outcomes.stream().mapToDouble(outcome -> LISTED * lines(seen(outcome) + (outcome.proves().isEmpty() ? ""
                    : " (proves " + "Stored charge absent)"), BODY, false, room - 5, twice ? LETTER : 0, 3 + arrow(outcome, arrow)) + outcome.repeat().map(repeat -> repeated(outcome, repeat)).orElse(0.0)).sum();
        }

        private double repeated(Outcome outcome, Outcome.Repeat repeat) {
            double boxes = BOX * Math.min(repeat.atMost(), MOST_BOXES) * (twice ? 2 : 1);
            return (HEAD + 0.6) * lines(Wording.atMost(repeat) + ", then", BODY, false, room, boxes, arrow(repeat.otherwise(), arrow));
        }

        /** Out of a routine that stands apart it is words. @param within the room of an arrow to a step */
        private double arrow(Outcome outcome, double within) {
            return outcome.target().map(name -> arrow(name, within)).orElse(within);
        }

        private double arrow(Name to, double within) {
            Optional<String> exit = inside && !twice ? Optional.empty() : Optional.of(to).filter(name -> Optional.ofNullable(routineOf.get(step))
                    .filter(routine -> routine.isExit(name)).isPresent()).map(Name::text);
            return exit.map(name -> width("\u21A9 back with: " + PlainText.phrase(name), BODY, true)).orElse(within);
        }

        private String seen(Outcome outcome) {
            String detail = outcome.head() instanceof Outcome.Band it && it.label().isPresent() ? " " + Wording.printed(it.limit().value())
                    : outcome.head() instanceof Outcome.Code code && step instanceof Step.Observe observe ? " ______ " + observe.indicator().flatMap(scope::indicator).stream()
                            .flatMap(indicator -> indicator.codes().stream()).filter(one -> one.pattern().text().equals(code.key()))
                            .map(one -> one.meaning()).findFirst().orElse("")
                    : outcome.head() instanceof Outcome.AnythingElse ? " " + Wording.leftOver(step, scope) : "";
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
                drawn = conclude.report().map(report -> LINE * lines("Report  " + report.value(), BODY, false, room, 0, CLOSE)).orElse(0.0);
            }
            double behind = step instanceof Step.Conclude conclude && conclude.report().isEmpty() ? CLOSE : 0;
            return drawn + PlainClauses.of(step, procedure).stream()
                    .mapToDouble(clause -> LINE * lines(clause.key() + " " + clause.words(), BODY, true, room, 0, behind)).sum();
        }

        private double measure(Step.Measure measure) {
            String at = Stream.concat(measure.point().stream(), measure.against().stream()).map(name -> Wording.point(name, measure, scope)).collect(Collectors.joining(" against "));
            Optional<MeterRange> range = LimitStudy.of(procedure, measure).map(LimitStudy::range);
            String with = measure.kind().map(kind -> kind.value().words()).orElse("") + measure.sensor().map(sensor -> ", type " + sensor.value()).orElse("")
                    + measure.instrument().flatMap(scope::instrument).map(instrument -> ", " + instrument.title().split(",")[0]).orElse("")
                    + measure.range().map(named -> Wording.printed(named.value())).or(() -> range.map(one -> Wording.printed(one.upTo()))).map(upTo -> ", range " + upTo).orElse("");
            double boxes = range.flatMap(ReadingBox::pattern).map(pattern -> pattern.chars().filter(c -> c == '_').count() * BOX + pattern.replace("_", "").length() * 1.8)
                    .orElse(WRITING);
            double readings = measure.rows().isEmpty() ? limit(measure.expects(), boxes) : LINE + measure.rows().stream().mapToDouble(this::row).sum();
            return (at.isEmpty() ? 0 : LINE * lines("At " + at, BODY, true, room, 0, 0)) + words("Measure  " + with, room) + readings
                    + (measure.point().flatMap(scope::point).flatMap(Point::storedEnergy).isPresent() ? LINE : 0);
        }

        /** The limit, the boxes for what is read, and the scale where there are doubtful readings. */
        private double limit(Optional<Step.Expectation> expectation, double boxes) {
            boolean scale = DoubtfulReadings.of(procedure, step).isPresent();
            Optional<Limit> limit = expectation.map(expects -> expects.limit().value());
            boolean worked = !scale && limit.filter(Wording::hasEndsToWorkOut).isPresent();
            double words = limit.map(known -> width(Wording.printed(known) + " ", TITLE, true)
                    + (worked ? width(" = " + Wording.printed(known) + " " + known.quantities().get(0).unit().symbol(), BODY, false) : 0)).orElse(0.0);
            return LIMIT * ((words + boxes > room ? 2 : 1) + (twice && (words > 0 || 2 * boxes + TWICE > room) ? 1 : 0)) + (scale ? SCALE : 0);
        }

        private double row(Step.Row row) {
            String title = scope.point(row.point()).map(Point::title).orElse(row.point().text());
            return Math.max(LIMIT, Math.max(LINE * lines(title, BODY, true, room * 0.4, 0, 0),
                    HEAD * lines(Wording.printed(row.limit().value()), TITLE, true, room * 0.28, 0, 0)));
        }

        private double calculate(Step.Calculate calculate) {
            return 2 * LINE + limit(calculate.expects(), WRITING);
        }
    }
}
