/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Optional;

/**
 * One range of one function of an instrument.
 *
 * @param kind            what it reads
 * @param from            the lower end; absent means the negative of the upper end for dc, else zero
 * @param upTo            the upper end, the largest value shown
 * @param resolution      the value of the last digit
 * @param accuracy        the maker's accuracy statement
 * @param input           input resistance for voltages; absent when not stated
 * @param inputCapacitance parallel to the input resistance; absent when not stated
 * @param burden          series resistance for currents, or the voltage dropped at full scale; absent when not stated
 * @param lowestFrequency  of an ac function's bandwidth; absent when not stated
 * @param highestFrequency of an ac function's bandwidth; absent when not stated
 * @param trueRms         whether an ac function reads true rms; false means average responding, scaled for a sine
 * @param sensor          for temperatures the sensor, such as {@code K} or {@code Pt100}; empty otherwise
 */
public record MeterRange(QuantityKind kind, Optional<Quantity> from, Quantity upTo, Quantity resolution,
        Accuracy accuracy, Optional<Quantity> input, Optional<Quantity> inputCapacitance, Optional<Quantity> burden,
        Optional<Quantity> lowestFrequency, Optional<Quantity> highestFrequency, boolean trueRms, String sensor) {

    /** What the range can show, both ends included, in the coherent SI unit. */
    public Interval shown() {
        return Interval.from(Bound.including(lowest()), Bound.including(upTo.base(kind)));
    }

    private Exact lowest() {
        if (from.isPresent()) {
            return from.get().base(kind);
        }
        boolean signed = kind == QuantityKind.DC_VOLTAGE || kind == QuantityKind.DC_CURRENT
                || kind == QuantityKind.TEMPERATURE_DIFFERENCE;
        return signed ? upTo.base(kind).negated() : new Quantity(Exact.ZERO, upTo.unit(), "0").base(kind);
    }
}
