/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/** A temperature sensor with a standard characteristic: {@code 100 degC on Pt100} is 138.5055 ohm. */
public sealed interface Sensor permits PlatinumSensor, Thermocouple {
    /**
     * A converted value.
     *
     * @param value   absent when there is a problem
     * @param problem one sentence: outside the standard's range, or not a quantity of that kind
     */
    record Converted(Optional<Quantity> value, Optional<String> problem) {
    }

    /** As written in a procedure: {@code Pt100}, {@code K}. */
    String name();

    /** The standard that gives the characteristic. */
    String source();

    /** In degC. */
    double lowest();

    /** In degC. */
    double highest();

    /** The unit of {@link #signalAt}: ohm, or mV against a reference junction at 0 degC. */
    Unit signalUnit();

    /** The signal in {@link #signalUnit()} at a temperature in degC within the range. */
    Exact signalAt(Exact celsius);

    /** What the sensor gives at that temperature. */
    default Converted signal(Quantity temperature) {
        if (!temperature.unit().isKnown() || !temperature.dimension().equals(Dimension.TEMPERATURE)) {
            return refused(temperature + " is not a temperature; write it in degC.");
        }
        Unit celsius = Units.named("degC");
        Exact place = celsius.fromBase(temperature.base());
        if (place.compareTo(decimal(lowest())) < 0 || place.compareTo(decimal(highest())) > 0) {
            return refused(name() + " has no value at " + temperature + "; " + source() + " covers " + span() + ".");
        }
        return new Converted(Optional.of(Quantity.of(signalAt(place), signalUnit())), Optional.empty());
    }

    private String span() {
        return decimal(lowest()) + " degC to " + decimal(highest()) + " degC";
    }

    private static Exact decimal(double written) {
        return Exact.of(BigDecimal.valueOf(written));
    }

    private static Converted refused(String problem) {
        return new Converted(Optional.empty(), Optional.of(problem));
    }

    /** Every sensor there is. */
    static List<Sensor> all() {
        return Stream.<Sensor>concat(PlatinumSensor.ALL.stream(), ThermocoupleTable.ALL.stream()).toList();
    }

    /** {@code Pt100}, {@code Pt500}, {@code Pt1000}, or the letter of a thermocouple, with or without {@code type} before it. */
    static Optional<Sensor> named(String name) {
        String wanted = name.strip().replaceFirst("^type\\s+", "");
        return all().stream().filter(sensor -> sensor.name().equals(wanted)).findFirst();
    }
}
