/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/**
 * Where one probes.
 *
 * @param carries          the highest voltage met there, and whether dc, ac rms or ac peak
 * @param sourceResistance what the meter sees behind the point (the Thévenin resistance)
 * @param isolated         that it is cut off from the supply and from charge
 * @param category         the measurement category of the circuit after IEC 61010-2-030
 */
public record Point(Name name, String title, Optional<Carried> carries,
        Optional<Written<Quantity>> sourceResistance, Optional<Written<Integer>> category,
        List<Written<Hazard>> hazards, Optional<Isolation> isolated, SourceRange at) implements Declaration {
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
