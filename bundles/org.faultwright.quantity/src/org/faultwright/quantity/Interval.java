/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Comparator;
import java.util.Optional;

/**
 * A range of values in the coherent SI unit; an absent bound is open without end. An interval may be
 * empty (the ends the wrong way round): a rule reports that, nothing throws.
 */
public record Interval(Optional<Bound> lower, Optional<Bound> upper) {
    public static final Interval EVERYTHING = new Interval(Optional.empty(), Optional.empty());

    /** Where they begin: the one open without end first, an end that belongs before one that does not. */
    static final Comparator<Interval> BY_LOWER_END = Comparator.comparing(Interval::lower,
            (one, other) -> one.isEmpty() || other.isEmpty() ? Boolean.compare(one.isPresent(), other.isPresent())
                    : compareEnds(one.get(), other.get(), other.get().included(), one.get().included()));

    /** Where they end: the one open without end last, an end that belongs after one that does not. */
    static final Comparator<Interval> BY_UPPER_END = Comparator.comparing(Interval::upper,
            (one, other) -> one.isEmpty() || other.isEmpty() ? Boolean.compare(one.isEmpty(), other.isEmpty())
                    : compareEnds(one.get(), other.get(), one.get().included(), other.get().included()));

    private static int compareEnds(Bound one, Bound other, boolean oneFurther, boolean otherFurther) {
        int order = one.value().compareTo(other.value());
        return order != 0 ? order : Boolean.compare(oneFurther, otherFurther);
    }

    public static Interval from(Bound lower, Bound upper) {
        return new Interval(Optional.of(lower), Optional.of(upper));
    }

    public static Interval above(Bound lower) {
        return new Interval(Optional.of(lower), Optional.empty());
    }

    public static Interval below(Bound upper) {
        return new Interval(Optional.empty(), Optional.of(upper));
    }

    public boolean contains(Exact value) {
        return lower.map(b -> aboveLower(value, b)).orElse(true) && upper.map(b -> belowUpper(value, b)).orElse(true);
    }

    private static boolean aboveLower(Exact value, Bound bound) {
        int order = value.compareTo(bound.value());
        return order > 0 || order == 0 && bound.included();
    }

    private static boolean belowUpper(Exact value, Bound bound) {
        int order = value.compareTo(bound.value());
        return order < 0 || order == 0 && bound.included();
    }

    public boolean isEmpty() {
        if (lower.isEmpty() || upper.isEmpty()) {
            return false;
        }
        int order = lower.get().value().compareTo(upper.get().value());
        return order > 0 || order == 0 && !(lower.get().included() && upper.get().included());
    }

    /** The values that lie in both; {@link #isEmpty()} says whether there are any. */
    public Interval intersection(Interval other) {
        return new Interval(BY_LOWER_END.compare(this, other) >= 0 ? lower : other.lower,
                BY_UPPER_END.compare(this, other) <= 0 ? upper : other.upper);
    }

    /** Whether every value of the other, if it has any, lies in this one. */
    public boolean contains(Interval other) {
        return other.isEmpty() || BY_LOWER_END.compare(this, other) <= 0 && BY_UPPER_END.compare(this, other) >= 0;
    }

    /** Upper minus lower bound; absent when either side is open without end. */
    public Optional<Exact> width() {
        return lower.flatMap(low -> upper.map(high -> high.value().minus(low.value())));
    }
}
