/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.MeterRange;

/**
 * An earlier reading that a computed value is made of, at the value at which its uncertainty is evaluated.
 *
 * @param name       of the reading
 * @param value      in the coherent SI unit
 * @param choice     how the value was chosen, such as {@code nominal value}
 * @param instrument that it is read with
 * @param range      the range in use
 * @param extras     contributions beside the instrument's accuracy
 */
public record ReadingInput(String name, Exact value, String choice, String instrument, MeterRange range,
        List<UncertaintyContribution> extras) {
    /** a, from the accuracy statement at that reading. */
    public Exact halfWidth() {
        return MeterAccuracy.halfWidth(range, value);
    }

    /** u² of the instrument alone: a²/3 (JCGM 100:2008, 4.3.7). */
    Exact instrumentVariance() {
        return halfWidth().squared().dividedBy(Exact.of(3));
    }

    /** u², the instrument and everything else together. */
    public Exact variance() {
        return extras.stream().map(UncertaintyContribution::variance).reduce(instrumentVariance(), Exact::plus);
    }

    /** Whether both are read with one range of one instrument, so that a part of their errors may be the same. */
    boolean sharesRange(ReadingInput other) {
        return instrument.equals(other.instrument) && range.equals(other.range);
    }
}
