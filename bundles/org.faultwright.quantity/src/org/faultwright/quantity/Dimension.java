/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/**
 * The exponents of the seven base quantities of the SI. Two quantities can be compared only if they
 * have the same dimension (SI Brochure, 9th edition, 2.3.3).
 */
public record Dimension(int length, int mass, int time, int current, int temperature, int amount, int light, int sound) {
    public static final Dimension NONE = new Dimension(0, 0, 0, 0, 0, 0, 0);
    public static final Dimension LENGTH = new Dimension(1, 0, 0, 0, 0, 0, 0);
    public static final Dimension MASS = new Dimension(0, 1, 0, 0, 0, 0, 0);
    public static final Dimension TIME = new Dimension(0, 0, 1, 0, 0, 0, 0);
    public static final Dimension FREQUENCY = new Dimension(0, 0, -1, 0, 0, 0, 0);
    public static final Dimension CURRENT = new Dimension(0, 0, 0, 1, 0, 0, 0);
    public static final Dimension TEMPERATURE = new Dimension(0, 0, 0, 0, 1, 0, 0);
    public static final Dimension VOLUME = new Dimension(3, 0, 0, 0, 0, 0, 0);
    public static final Dimension FLOW = new Dimension(3, 0, -1, 0, 0, 0, 0);
    public static final Dimension ACCELERATION = new Dimension(1, 0, -2, 0, 0, 0, 0);
    public static final Dimension ILLUMINANCE = new Dimension(-2, 0, 0, 0, 0, 0, 1);
    public static final Dimension FORCE = new Dimension(1, 1, -2, 0, 0, 0, 0);
    public static final Dimension PRESSURE = new Dimension(-1, 1, -2, 0, 0, 0, 0);
    public static final Dimension ENERGY = new Dimension(2, 1, -2, 0, 0, 0, 0);
    public static final Dimension POWER = new Dimension(2, 1, -3, 0, 0, 0, 0);
    public static final Dimension CHARGE = new Dimension(0, 0, 1, 1, 0, 0, 0);
    public static final Dimension VOLTAGE = new Dimension(2, 1, -3, -1, 0, 0, 0);
    public static final Dimension RESISTANCE = new Dimension(2, 1, -3, -2, 0, 0, 0);
    public static final Dimension CAPACITANCE = new Dimension(-2, -1, 4, 2, 0, 0, 0);
    public static final Dimension INDUCTANCE = new Dimension(2, 1, -2, -2, 0, 0, 0);

    /** A sound level: it stands beside the seven of the SI, so that nothing adds or multiplies it as if it were a pressure. */
    public static final Dimension SOUND_LEVEL = new Dimension(0, 0, 0, 0, 0, 0, 0, 1);

    /** A dimension of the SI. */
    public Dimension(int length, int mass, int time, int current, int temperature, int amount, int light) {
        this(length, mass, time, current, temperature, amount, light, 0);
    }

    public Dimension times(Dimension o) {
        return new Dimension(length + o.length, mass + o.mass, time + o.time, current + o.current,
                temperature + o.temperature, amount + o.amount, light + o.light, sound + o.sound);
    }

    public Dimension per(Dimension o) {
        return times(o.power(-1));
    }

    public Dimension power(int n) {
        return new Dimension(length * n, mass * n, time * n, current * n, temperature * n, amount * n, light * n, sound * n);
    }

    /** Written out: the one that the compiler makes costs a check in a fresh process 20 ms to link. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Dimension that && length == that.length && mass == that.mass && time == that.time
                && current == that.current && temperature == that.temperature && amount == that.amount
                && light == that.light && sound == that.sound;
    }

    @Override
    public int hashCode() {
        int hash = 0;
        for (int exponent : new int[] { length, mass, time, current, temperature, amount, light, sound }) {
            hash = 31 * hash + exponent;
        }
        return hash;
    }
}
