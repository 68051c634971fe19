/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;

/** Which outcome of a step a result leads to; the one place that knows. */
public final class Results {
    /** What a meter shows above its range. */
    public static final String OVERLOAD = "OL";

    private Results() {
    }

    /** The outcome that the words or the reading given lead to; absent when there is none. */
    public static Optional<Outcome> outcome(Step step, Showing.Possible shown) {
        Optional<Outcome> byWords = byKey(step, shown.words().text());
        if (byWords.isPresent()) {
            return byWords;
        }
        if (shown.words().text().equals(OVERLOAD)) {
            return overload(step);
        }
        if (shown.reading().isPresent() && shown.reading().get().unit().isKnown()) {
            if (!isReadThere(step, shown.reading().get())) {
                return Optional.empty();
            }
            Optional<Outcome> byReading = reading(step, shown.reading().get().base(kind(step)));
            if (byReading.isPresent()) {
                return byReading;
            }
        }
        return byKey(step, "anything else");
    }

    /**
     * What a sound unit shows: the outcome that is marked as normal; of a routine its normal exit; of a value with a limit
     * {@link Step#WITHIN}. Absent where nothing says it.
     */
    public static Optional<Outcome> normal(Step step, Scope scope) {
        Optional<Outcome> marked = step.outcomes().stream().filter(Outcome::normal).findFirst();
        if (marked.isPresent()) {
            return marked;
        }
        if (step instanceof Step.Perform perform) {
            return perform.routine().flatMap(scope::routine).flatMap(Routine::normalExit).flatMap(exit -> byKey(step, exit.text()));
        }
        if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            return byKey(step, Step.ALL_WITHIN);
        }
        return expected(step).isPresent() ? byKey(step, Step.WITHIN) : Optional.empty();
    }

    /**
     * Whether a reading counts without its sign: a voltage or current that proves something by a limit without a lower end does so whichever way
     * the probes are held, and -40 V is not at most 5 V.
     */
    public static boolean isMagnitude(Step step) {
        return step instanceof Step.Measure measure && measure.kind().map(Written::value).filter(kind -> kind.isVoltage() || kind.isCurrent()).isPresent()
                && step.outcomes().stream().anyMatch(outcome -> !outcome.proves().isEmpty() && !hasLowerEnd(step, outcome));
    }

    private static boolean hasLowerEnd(Step step, Outcome outcome) {
        Optional<Limit> limit = outcome.head() instanceof Outcome.Band band ? Optional.of(band.limit().value())
                : outcome.key().equals(Step.WITHIN) ? stated(step) : Optional.empty();
        return limit.flatMap(known -> known.interval(kind(step)).lower()).isPresent();
    }

    /** The outcome with this key; {@code done} also finds the single outcome of an act. */
    public static Optional<Outcome> byKey(Step step, String key) {
        Optional<Outcome> exact = step.outcomes().stream().filter(o -> o.key().equals(key)).findFirst();
        if (exact.isPresent()) {
            return exact;
        }
        if ((key.equals(Step.BELOW) || key.equals(Step.ABOVE)) && expected(step).isPresent()) {
            return step.outcomes().stream().filter(o -> o.key().equals(Step.OUTSIDE)).findFirst();
        }
        return Optional.empty();
    }

    /** What a meter shows above its range leads on like the highest reading there is. */
    private static Optional<Outcome> overload(Step step) {
        Optional<Outcome> endless = step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.Band band
                && band.limit().value().interval().upper().isEmpty()).findFirst();
        return endless.or(() -> byKey(step, Step.ABOVE)).or(() -> byKey(step, "anything else"));
    }

    /** Whether a step can show that quantity: 5 V is no reading of a temperature. */
    public static boolean isReadThere(Step step, Quantity reading) {
        if (step instanceof Step.Measure measure) {
            return measure.kind().map(Written::value).map(reading::fits).orElse(true);
        }
        return limits(step).flatMap(limit -> limit.quantities().stream()).filter(end -> end.unit().isKnown()).findFirst()
                .map(end -> end.dimension().equals(reading.dimension()) && end.unit().isLogarithmic() == reading.unit().isLogarithmic())
                .orElse(true);
    }

    /** As what the limits and readings of a step are taken: ten degrees between two temperatures are 10 K, on every scale. */
    public static QuantityKind kind(Step step) {
        if (step instanceof Step.Measure measure) {
            return measure.kind().map(Written::value).orElse(QuantityKind.TEMPERATURE);
        }
        return step instanceof Step.Calculate calculate && calculate.formula().map(Written::value).map(Results::scale).orElse(1) == 0
                ? QuantityKind.TEMPERATURE_DIFFERENCE : QuantityKind.TEMPERATURE;
    }

    /** How many times the zero of a temperature scale is left in a formula: none in the difference of two temperatures. */
    private static int scale(Formula formula) {
        if (formula instanceof Formula.Constant constant) {
            return constant.quantity().unit().offset().signum() != 0 ? 1 : 0;
        } else if (formula instanceof Formula.Negated negated) {
            return -scale(negated.of());
        } else if (formula instanceof Formula.Sum sum) {
            return scale(sum.left()) + scale(sum.right());
        } else if (formula instanceof Formula.Difference difference) {
            return scale(difference.left()) - scale(difference.right());
        } else if (formula instanceof Formula.Call call && call.function().equals("difference")) {
            return 0;
        }
        return 1;
    }

    /** Where one outcome of a step gives way to the next, in the coherent SI unit. */
    public static Stream<Exact> ends(Step step) {
        return limits(step).map(limit -> limit.interval(kind(step)))
                .flatMap(interval -> Stream.of(interval.lower(), interval.upper())).flatMap(Optional::stream).map(Bound::value);
    }

    /** The units in which the limits of a step are written, in reading order. */
    public static Stream<Unit> units(Step step) {
        return limits(step).flatMap(limit -> limit.quantities().stream()).map(Quantity::unit).filter(Unit::isKnown);
    }

    private static Stream<Limit> limits(Step step) {
        return Stream.concat(stated(step).stream(), step.outcomes().stream().map(Outcome::head).filter(Outcome.Band.class::isInstance)
                .map(head -> ((Outcome.Band) head).limit().value()));
    }

    /** The outcome of a reading in the coherent SI unit; of a difference without the zero of its scale. */
    public static Optional<Outcome> reading(Step step, Exact signed) {
        Exact value = isMagnitude(step) ? signed.absolute() : signed;
        Optional<Interval> expected = expected(step);
        for (Outcome outcome : step.outcomes()) {
            if (outcome.head() instanceof Outcome.Band band && band.limit().value().interval(kind(step)).contains(value)) {
                return Optional.of(outcome);
            }
        }
        return expected.isEmpty() && step instanceof Step.Measure ? byKey(step, Step.DONE)
                : expected.flatMap(limit -> byKey(step, place(limit, value)));
    }

    private static String place(Interval limit, Exact value) {
        if (limit.contains(value)) {
            return Step.WITHIN;
        }
        boolean low = limit.lower().map(bound -> value.compareTo(bound.value()) <= 0).orElse(false);
        return low ? Step.BELOW : Step.ABOVE;
    }

    private static Optional<Interval> expected(Step step) {
        return stated(step).map(limit -> limit.interval(kind(step)));
    }

    private static Optional<Limit> stated(Step step) {
        Optional<Step.Expectation> expects = Optional.empty();
        if (step instanceof Step.Measure measure) {
            expects = measure.expects();
        } else if (step instanceof Step.Calculate calculate) {
            expects = calculate.expects();
        }
        return expects.map(e -> e.limit().value());
    }
}
