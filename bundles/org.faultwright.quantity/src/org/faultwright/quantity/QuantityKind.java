/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a step measures or an instrument's function reads. Voltage and current say whether they are
 * dc, ac rms or ac peak: these have one dimension and are yet not comparable.
 */
public enum QuantityKind {
    DC_VOLTAGE("dc voltage", Dimension.VOLTAGE, "V"),
    AC_VOLTAGE_RMS("ac voltage rms", Dimension.VOLTAGE, "V"),
    AC_VOLTAGE_PEAK("ac voltage peak", Dimension.VOLTAGE, "V"),
    DC_CURRENT("dc current", Dimension.CURRENT, "A"),
    AC_CURRENT_RMS("ac current rms", Dimension.CURRENT, "A"),
    AC_CURRENT_PEAK("ac current peak", Dimension.CURRENT, "A"),
    RESISTANCE("resistance", Dimension.RESISTANCE, "ohm"),
    CONTINUITY("continuity", Dimension.RESISTANCE, "ohm"),
    DIODE("diode", Dimension.VOLTAGE, "V"),
    CAPACITANCE("capacitance", Dimension.CAPACITANCE, "F"),
    INDUCTANCE("inductance", Dimension.INDUCTANCE, "H"),
    FREQUENCY("frequency", Dimension.FREQUENCY, "Hz"),
    PERIOD("period", Dimension.TIME, "s"),
    DUTY("duty", Dimension.NONE, "%"),
    TEMPERATURE("temperature", Dimension.TEMPERATURE, "degC"),
    TEMPERATURE_DIFFERENCE("temperature difference", Dimension.TEMPERATURE, "K"),
    COUNT("count", Dimension.NONE, "counts"),
    TIME("time", Dimension.TIME, "s"),
    LENGTH("length", Dimension.LENGTH, "mm"),
    MASS("mass", Dimension.MASS, "g"),
    FORCE("force", Dimension.FORCE, "N"),
    TORQUE("torque", Dimension.ENERGY, "N.m"),
    PRESSURE("pressure", Dimension.PRESSURE, "bar"),
    SPEED("speed", Dimension.FREQUENCY, "rpm"),
    POWER("power", Dimension.POWER, "W"),
    ENERGY("energy", Dimension.ENERGY, "J"),
    CHARGE("charge", Dimension.CHARGE, "C"),
    VOLUME("volume", Dimension.VOLUME, "mL"),
    FLOW("flow", Dimension.FLOW, "L/min"),
    HUMIDITY("humidity", Dimension.NONE, "%"),
    ILLUMINANCE("illuminance", Dimension.ILLUMINANCE, "lx"),
    ANGLE("angle", Dimension.NONE, "deg"),
    ACCELERATION("acceleration", Dimension.ACCELERATION, "m/s2"),
    /** A-weighted, over 20 µPa, as a sound level meter of IEC 61672-1 shows it. */
    SOUND_LEVEL("sound", Dimension.SOUND_LEVEL, "dB(A)"),
    RATIO("ratio", Dimension.NONE, "1");

    private final String words;
    private final Dimension dimension;
    private final String usualUnit;

    QuantityKind(String words, Dimension dimension, String usualUnit) {
        this.words = words;
        this.dimension = dimension;
        this.usualUnit = usualUnit;
    }

    /** As written in a procedure, such as {@code dc voltage}. */
    public String words() {
        return words;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** The unit to propose where none is written. */
    public String usualUnit() {
        return usualUnit;
    }

    /** Whether the reading is taken by sending a current of the instrument's own through a dead circuit. */
    public boolean needsDeadCircuit() {
        return this == RESISTANCE || this == CONTINUITY || this == DIODE || this == CAPACITANCE || this == INDUCTANCE;
    }

    public boolean isVoltage() {
        return this == DC_VOLTAGE || this == AC_VOLTAGE_RMS || this == AC_VOLTAGE_PEAK;
    }

    public boolean isCurrent() {
        return this == DC_CURRENT || this == AC_CURRENT_RMS || this == AC_CURRENT_PEAK;
    }

    public boolean isAlternating() {
        return this == AC_VOLTAGE_RMS || this == AC_VOLTAGE_PEAK || this == AC_CURRENT_RMS || this == AC_CURRENT_PEAK;
    }

    public static Optional<QuantityKind> inWords(String words) {
        String wanted = words.strip().replaceAll("\\s+", " ");
        return Arrays.stream(values()).filter(kind -> kind.words.equals(wanted)).findFirst();
    }
}
