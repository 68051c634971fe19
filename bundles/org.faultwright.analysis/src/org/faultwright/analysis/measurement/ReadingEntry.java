/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.procedure.Document;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;
import org.faultwright.quantity.measure.Budget;

/**
 * How the reading of a step is entered and what it means: the unit it is asked for in, and which values lead to which outcome.
 * Values are in the coherent SI unit; a difference of temperatures has no zero of a scale.
 *
 * @param unit     in which the value is asked for: that of the instrument's range in use, else that of the limit
 * @param isMagnitude whether the sign counts for nothing ({@link Results#isMagnitude})
 * @param bands    the first that takes a value in decides
 * @param doubtful values that the instrument cannot decide, whatever outcome takes them in
 * @param overload the outcome of what a meter shows above its range
 */
public record ReadingEntry(Unit unit, boolean isDifference, boolean isMagnitude, List<Band> bands, List<Interval> doubtful,
        Optional<Outcome> overload) {
    private static final int LONGEST = 200;
    private static final Pattern GAPS = Pattern.compile("[\\s\\u00a0\\u202f\\u2009']");
    private static final Pattern TYPED = Pattern.compile("[+-]?([0-9]+(\\.[0-9]*)?|\\.[0-9]+)");

    /** The values that lead to an outcome. */
    public record Band(Outcome outcome, Interval values) {
    }

    /** What a value means. @param outcome absent where none takes it in */
    public record Judged(Optional<Outcome> outcome, boolean doubtful) {
    }

    /** Absent for a step that reads or computes nothing, or whose limits are not written in a unit that a number can be asked for in. */
    public static Optional<ReadingEntry> of(Document document, Step step) {
        if (!(step instanceof Step.Measure) && !(step instanceof Step.Calculate) || step.outcomes().isEmpty()
                || step instanceof Step.Measure table && !table.rows().isEmpty()) {
            return Optional.empty();
        }
        QuantityKind kind = Results.kind(step);
        return unit(document, step).map(unit -> new ReadingEntry(unit, kind == QuantityKind.TEMPERATURE_DIFFERENCE, Results.isMagnitude(step),
                bands(document, step, kind), DoubtfulReadings.of(document, step).map(budget -> budget.zones().doubtful()).orElse(List.of()),
                Results.outcome(step, new Showing.Possible(new Name(Results.OVERLOAD, step.at()), Optional.empty(), Optional.empty()))));
    }

    /**
     * One row of a table of readings, in the coherent SI unit.
     *
     * @param doubtful values that the instrument cannot decide, whether or not they are accepted
     */
    public record Row(Unit unit, boolean isDifference, Interval accepts, List<Interval> doubtful) {
        /** @return as it is entered, in {@link #unit()} */
        public Exact fromBase(Exact base) {
            return base.minus(isDifference ? Exact.ZERO : unit.offset()).dividedBy(unit.factor());
        }
    }

    /** One row of a table, as {@link Step.Measure#readings()} gives it. */
    public static Optional<Row> ofRow(Document document, Step.Measure row) {
        QuantityKind kind = Results.kind(row);
        List<Interval> zones = DoubtfulReadings.of(document, row).map(budget -> budget.zones().doubtful()).orElse(List.of());
        return unit(document, row).flatMap(unit -> expected(row).map(limit -> limit.interval(kind)).map(limit -> Results.isMagnitude(row)
                ? new Row(unit, false, new Interval(mirrored(limit).lower(), limit.upper()), toBothSides(zones))
                : new Row(unit, kind == QuantityKind.TEMPERATURE_DIFFERENCE, limit, zones)));
    }

    /**
     * The result of a table by one value for each row; of those that apply the first one written.
     *
     * @param values in the coherent SI unit, in the order of {@link Step.Measure#readings()}; absent for what a meter shows above its range
     */
    public static Optional<Outcome> judgeTable(Document document, Step.Measure table, List<Optional<Exact>> values) {
        List<String> outside = IntStream.range(0, values.size()).filter(i -> !isWithin(document, table.readings().get(i), values.get(i)))
                .mapToObj(i -> table.rows().get(i).outside()).toList();
        Predicate<String> applies = key -> outside.isEmpty() ? key.equals(Step.ALL_WITHIN) : key.equals(Step.ANY_OUTSIDE) || outside.contains(key);
        return table.outcomes().stream().filter(outcome -> applies.test(outcome.key())).findFirst().or(() -> Results.byKey(table, "anything else"));
    }

    /** Whether the value of a row of a table is within its limit; one above the range of the meter never is. @param value in the coherent SI unit */
    public static boolean isWithin(Document document, Step.Measure row, Optional<Exact> value) {
        return value.filter(base -> ofRow(document, row).map(known -> known.accepts().contains(base)).orElse(true)).isPresent();
    }

    /**
     * What somebody types at a meter: digits with a decimal comma or point, a sign, gaps between groups; no exponent, since no meter shows
     * one. Absent where it is no number.
     */
    public static Optional<Exact> typed(String text) {
        String plain = GAPS.matcher(text).replaceAll("").replace('\u2212', '-').replaceFirst(",", ".");
        return text.length() <= LONGEST && TYPED.matcher(plain).matches() ? Optional.of(Exact.of(plain.replaceFirst("\\.$", ""))) : Optional.empty();
    }

    /** For readings that count without their sign. */
    private static List<Interval> toBothSides(List<Interval> zones) {
        return zones.stream().flatMap(zone -> Stream.of(zone, mirrored(zone))).toList();
    }

    private static Interval mirrored(Interval values) {
        return new Interval(values.upper().map(ReadingEntry::negated), values.lower().map(ReadingEntry::negated));
    }

    private static Bound negated(Bound end) {
        return new Bound(end.value().negated(), end.included());
    }

    private static Optional<Unit> unit(Document document, Step step) {
        Optional<Unit> ranged = step instanceof Step.Measure measure
                ? LimitStudy.of(document, measure).map(study -> study.range().upTo().unit()) : Optional.empty();
        Optional<Unit> limited = limits(step).flatMap(limit -> limit.quantities().stream()).map(Quantity::unit).findFirst();
        Optional<Unit> usual = step instanceof Step.Measure measure
                ? measure.kind().map(Written::value).map(QuantityKind::usualUnit).map(Units::named) : Optional.empty();
        boolean readable = limits(step).allMatch(limit -> !limit.quantities().isEmpty() && limit.quantities().stream().map(Quantity::unit)
                .allMatch(ReadingEntry::isUsable));
        return readable ? ranged.or(() -> limited).or(() -> usual).filter(ReadingEntry::isUsable) : Optional.empty();
    }

    private static boolean isUsable(Unit unit) {
        return unit.status() != Unit.Status.UNKNOWN && !unit.isLogarithmic() && !unit.ucum().isEmpty();
    }

    private static Stream<Limit> limits(Step step) {
        return Stream.concat(expected(step).stream(), step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit().value()));
    }

    private static Optional<Limit> expected(Step step) {
        Optional<Step.Expectation> expects = step instanceof Step.Measure measure ? measure.expects()
                : step instanceof Step.Calculate calculate ? calculate.expects() : Optional.empty();
        return expects.map(expectation -> expectation.limit().value());
    }

    private static List<Band> bands(Document document, Step step, QuantityKind kind) {
        List<Band> bands = new ArrayList<>();
        step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.Band)
                .forEach(outcome -> bands.add(new Band(outcome, ((Outcome.Band) outcome.head()).limit().value().interval(kind))));
        Optional<Limit> expected = expected(step);
        Optional<Budget> decided = Results.byKey(step, Step.DOUBTFUL).flatMap(way -> DoubtfulReadings.of(document, step));
        if (decided.isPresent()) {
            add(bands, step, Step.WITHIN, decided.get().zones().accept());
            decided.get().zones().doubtful().forEach(zone -> add(bands, step, Step.DOUBTFUL, zone));
            decided.get().zones().reject().forEach(zone -> add(bands, step, zone.lower().isEmpty() ? Step.BELOW : Step.ABOVE, zone));
        } else if (expected.isPresent()) {
            Interval limit = expected.get().interval(kind);
            add(bands, step, Step.WITHIN, limit);
            limit.lower().map(Bound::opposite).ifPresent(end -> add(bands, step, Step.BELOW, Interval.below(end)));
            limit.upper().map(Bound::opposite).ifPresent(end -> add(bands, step, Step.ABOVE, Interval.above(end)));
        } else if (step instanceof Step.Measure) {
            add(bands, step, Step.DONE, Interval.EVERYTHING);
        }
        return List.copyOf(bands);
    }

    private static void add(List<Band> bands, Step step, String key, Interval values) {
        if (!values.isEmpty()) {
            Results.byKey(step, key).ifPresent(outcome -> bands.add(new Band(outcome, values)));
        }
    }

    /** @param signed in the coherent SI unit */
    public Judged judge(Step step, Exact signed) {
        Exact value = isMagnitude ? signed.absolute() : signed;
        boolean near = doubtful.stream().anyMatch(zone -> zone.contains(value));
        Optional<Outcome> fits = bands.stream().filter(band -> band.values().contains(value)).map(Band::outcome).findFirst();
        return fits.map(outcome -> new Judged(fits, near || outcome.key().equals(Step.DOUBTFUL)))
                .orElseGet(() -> new Judged(Results.byKey(step, "anything else"), false));
    }

    /** @param value as it is entered, in {@link #unit()} */
    public Exact toBase(Exact value) {
        return value.times(unit.factor()).plus(offset());
    }

    /** @return as it is entered, in {@link #unit()} */
    public Exact fromBase(Exact base) {
        return base.minus(offset()).dividedBy(unit.factor());
    }

    /** Where the unit shows zero, in the coherent SI unit. */
    public Exact offset() {
        return isDifference ? Exact.ZERO : unit.offset();
    }

    /** The value of a step that computes one, in the coherent SI unit; absent where a reading is missing or nothing comes of it. */
    public static Optional<Exact> computed(Step.Calculate step, StepGraph graph, Map<String, Exact> readings) {
        return ComputedFormula.of(step, graph).formula().flatMap(formula -> formula.value(readings).result());
    }
}
