/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/**
 * An industrial platinum resistance thermometer (IEC 60751:2022, clause 4):
 * R(t) = R₀·(1 + A·t + B·t²) from 0 degC up, and with C·(t − 100)·t³ added under it. Exact in t.
 *
 * @param name       such as {@code Pt100}
 * @param resistance R₀, in ohm at 0 degC
 */
public record PlatinumSensor(String name, Exact resistance) implements Sensor {
    private static final Exact A = Exact.of("3.9083e-3");
    private static final Exact B = Exact.of("-5.775e-7");
    private static final Exact C = Exact.of("-4.183e-12");

    static final List<PlatinumSensor> ALL = List.of(new PlatinumSensor("Pt100", Exact.of(100)),
            new PlatinumSensor("Pt500", Exact.of(500)), new PlatinumSensor("Pt1000", Exact.of(1000)));

    @Override
    public String source() {
        return "IEC 60751";
    }

    @Override
    public double lowest() {
        return -200;
    }

    @Override
    public double highest() {
        return 850;
    }

    @Override
    public Unit signalUnit() {
        return Units.named("ohm");
    }

    @Override
    public Exact signalAt(Exact celsius) {
        Exact relative = Exact.ONE.plus(A.times(celsius)).plus(B.times(celsius.squared()));
        if (celsius.signum() < 0) {
            relative = relative.plus(C.times(celsius.minus(Exact.of(100))).times(celsius.power(3)));
        }
        return resistance.times(relative);
    }
}
