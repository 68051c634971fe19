/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Optional;
import org.faultwright.quantity.Accuracy;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.MeterRange;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.QuantityText;

/** Short ways to write down what the tests of measurement need. */
final class MeasurementSamples {
    private MeasurementSamples() {
    }

    static Quantity quantity(String text) {
        return QuantityText.read(text).quantity();
    }

    static Accuracy accuracy(String percentOfReading, String percentOfRange, String digits) {
        return new Accuracy(Exact.of(percentOfReading), Exact.of(percentOfRange), Exact.of(digits), Optional.empty());
    }

    static MeterRange range(QuantityKind kind, String upTo, String resolution, Accuracy accuracy) {
        return new MeterRange(kind, Optional.empty(), quantity(upTo), quantity(resolution), accuracy,
                Optional.of(quantity("10 Mohm")), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), true, "");
    }

    static MeterRange dcVoltage(String upTo, String resolution, String percentOfReading, String digits) {
        return range(QuantityKind.DC_VOLTAGE, upTo, resolution, accuracy(percentOfReading, "0", digits));
    }

    static MeterRange withInput(MeterRange range, String input) {
        return new MeterRange(range.kind(), range.from(), range.upTo(), range.resolution(), range.accuracy(),
                Optional.of(quantity(input)), range.inputCapacitance(), range.burden(), range.lowestFrequency(),
                range.highestFrequency(), range.trueRms(), range.sensor());
    }

    static MeterRange withBurden(MeterRange range, String burden) {
        return new MeterRange(range.kind(), range.from(), range.upTo(), range.resolution(), range.accuracy(), Optional.empty(),
                range.inputCapacitance(), Optional.of(quantity(burden)), range.lowestFrequency(), range.highestFrequency(),
                range.trueRms(), range.sensor());
    }

    static MeterRange from(MeterRange range, String lowest) {
        return new MeterRange(range.kind(), Optional.of(quantity(lowest)), range.upTo(), range.resolution(), range.accuracy(),
                range.input(), range.inputCapacitance(), range.burden(), range.lowestFrequency(), range.highestFrequency(),
                range.trueRms(), range.sensor());
    }

    static Interval closed(String low, String high) {
        return Interval.from(Bound.including(Exact.of(low)), Bound.including(Exact.of(high)));
    }

    static Interval atLeast(String low) {
        return Interval.above(Bound.including(Exact.of(low)));
    }

    static Interval atMost(String high) {
        return Interval.below(Bound.including(Exact.of(high)));
    }
}
