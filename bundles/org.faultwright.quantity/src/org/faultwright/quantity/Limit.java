/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** A tolerance or a one-sided or two-sided limit, as written. Every form says whether its ends belong to it. */
public sealed interface Limit {
    /** {@code 24 V +/- 5 %} or {@code 12 V +10 % -5 %}; both ends belong to it. */
    record AroundNominal(Quantity written, Tolerance plus, Tolerance minus, String spelling) implements Limit {
        @Override
        public List<Quantity> quantities() {
            return Stream.concat(Stream.of(written), Stream.of(plus, minus).distinct()
                    .filter(Tolerance.Amount.class::isInstance)
                    .map(tolerance -> ((Tolerance.Amount) tolerance).amount())).toList();
        }

        @Override
        public Optional<Quantity> nominal() {
            return Optional.of(written);
        }

        @Override
        public Interval interval(QuantityKind kind) {
            return Interval.from(Bound.including(written.base(kind).minus(minus.distance(written))),
                    Bound.including(written.base(kind).plus(plus.distance(written))));
        }
    }

    /** {@code 4.75 V .. 5.25 V}; with {@code over} or {@code under} before an end, that end does not belong to it. */
    record Between(Quantity lower, boolean lowerIncluded, Quantity upper, boolean upperIncluded, String spelling)
            implements Limit {
        @Override
        public List<Quantity> quantities() {
            return List.of(lower, upper);
        }

        @Override
        public Interval interval(QuantityKind kind) {
            return Interval.from(new Bound(lower.base(kind), lowerIncluded), new Bound(upper.base(kind), upperIncluded));
        }
    }

    /** {@code at most 35 Mohm} (the end belongs to it) or {@code under 15 mA} (it does not). */
    record NotAbove(Quantity upper, boolean included, String spelling) implements Limit {
        @Override
        public List<Quantity> quantities() {
            return List.of(upper);
        }

        @Override
        public Interval interval(QuantityKind kind) {
            return Interval.below(new Bound(upper.base(kind), included));
        }
    }

    /** {@code at least 3.0 V} (the end belongs to it) or {@code over 800 mA} (it does not). */
    record NotBelow(Quantity lower, boolean included, String spelling) implements Limit {
        @Override
        public List<Quantity> quantities() {
            return List.of(lower);
        }

        @Override
        public Interval interval(QuantityKind kind) {
            return Interval.above(new Bound(lower.base(kind), included));
        }
    }

    /** The author's own spelling, for print. */
    String spelling();

    /** Every quantity written in it, in reading order; a tolerance that holds to both sides once. */
    List<Quantity> quantities();

    /** The nominal value where one is written. */
    default Optional<Quantity> nominal() {
        return Optional.empty();
    }

    /** Whether every quantity in it can be a reading of that kind. */
    default boolean fits(QuantityKind kind) {
        return quantities().stream().allMatch(quantity -> quantity.fits(kind));
    }

    /**
     * The values it takes in, in the coherent SI unit, for a reading of that kind: 10 degC as a temperature
     * difference is 10 K. Meaningful only when all its units have one dimension.
     */
    Interval interval(QuantityKind kind);

    /** As {@link #interval(QuantityKind)} for any kind but a temperature difference. */
    default Interval interval() {
        return interval(QuantityKind.TEMPERATURE);
    }
}
