/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/** Integrals by Gauss and Legendre, 20 points to a piece. */
final class Quadrature {
    private static final int POINTS = 20;
    private static final double[] NODES = new double[POINTS];
    private static final double[] WEIGHTS = new double[POINTS];

    static {
        for (int i = 0; i < POINTS; i++) {
            root(i);
        }
    }

    private Quadrature() {
    }

    /** From a to b, 0 when b is not above a; in pieces that end at the breaks lying between and are not wider than 3. */
    static double integral(DoubleUnaryOperator function, double a, double b, double... breaks) {
        if (!(b > a)) {
            return 0;
        }
        double[] inner = Arrays.stream(breaks).filter(x -> x > a && x < b).sorted().toArray();
        double sum = 0;
        double from = a;
        for (int i = 0; i <= inner.length; i++) {
            double to = i < inner.length ? inner[i] : b;
            int parts = (int) Math.ceil((to - from) / 3);
            for (int part = 0; part < parts; part++) {
                sum += piece(function, from + (to - from) * part / parts, from + (to - from) * (part + 1) / parts);
            }
            from = to;
        }
        return sum;
    }

    private static double piece(DoubleUnaryOperator function, double a, double b) {
        double middle = (a + b) / 2;
        double half = (b - a) / 2;
        double sum = 0;
        for (int i = 0; i < POINTS; i++) {
            sum += WEIGHTS[i] * function.applyAsDouble(middle + half * NODES[i]);
        }
        return sum * half;
    }

    /** A root of the Legendre polynomial by Newton's method, with its cases 2/((1−x²)·P′²). */
    private static void root(int i) {
        double x = Math.cos(Math.PI * (i + 0.75) / (POINTS + 0.5));
        double slope = 1;
        for (int step = 0; step < 10; step++) {
            double before = 1;
            double value = x;
            for (int n = 2; n <= POINTS; n++) {
                double next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
                before = value;
                value = next;
            }
            slope = POINTS * (x * value - before) / (x * x - 1);
            x -= value / slope;
        }
        NODES[i] = x;
        WEIGHTS[i] = 2 / ((1 - x * x) * slope * slope);
    }
}
