/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.Phrases;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.time.TimeToGo;
import org.faultwright.analysis.walk.Walk;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Indicator;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Source;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepFrame;
import org.faultwright.procedure.Written;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;

/** How a walk speaks: with the words that the bench page has for the same things. */
final class WalkWords {
    /** Two columns of a step: what it is about, and what is said. @param strong whether it stands out */
    record Line(String key, String words, boolean strong) {
    }

    private static final int MINUTE = 60;
    private static final int HUNDRED_MINUTES = 100;
    /** Behind the first one. */
    private static final int DIGITS = 4;
    private static final int MOST_PLACES = 20;

    private final Scope scope;

    WalkWords(Scope scope) {
        this.scope = scope;
    }

    static String title(Step step) {
        return PlainText.line(Wording.title(step));
    }

    private static String title(Optional<? extends Declaration> declared, Name name) {
        return PlainText.line(declared.map(Declaration::title).filter(title -> !title.isBlank()).orElse(name.text()));
    }

    String fault(Name name, Procedure procedure) {
        return title(procedure.fault(name), name);
    }

    String setting(Name condition, String value) {
        return title(scope.condition(condition), condition) + " " + value;
    }

    /** The kind of step, its name in the text, and how long it takes. */
    static String facts(Step step) {
        StepFrame frame = step.frame();
        return Stream.of(Optional.of(Wording.kind(step)), Optional.of(step.name().text()), frame.confirms().map(at -> "confirms the complaint"),
                frame.verifies().map(at -> "proves the repair"), frame.takes().map(time -> "about " + time.value().spelling()))
                .flatMap(Optional::stream).collect(Collectors.joining(" \u00b7 "));
    }

    // ---- what a step says

    List<Line> lines(Walk walk) {
        Step step = walk.step();
        StepFrame frame = step.frame();
        List<Line> lines = new ArrayList<>();
        setUp(walk, lines);
        add(lines, "Live work", frame.precautions().liveBecause().map(Written::value).orElse(""), true);
        add(lines, "Try first", frame.precautions().tries().stream().map(name -> Wording.tried(title(scope.instrument(name), name)))
                .collect(Collectors.joining(", ")), true);
        if (step instanceof Step.Observe observe) {
            observe.indicator().ifPresent(name -> add(lines, "At", title(scope.indicator(name), name), false));
        } else if (step instanceof Step.Measure measure) {
            measure(measure, lines);
        } else if (step instanceof Step.Do task) {
            task.adjusts().forEach(one -> add(lines, "Set to", one.to().map(to -> to.value().spelling()).orElse("")
                    + one.kind().map(kind -> ", " + kind.value().words()).orElse("") + (one.of().isBlank() ? "" : " of " + one.of()), true));
            add(lines, "Erases", task.erases().map(Written::value).orElse(""), true);
        } else if (step instanceof Step.Calculate calculate) {
            calculate.expects().ifPresent(expects -> add(lines, "Limit", expects.limit().value().spelling(), true));
        }
        add(lines, "In hand", frame.handles().stream().map(name -> title(scope.part(name), name) + scope.part(name)
                .flatMap(part -> part.number()).map(number -> ", " + number.value()).orElse("")).collect(Collectors.joining("; ")), false);
        add(lines, "Tools", Wording.tools(frame), false);
        add(lines, "Hazards", Wording.hazards(frame, scope), false);
        Stream<Source> expected = step instanceof Step.Measure measure ? measure.expects().flatMap(Step.Expectation::source).stream()
                : step instanceof Step.Calculate calculate ? calculate.expects().flatMap(Step.Expectation::source).stream() : Stream.empty();
        add(lines, "Source", Stream.concat(frame.source().stream(), expected).map(Wording::source).distinct().collect(Collectors.joining("; ")), false);
        add(lines, "Hint", frame.hint().map(Written::value).orElse(""), false);
        add(lines, "Wait", frame.waits().map(wait -> wait.value().spelling() + ", which this walk passes over").orElse(""), false);
        add(lines, "After it", Wording.settings(frame.sets(), scope), false);
        Set<String> due = walk.due().stream().map(note -> note.name().text()).collect(Collectors.toSet());
        add(lines, "Read before", frame.notes().stream().filter(name -> !due.contains(name.text())).map(name -> title(scope.note(name), name))
                .distinct().collect(Collectors.joining("; ")), false);
        return lines;
    }

    private static void add(List<Line> lines, String key, String words, boolean strong) {
        if (!words.isBlank()) {
            lines.add(new Line(key, PlainText.line(words), strong));
        }
    }

    private void setUp(Walk walk, List<Line> lines) {
        add(lines, "To be set first", Wording.settings(walk.unmet(), scope), true);
        add(lines, "Set-up", Wording.settings(walk.step().frame().needs().stream().filter(need -> !walk.unmet().contains(need)).toList(), scope), false);
    }

    private void measure(Step.Measure step, List<Line> lines) {
        step.point().ifPresent(point -> add(lines, step.through() ? "Through" : "Where", point(point)
                + step.against().map(against -> ", against " + point(against)).orElse(""), false));
        if (step.point().isEmpty()) {
            step.against().ifPresent(against -> add(lines, "Against", point(against), false));
        }
        step.point().flatMap(scope::point).flatMap(Point::storedEnergy).ifPresent(stored -> add(lines, "Stores", stored.inWords(), true));
        add(lines, "With", Stream.of(step.instrument().map(name -> title(scope.instrument(name), name)), step.kind().map(kind -> kind.value().words()),
                step.sensor().map(sensor -> "type " + sensor.value()), step.range().map(range -> "range " + range.value().spelling()))
                .flatMap(Optional::stream).collect(Collectors.joining(", ")), false);
        step.expects().ifPresent(expects -> add(lines, "Limit", expects.limit().value().spelling(), true));
    }

