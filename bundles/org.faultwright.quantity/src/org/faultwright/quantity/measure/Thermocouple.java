/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.Units;

/**
 * A letter-designated thermocouple by its reference function on the ITS-90 (NIST Monograph 175; the same
 * functions as IEC 60584-1): E = Σ cᵢ·tⁱ in mV with the reference junction at 0 degC, for type K above
 * 0 degC with a₀·exp(a₁·(t − a₂)²) added.
 *
 * @param name            the letter
 * @param pieces          the polynomials in rising order of temperature; they meet
 */
public record Thermocouple(String name, List<Piece> pieces) implements Sensor {
    /**
     * One polynomial.
     *
     * @param from         in degC
     * @param to           in degC
     * @param coefficients from the constant term up, in mV and degC
     * @param gauss        a₀, a₁ and a₂, or nothing
     */
    record Piece(double from, double to, List<Double> coefficients, List<Double> gauss) {
        Piece withGauss(double a0, double a1, double a2) {
            return new Piece(from, to, coefficients, List.of(a0, a1, a2));
        }

        double at(double t) {
            double sum = 0;
            for (int i = coefficients.size() - 1; i >= 0; i--) {
                sum = sum * t + coefficients.get(i);
            }
            return gauss.isEmpty() ? sum : sum + gauss.get(0) * Math.exp(gauss.get(1) * Math.pow(t - gauss.get(2), 2));
        }
    }

    @Override
    public String source() {
        return "NIST Monograph 175";
    }

    @Override
    public double lowest() {
        return pieces.get(0).from();
    }

    @Override
    public double highest() {
        return pieces.get(pieces.size() - 1).to();
    }

    @Override
    public Unit signalUnit() {
        return Units.named("mV");
    }

    /** Rounded to 1 nV. */
    @Override
    public Exact signalAt(Exact celsius) {
        return Exact.of(new BigDecimal(characteristic(celsius.doubleValue())).setScale(6, RoundingMode.HALF_EVEN));
    }

    private double characteristic(double t) {
        Piece piece = pieces.stream().filter(p -> t <= p.to()).findFirst().orElse(pieces.get(pieces.size() - 1));
        return piece.at(t);
    }
}
