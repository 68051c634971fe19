/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Optional;
import org.faultwright.analysis.Fix;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/**
 * One end of a band in words, with which the band can be written anew.
 *
 * @param value    the author's spelling where there is one
 * @param included whether that value belongs to the band
 */
record BandEnd(String value, boolean included) {
    static Optional<BandEnd> lower(Readings.Band band, QuantityKind kind) {
        Limit limit = band.limit().value();
        Optional<Quantity> written = limit instanceof Limit.Between between ? Optional.of(between.lower())
                : limit instanceof Limit.NotBelow from ? Optional.of(from.lower()) : Optional.empty();
        return band.values().lower().flatMap(bound -> of(written, bound, limit, kind));
    }

    static Optional<BandEnd> upper(Readings.Band band, QuantityKind kind) {
        Limit limit = band.limit().value();
        Optional<Quantity> written = limit instanceof Limit.Between between ? Optional.of(between.upper())
                : limit instanceof Limit.NotAbove to ? Optional.of(to.upper()) : Optional.empty();
        return band.values().upper().flatMap(bound -> of(written, bound, limit, kind));
    }

    /** The ends of a tolerance are computed, and written only where that is exact. */
    private static Optional<BandEnd> of(Optional<Quantity> written, Bound bound, Limit limit, QuantityKind kind) {
        if (written.isPresent()) {
            return Optional.of(new BandEnd(written.get().spelling(), bound.included()));
        }
        Unit unit = limit.quantities().get(0).unit();
        Exact value = unit.fromBase(bound.value());
        return value.isDecimal() && kind != QuantityKind.TEMPERATURE_DIFFERENCE
                ? Optional.of(new BandEnd(ValueText.of(bound.value(), unit), bound.included())) : Optional.empty();
    }

    /** The same value as the end of what lies on its other side. */
    BandEnd opposite() {
        return new BandEnd(value, !included);
    }

    /** Writes a band with these ends; absent where it would have none. */
    static Optional<Fix> rewrite(Readings.Band band, Optional<BandEnd> lower, Optional<BandEnd> upper) {
        return words(lower, upper).map(words -> Fix.replacing("Write " + words, band.limit().at(), words));
    }

    private static Optional<String> words(Optional<BandEnd> lower, Optional<BandEnd> upper) {
        if (lower.isPresent() && upper.isPresent()) {
            return Optional.of((lower.get().included ? "" : "over ") + lower.get().value + " .. "
                    + (upper.get().included ? "" : "under ") + upper.get().value);
        }
        return upper.map(end -> (end.included ? "at most " : "under ") + end.value)
                .or(() -> lower.map(end -> (end.included ? "at least " : "over ") + end.value));
    }
}
