/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.StoredEnergy;

/**
 * Where one probes.
 *
 * @param carries          the highest voltage met there, and whether dc, ac rms or ac peak
 * @param sourceResistance what the meter sees behind the point (the Thévenin resistance)
 * @param stores           the capacitance that stands there
 * @param drainedBy        the resistance that takes its charge away by itself
 * @param isolated         that it is cut off from the supply and from charge
 * @param category         the measurement category of the circuit after IEC 61010-2-030
 */
public record Point(Name name, String title, Optional<Carried> carries,
        Optional<Written<Quantity>> sourceResistance, Optional<Written<Quantity>> stores,
        Optional<Written<Quantity>> drainedBy, Optional<Written<Integer>> category,
        List<Written<Hazard>> hazards, Optional<Isolation> isolated, SourceRange at) implements Declaration {
    /** Rounded up, so that no charge is taken for smaller than it is. */
    private static final Exact ROOT_OF_TWO = Exact.of("1.41421357");

    /**
     * What is held there at the highest voltage it carries: an rms value counts with its peak as a sine. Absent where
     * the voltage or the capacitance is not stated, or is no such quantity above zero.
     */
    public Optional<StoredEnergy> storedEnergy() {
        return stores.map(Written::value).filter(farads -> above(farads, QuantityKind.CAPACITANCE))
                .flatMap(farads -> carries.filter(carried -> above(carried.upTo().value(), carried.kind()))
                        .map(carried -> new StoredEnergy(peak(carried), farads.base(), drainedBy.map(Written::value)
                                .filter(ohms -> above(ohms, QuantityKind.RESISTANCE)).map(Quantity::base))));
    }

    private static boolean above(Quantity quantity, QuantityKind kind) {
        return quantity.fits(kind) && quantity.value().signum() > 0;
    }

    private static Exact peak(Carried carried) {
        Exact volts = carried.upTo().value().base();
        return carried.kind() == QuantityKind.AC_VOLTAGE_RMS ? volts.times(ROOT_OF_TWO) : volts;
    }

    /**
     * The highest voltage at a point.
     *
     * @param kind      one of the three voltages
     * @param frequency of an alternating voltage, where stated
     * @param waveform  where stated
     */
    public record Carried(Written<Quantity> upTo, QuantityKind kind, Optional<Frequencies> frequency,
            Optional<Written<Waveform>> waveform) {
    }

    /** From the lowest to the highest; the same where one alone is stated. */
    public record Frequencies(Written<Quantity> lowest, Written<Quantity> highest) {
        /** As the author writes them. */
        @Override
        public String toString() {
            return lowest.equals(highest) ? lowest.value().spelling() : lowest.value() + " .. " + highest.value();
        }
    }
}
