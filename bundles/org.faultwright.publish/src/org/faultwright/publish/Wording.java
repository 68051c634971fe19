/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish;

import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Equipment;
import org.faultwright.procedure.Hazard;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.publish.page.PlainText;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/** How things are called, on cards and pages and by the walk in the window. */
public final class Wording {
    public static final String ARROW = "\u2192";
    public static final String BOX = "\u2610";
    public static final String ALERT = "\u26A0";
    public static final String TWICE = "Of two boxes the left is for the 1st time, the right for the 2nd.";
    /** The proofs hold for a unit that stands as on arrival; what was done behind a wrong tick, no card can follow. */
    public static final String WRONG = "Wrong tick? Strike it out, sign it, tick the right one. Done a step since? Stop, plug out, ask who checks.";
    /** Before what is filled in at each of several visits. */
    public static final List<String> VISITS = List.of("1st", "2nd", "3rd");
    /** A range reaches beyond every limit that it decides; a broken lead or a slipped probe shows the same. */
    public static final String OVERLOAD = "Display shows an overload (OL)? Look at range and leads. If it stays, write OL: that is above every limit.";
    /** What is filled in by hand for the job on the bench. */
    public static final List<String> JOB = List.of("Serial number", "Board", "Job", "Date", "Technician");

    private static final Pattern NUMBER = Pattern.compile("[-+\u2212\u00B1]?[0-9][0-9.,_]*");
    private static final Pattern WORD_OF_UNIT = Pattern.compile("^\\p{IsAlphabetic}|^[%\u00B0]");

    private Wording() {
    }

    /** The unit with its boards. */
    public static String equipment(Equipment equipment) {
        List<Written<String>> boards = equipment.boards();
        return equipment.title() + (boards.isEmpty() ? ", all boards" : boards.size() == 1 ? ", board " : ", boards ")
                + boards.stream().map(Written::value).collect(Collectors.joining(", "));
    }

    /** By whom and when the revision was made. */
    public static String record(Procedure procedure) {
        return procedure.revision().map(revision -> revision.by().map(by -> " by " + by).orElse("")
                + revision.dated().map(day -> " \u00B7 " + day).orElse("")).orElse("");
    }

    /** The order that a step gives, such as {@code Measure}. */
    public static String kind(Step step) {
        return Character.toUpperCase(step.keyword().charAt(0)) + step.keyword().substring(1);
    }

    public static String title(Step step) {
        return step.title().isBlank() ? step.name().text() : step.title();
    }

    /** What stands before the faults of a conclusion: of several it is one. */
    public static String found(Step.Conclude step) {
        return step.finds().size() > 1 ? "Found one of" : "Found";
    }

    /** Whether its title does not say what it finds: the conclusion that an arrow to a fault leads to is called like the fault. */
    public static boolean namesFaults(Step.Conclude step) {
        return !step.finds().isEmpty() && !step.isUnderstood();
    }

    /** How often an outcome may be taken, such as {@code at most 2 times}. */
    public static String atMost(Outcome.Repeat repeat) {
        return "at most " + repeat.atMost() + (repeat.atMost() == 1 ? " time" : " times");
    }

    public static String setting(Setting setting, Scope scope) {
        return named(scope.condition(setting.condition()), setting.condition()) + " " + setting.value().text();
    }

    public static String settings(List<Setting> settings, Scope scope) {
        return settings.stream().map(setting -> setting(setting, scope)).collect(Collectors.joining(", "));
    }

    public static String named(Condition condition) {
        return named(Optional.of(condition), condition.name());
    }

    private static String named(Optional<Condition> condition, Name name) {
        return condition.map(Condition::title).filter(title -> !title.isBlank()).orElse(name.text());
    }

    /** What instruments are called at a step, by their names: their titles up to a comma, where that tells them apart. */
    public static Map<String, String> shortly(Collection<Instrument> instruments) {
        Map<String, String> names = new LinkedHashMap<>();
        for (Instrument instrument : instruments) {
            String title = instrument.title().isBlank() ? instrument.name().text() : instrument.title();
            String begin = title.contains(",") ? title.substring(0, title.indexOf(',')) : title;
            boolean alone = instruments.stream().filter(other -> other.title().startsWith(begin)).count() <= 1;
            names.put(instrument.name().text(), alone ? begin : title);
        }
        return names;
    }

    public static String tried(String instrument) {
        return instrument + " on a known source";
    }