    String point(Name name) {
        return PlainText.line(Wording.point(name, scope));
    }

    // ---- results

    String label(Step step, Outcome outcome) {
        if (outcome.head() instanceof Outcome.Band band) {
            return band.label().map(label -> Phrases.capital(PlainText.phrase(label.text()))).orElseGet(() -> band.limit().value().spelling());
        }
        if (outcome.key().equals(Step.DONE)) {
            return step instanceof Step.Measure ? "Written down" : "Done";
        }
        return step instanceof Step.Measure measure ? measure.rows().stream().filter(row -> row.outside().equals(outcome.key())).findFirst()
                .map(row -> "Outside: " + title(scope.point(row.point()), row.point())).orElseGet(() -> word(outcome)) : word(outcome);
    }

    String label(Step step, String key) {
        return step.outcomes().stream().filter(one -> one.key().equals(key)).findFirst().map(one -> label(step, one)).orElse(key);
    }

    private static String word(Outcome outcome) {
        return Phrases.capital(PlainText.phrase(PlainText.line(outcome.key())));
    }

    /** What a result means or which readings it takes in, what it proves, and how often its way may be taken; may be empty. */
    String explained(Walk walk, Outcome outcome, Optional<ReadingEntry> entry) {
        String told = meaning(walk.step(), outcome).or(() -> entry.map(one -> one.bands().stream().filter(band -> band.outcome() == outcome)
                .filter(band -> band.values().lower().isPresent() || band.values().upper().isPresent())
                .map(band -> range(band.values(), one)).collect(Collectors.joining(" or ")))).orElse("");
        String proves = outcome.proves().isEmpty() ? "" : "proves: " + Wording.settings(outcome.proves(), scope);
        String counted = outcome.repeat().map(repeat -> counted(repeat.atMost(), walk.taken(outcome))).orElse("");
        return Stream.of(told, proves, counted).filter(words -> !words.isEmpty()).collect(Collectors.joining("; "));
    }

    /** To five digits or more, as a display would show it: where readings lead to one result. */
    static String range(Interval values, ReadingEntry entry) {
        if (values.lower().isPresent() && values.upper().isPresent()) {
            return shown(values.lower().get().value(), entry) + " to " + shown(values.upper().get().value(), entry);
        }
        return values.lower().map(end -> (end.included() ? "at least " : "over ") + shown(end.value(), entry))
                .or(() -> values.upper().map(end -> (end.included() ? "at most " : "under ") + shown(end.value(), entry))).orElse("any reading");
    }

    /** @param base in the coherent SI unit */
    static String shown(Exact base, ReadingEntry entry) {
        Exact value = entry.fromBase(base);
        double size = Math.abs(value.doubleValue());
        int places = size > 0 ? (int) Math.min(MOST_PLACES, Math.max(0, DIGITS - Math.floor(Math.log10(size)))) : 0;
        String symbol = entry.unit().symbol();
        return Exact.of(value.toDecimal(places, RoundingMode.HALF_UP)) + (symbol.isEmpty() ? "" : " " + symbol);
    }

    private static String counted(int atMost, int taken) {
        return taken >= atMost ? "taken as often as it may be" : "at most " + atMost + (atMost == 1 ? " time" : " times")
                + (taken > 0 ? ", " + taken + " so far" : "");
    }

    private Optional<String> meaning(Step step, Outcome outcome) {
        return step instanceof Step.Observe observe ? observe.indicator().flatMap(scope::indicator).stream().map(Indicator::codes).flatMap(List::stream)
                .filter(code -> code.pattern().text().equals(outcome.key())).map(Indicator.Code::meaning).map(PlainText::line).findFirst() : Optional.empty();
    }

    /** What a reading means. @param outcome absent where none takes it in */
    String verdict(Step step, WalkAnswer.Reading reading, Optional<Outcome> outcome, boolean doubtful) {
        String led = outcome.map(one -> label(step, one).toLowerCase(Locale.ROOT)).orElse("no result takes this in");
        boolean told = outcome.filter(one -> one.key().equals(Step.DOUBTFUL)).isPresent();
        return reading.words() + ": " + led + (!doubtful ? "." : told ? ": too near the limit for this instrument to decide."
                : ". Doubtful: too near the limit for this instrument to decide.");
    }

    // ---- times and shares

    static String soFar(Walk walk) {
        return "So far " + minutes(walk.seconds());
    }

    static String toGo(TimeToGo.Range range) {
        return "To go " + range.most().map(most -> most.minus(range.least()).compareTo(Exact.of(30)) < 0 ? minutes(most)
                : minutes(range.least()) + " to " + minutes(most)).orElseGet(() -> minutes(range.least()) + " or more");
    }

    static String minutes(Exact seconds) {
        double time = seconds.doubleValue();
        if (time < MINUTE) {
            return Math.round(time) + " s";
        }
        long whole = Math.round(time / MINUTE);
        return whole < HUNDRED_MINUTES ? whole + " min" : whole / MINUTE + " h" + (whole % MINUTE == 0 ? "" : " " + whole % MINUTE + " min");
    }

    static String percent(double share) {
        return share > 0.995 && share < 1 ? "over 99 %" : share < 0.005 ? "under 1 %" : Math.round(share * 100) + " %";
    }
}
