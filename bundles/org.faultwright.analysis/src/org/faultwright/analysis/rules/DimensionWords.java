/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.LinkedHashMap;
import java.util.Map;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Quantity;

/** What quantities of a dimension are called, and the unit they are usually written in. */
final class DimensionWords {
    private record Word(String words, String unit) {
    }

    private static final Map<Dimension, Word> WORDS = new LinkedHashMap<>();

    static {
        word(Dimension.NONE, "a plain number or percentage", "%");
        word(Dimension.VOLTAGE, "a voltage", "V");
        word(Dimension.CURRENT, "a current", "A");
        word(Dimension.RESISTANCE, "a resistance", "ohm");
        word(Dimension.CAPACITANCE, "a capacitance", "F");
        word(Dimension.INDUCTANCE, "an inductance", "H");
        word(Dimension.POWER, "a power", "W");
        word(Dimension.ENERGY, "an energy or torque", "J");
        word(Dimension.CHARGE, "a charge", "C");
        word(Dimension.TIME, "a time", "s");
        word(Dimension.SOUND_LEVEL, "a sound level", "dB(A)");
        word(Dimension.FREQUENCY, "a frequency or speed", "Hz");
        word(Dimension.TEMPERATURE, "a temperature", "degC");
        word(Dimension.LENGTH, "a length", "mm");
        word(Dimension.MASS, "a mass", "g");
        word(Dimension.FORCE, "a force", "N");
        word(Dimension.PRESSURE, "a pressure", "bar");
        word(Dimension.POWER.per(Dimension.VOLTAGE).per(Dimension.VOLTAGE), "a conductance", "S");
    }

    private DimensionWords() {
    }

    private static void word(Dimension dimension, String words, String unit) {
        WORDS.put(dimension, new Word(words, unit));
    }

    static String of(Dimension dimension) {
        Word word = WORDS.get(dimension);
        return word == null ? "a quantity of another kind" : word.words();
    }

    static String of(Quantity quantity) {
        return quantity.unit().isLogarithmic() ? "a level" : of(quantity.dimension());
    }

    /** Empty where no one unit is usual. */
    static String usualUnit(Dimension dimension) {
        Word word = WORDS.get(dimension);
        return word == null ? "" : word.unit();
    }
}