    /**
     * Whether an outcome proves something by a reading that counts without its sign. A charge shows with either sign, as the leads
     * are put; so its limit holds for both.
     */
    public static boolean holdsForEitherSign(Step step, Outcome outcome) {
        return !outcome.proves().isEmpty() && Results.isMagnitude(step) && !Results.kind(step).isAlternating();
    }

    public static String source(Source source) {
        return source.document() + source.dated().map(day -> ", dated " + day).orElse("");
    }

    /** A quantity or a limit as print has it: {@code 88 \u03A9 \u00B1 10 %} for {@code 88 ohm +/- 10 %}, {@code 9 N to 14 N} for {@code 9 N .. 14 N}. */
    public static String printed(String spelling) {
        StringBuilder printed = new StringBuilder();
        boolean number = false;
        for (String word : spelling.strip().split("\\s+")) {
            Optional<Unit> unit = Optional.of(word).filter(one -> WORD_OF_UNIT.matcher(one).find()).map(Units::named).filter(Unit::isKnown);
            boolean ofNumber = number && unit.isPresent() && !unit.get().symbol().isEmpty();
            printed.append(printed.isEmpty() ? "" : ofNumber ? "\u00A0" : " ").append(ofNumber ? unit.get().symbol()
                    : word.equals("+/-") ? "\u00B1" : word.equals("..") ? "to" : word);
            number = NUMBER.matcher(word).matches();
        }
        return printed.toString();
    }

    public static String printed(Limit limit) {
        return printed(limit.spelling());
    }

    public static String printed(Quantity quantity) {
        return printed(quantity.spelling());
    }

    /** Whether a limit is said as a nominal value and a tolerance, so that its ends have to be worked out. */
    public static boolean hasEndsToWorkOut(Limit limit) {
        return limit instanceof Limit.AroundNominal && limit.quantities().stream()
                .allMatch(quantity -> quantity.unit().isKnown() && !quantity.unit().isLogarithmic());
    }

    /** A point with the voltage that it carries at most. */
    public static String point(Name name, Scope scope) {
        Optional<Point> point = scope.point(name);
        return point.map(Point::title).filter(words -> !words.isBlank()).orElse(name.text())
                + point.flatMap(Point::carries).map(carried -> " (up to " + printed(carried.upTo().value()) + " "
                        + carried.kind().words().replace(" voltage", "") + ")").orElse("");
    }

    /** A point as the reading finds it: what is read in a dead circuit has its voltage at other times. */
    public static String point(Name name, Step.Measure reading, Scope scope) {
        String point = point(name, scope);
        return reading.kind().filter(kind -> kind.value().needsDeadCircuit()).isPresent() ? point.replace(" (up to ", " (dead now; in use up to ") : point;
    }

    /** The notes of a step, the gravest signal word first. */
    public static List<Note> notes(StepFrame frame, Scope scope) {
        return frame.notes().stream().flatMap(name -> scope.note(name).stream()).sorted(Comparator.comparing(Note::word)).toList();
    }

    /** The hazards of a step and of the parts that it handles. */
    public static String hazards(StepFrame frame, Scope scope) {
        return Stream.concat(frame.hazards().stream(), frame.handles().stream().flatMap(name -> scope.part(name).stream())
                .flatMap(part -> part.hazards().stream())).map(Written::value).distinct().map(Hazard::inWords).collect(Collectors.joining(", "));
    }

    /** What a note warns of, in short. */
    public static String hazards(Note note) {
        return note.covers().isEmpty() ? note.hazard()
                : note.covers().stream().map(hazard -> hazard.value().inWords()).collect(Collectors.joining(", ", "", ":"));
    }

    /** The tools of a step, each with the voltage it is rated for where that is said. */
    public static String tools(StepFrame frame) {
        return frame.tools().stream().map(tool -> tool.value() + frame.precautions().rated().stream().filter(rated -> rated.tool().equals(tool)).findFirst()
                .map(rated -> " (rated " + printed(rated.upTo().value()) + ")").orElse("")).distinct().collect(Collectors.joining(", "));
    }

    /** The codes that have no result of their own: whoever meets one must know what it tells before they go on with anything else. */
    public static String leftOver(Step step, Scope scope) {
        List<String> named = step.outcomes().stream().map(Outcome::key).toList();
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(scope::indicator).stream().map(Indicator::codes).flatMap(List::stream)
                .filter(code -> !named.contains(code.pattern().text())).map(code -> "also " + code.pattern() + " (" + PlainText.line(code.meaning()) + ")")
                .collect(Collectors.joining(", ")) : "";
    }
}
