/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Quotation;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** How a result is written in an example or in what a fault shows. */
public final class ResultWords {
    private static final Pattern PLAIN = Pattern.compile("([0-9]+ )?[LETTER][LETTER0-9]*"
            .replace("LETTER", "A-Za-z_\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u024F\\u0370-\\u03FF"));
    /** Words of the language that no result can be written as, unless in quotation marks. */
    private static final Set<String> TAKEN = Stream.concat(Step.KEYWORDS.stream(), Stream.of(
            "accuracy", "adjust", "against", "ambient", "anything", "at", "avoid", "bandwidth", "because", "becomes",
            "begin", "boards", "burden", "but", "by", "calibrated", "carries", "cases", "category", "closes",
            "complaint", "complaints", "condition", "confirms", "consequence", "covers", "dated", "decision",
            "difference", "digest", "else", "equipment", "erases", "every", "example", "exits", "expects", "finds",
            "for", "from", "handles", "hazard", "hazards", "hint", "indicator", "instrument", "least", "library",
            "means", "most", "needs", "note", "notes", "of", "or", "otherwise", "part", "peak", "point", "procedure",
            "proves", "refers", "remedy", "repairs", "report", "resolution", "revision", "rms", "routine", "rule",
            "sets", "setup", "shows", "source", "takes", "tests", "through", "times", "to", "tools", "tries", "type",
            "uncertainty", "unit", "units", "until", "uses", "using", "value", "vary", "verifies", "waveform", "when")).collect(Collectors.toUnmodifiableSet());
    /** Words of the language that a result can be, but not after a number. */
    private static final Set<String> TAKEN_AFTER_NUMBER = Set.of("ac", "all", "any", "change", "charged", "class", "dc", "drained", "drains", "ends", "fault", "input",
            "isolated", "live", "may", "normal", "nothing", "number", "on", "over", "picture", "proved", "range", "rated", "reading",
            "repair", "resistance", "starts", "stock", "stores", "temperature", "under", "up", "valid", "wait", "within");
    private static final Exact TWO = Exact.of(2);
    private static final Exact TEN = Exact.of(10);

    private ResultWords() {
    }

    /** A word or code, in quotation marks where it needs them. */
    public static String written(String key) {
        int space = key.indexOf(' ');
        String word = key.substring(space + 1);
        boolean plain = PLAIN.matcher(key).matches() && !TAKEN.contains(word) && !(space > 0 && TAKEN_AFTER_NUMBER.contains(word));
        return plain ? key : Quotation.of(key);
    }

    /** The line of an outcome that the text does not name yet. */
    public static String arrow(Outcome outcome, String target) {
        String key = outcome.key();
        String head = outcome.head() instanceof Outcome.AnythingElse || key.equals(Step.ALL_WITHIN) || key.equals(Step.ANY_OUTSIDE) ? key
                : key.equals(Step.DONE) ? "then" : written(key);
        return "    " + head + " -> " + target + "\n";
    }

    /** Words that lead to this outcome of a step: its key, or for a range without a label a reading that only it takes. */
    public static String leadingTo(Step step, Outcome outcome) {
        if (outcome.head() instanceof Outcome.Band band && band.label().isEmpty()) {
            QuantityKind kind = Results.kind(step);
            List<Interval> others = step.outcomes().stream().filter(other -> other != outcome).map(Outcome::head)
                    .filter(Outcome.Band.class::isInstance).map(Outcome.Band.class::cast)
                    .map(other -> other.limit().value().interval(kind)).toList();
            List<Reading> readings = readings(band.limit().value(), kind);
            return readings.stream().filter(one -> others.stream().noneMatch(other -> other.contains(one.base()))).findFirst()
                    .or(() -> readings.stream().findFirst()).map(Reading::words).orElse("");
        }
        return outcome.head() instanceof Outcome.AnythingElse ? Quotation.of("something else") : written(outcome.key());
    }

    private record Reading(Exact base, String words) {
    }

    /** Readings within a limit: its nominal, the ends that belong to it, the middle, or a tenth beyond its only end. */
    private static List<Reading> readings(Limit limit, QuantityKind kind) {
        Interval interval = limit.interval(kind);
        List<Reading> found = new ArrayList<>();
        Stream.concat(limit.nominal().stream(), limit.quantities().stream().filter(end -> interval.contains(end.base(kind))))
                .forEach(end -> found.add(new Reading(end.base(kind), end.spelling())));
        if (limit.quantities().isEmpty()) {
            return found;
        }
        Unit unit = limit.quantities().get(0).unit();
        if (interval.lower().isPresent() && interval.upper().isPresent()) {
            add(found, interval.lower().get().value().plus(interval.upper().get().value()).dividedBy(TWO), unit);
            return found;
        }
        Exact only = interval.lower().or(interval::upper).orElseThrow().value();
        Exact beyond = unit.fromBase(only).absolute().dividedBy(TEN).max(Exact.ONE.dividedBy(TEN)).times(unit.factor());
        add(found, interval.lower().isPresent() ? only.plus(beyond) : only.minus(beyond), unit);
        return found;
    }

    private static void add(List<Reading> readings, Exact base, Unit unit) {
        readings.add(new Reading(base, ValueText.of(base, unit)));
    }
}
