/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.Subject;
import org.faultwright.procedure.Instrument;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bands;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;

/**
 * How the outcomes of a measurement or a computed value split what can be read.
 *
 * @param step  a measure or decide step
 * @param bands its outcomes that are ranges of readings, in reading order
 * @param shown what can be read at all
 * @param kind  what is read
 */
record Readings(Step step, List<Band> bands, Interval shown, QuantityKind kind) {
    /** One range of readings. @param outcome whose head is the band */
    record Band(Outcome outcome, Written<Limit> limit, Interval values) {
        String name() {
            return outcome.key();
        }
    }

    /** The steps of a document whose outcomes are bands that can be compared. */
    static List<Readings> of(Subject subject) {
        List<Readings> all = new ArrayList<>();
        for (Step step : DocumentSteps.of(subject)) {
            if (step instanceof Step.Measure measure && measure.kind().isPresent()) {
                read(step, measure.kind().get().value(), shown(measure, subject)).ifPresent(all::add);
            } else if (step instanceof Step.Calculate) {
                read(step, Results.kind(step), Interval.EVERYTHING).ifPresent(all::add);
            }
        }
        return all;
    }

    private static Optional<Readings> read(Step step, QuantityKind kind, Interval shown) {
        List<Outcome> ranges = step.outcomes().stream().filter(outcome -> outcome.head() instanceof Outcome.Band).toList();
        List<Quantity> ends = ranges.stream().flatMap(outcome -> ((Outcome.Band) outcome.head()).limit().value()
                .quantities().stream()).toList();
        boolean comparable = !ends.isEmpty() && ends.stream().allMatch(end -> end.unit().isKnown()
                && end.unit().isLogarithmic() == ends.get(0).unit().isLogarithmic()
                && end.dimension().equals(ends.get(0).dimension()));
        boolean meant = step instanceof Step.Calculate || ends.stream().allMatch(end -> end.fits(kind));
        return comparable && meant ? Optional.of(new Readings(step, ranges.stream()
                .map(outcome -> band(outcome, kind)).toList(), shown, kind))
                : Optional.empty();
    }

    private static Band band(Outcome outcome, QuantityKind kind) {
        Written<Limit> limit = ((Outcome.Band) outcome.head()).limit();
        return new Band(outcome, limit, limit.value().interval(kind));
    }

    /** From the least that the instrument shows; upwards without end, since an overloaded display reads as above. */
    private static Interval shown(Step.Measure step, Subject subject) {
        QuantityKind kind = step.kind().get().value();
        Optional<Exact> least = step.instrument().flatMap(subject.scope()::instrument).stream()
                .flatMap(instrument -> lowest(instrument, kind)).reduce(Exact::min);
        return least.or(() -> naturalLeast(kind)).map(low -> Interval.above(Bound.including(low)))
                .orElse(Interval.EVERYTHING);
    }

    private static Stream<Exact> lowest(Instrument instrument, QuantityKind kind) {
        return instrument.ranges().stream().map(Written::value)
                .filter(range -> range.kind() == kind && range.upTo().fits(kind) && range.from()
                .map(from -> from.fits(kind)).orElse(true))
                .map(MeterRange::shown).map(shown -> shown.lower().get().value());
    }

    /** Zero for what is never below it; absent for what has a sign. */
    static Optional<Exact> naturalLeast(QuantityKind kind) {
        boolean signed = kind == QuantityKind.DC_VOLTAGE || kind == QuantityKind.DC_CURRENT || kind == QuantityKind.DIODE
                || kind == QuantityKind.TEMPERATURE_DIFFERENCE || kind == QuantityKind.LENGTH || kind == QuantityKind.FORCE
                || kind == QuantityKind.TORQUE || kind == QuantityKind.PRESSURE || kind == QuantityKind.POWER
                || kind == QuantityKind.RATIO || kind == QuantityKind.SPEED || kind == QuantityKind.CHARGE || kind == QuantityKind.ENERGY
                || kind == QuantityKind.FLOW || kind == QuantityKind.ANGLE || kind == QuantityKind.ACCELERATION;
        return signed ? Optional.empty() : Optional.of(Exact.ZERO);
    }

    Bands.Partition partition() {
        return Bands.partition(bands.stream().map(Band::values).toList(), shown);
    }

    /** Whether an outcome takes whatever the bands leave. */
    boolean takesTheRest() {
        return step.outcomes().stream().anyMatch(outcome -> outcome.head() instanceof Outcome.AnythingElse);
    }

    /** The unit in which the author writes the end at which two bands meet. */
    Unit unit(int band) {
        return bands.get(band).limit().value().quantities().get(0).unit();
    }

    static String target(Outcome outcome) {
        return outcome.target().map(Name::text).orElse("nothing");
    }
}
