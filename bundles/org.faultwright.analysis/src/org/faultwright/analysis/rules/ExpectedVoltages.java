/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.VoltageLimit;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Point;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.QuantityKind;

/** The voltages that a sound unit shows where one reads: they are there, whether or not a point says so. */
final class ExpectedVoltages {
    private ExpectedVoltages() {
    }

    /**
     * A reading of which every value that is expected is above the limits that ask for a shock note.
     *
     * @param reading the step, or one row of its table
     */
    record Expected(Step.Measure reading, QuantityKind kind, Written<Limit> limit) {
    }

    static Stream<Expected> dangerous(Step.Measure step) {
        return step.readings().stream().flatMap(reading -> reading.kind().map(Written::value).filter(QuantityKind::isVoltage).stream()
                .flatMap(kind -> sound(reading).map(limit -> new Expected(reading, kind, limit))))
                .filter(expected -> expected.limit().value().fits(expected.kind()))
                .filter(expected -> VoltageLimit.exceededBy(expected.kind(), nearest(expected.limit().value().interval(expected.kind())))
                        .filter(VoltageLimit::asksForNote).isPresent());
    }

    /** What is expected, and the band that is said to be normal. */
    static Stream<Written<Limit>> sound(Step.Measure reading) {
        return Stream.concat(reading.expects().map(Step.Expectation::limit).stream(), reading.outcomes().stream().filter(Outcome::normal)
                .map(Outcome::head).filter(Outcome.Band.class::isInstance).map(head -> ((Outcome.Band) head).limit()));
    }

    /** The least voltage that keeps a limit, without its sign; 0 where zero keeps it. */
    static Exact nearest(Interval limit) {
        if (limit.isEmpty() || limit.contains(Exact.ZERO)) {
            return Exact.ZERO;
        }
        Exact lower = limit.lower().map(Bound::value).map(Exact::absolute).orElse(Exact.ZERO);
        Exact upper = limit.upper().map(Bound::value).map(Exact::absolute).orElse(Exact.ZERO);
        return limit.lower().isEmpty() ? upper : limit.upper().isEmpty() ? lower : lower.min(upper);
    }

    /** A reading whose point does not say what it carries itself. */
    static boolean isOnlyExpected(Optional<Point> point) {
        return point.filter(one -> one.carries().isPresent() || one.stores().isPresent() || one.isolated().isPresent()).isEmpty();
    }
}
