/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Locale;
import java.util.Optional;

/** The form of an alternating voltage, as far as a mean-responding meter reads it wrong. */
public enum Waveform {
    SINE(1),
    /** π/(2√2) of its rms value: a mean-responding meter is scaled for the sine. */
    SQUARE(Math.PI / (2 * Math.sqrt(2))),
    /** π/(2√2) times the mean of half its peak, over its rms value of a √3rd of the peak. */
    TRIANGLE(Math.PI * Math.sqrt(3) / (4 * Math.sqrt(2))),
    /** Any other, such as that behind a dimmer or a rectifier. */
    DISTORTED(Double.NaN);

    private final double meanReading;

    Waveform(double meanReading) {
        this.meanReading = meanReading;
    }

    /** As written in a procedure. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** By how much of the rms value a meter that responds to the mean reads high (above 0) or low; absent where that depends. */
    public Optional<Double> meanError() {
        return Double.isNaN(meanReading) ? Optional.empty() : Optional.of(meanReading - 1);
    }
}
