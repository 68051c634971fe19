/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

/** The standard normal distribution, to about 14 significant digits, also far out in its tails. */
final class StandardNormal {
    private static final double ROOT_2 = Math.sqrt(2);
    private static final double ROOT_PI = Math.sqrt(Math.PI);
    private static final double ROOT_2_PI = Math.sqrt(2 * Math.PI);
    private static final double SERIES_ENDS = 2.5;

    private StandardNormal() {
    }

    static double density(double z) {
        return Math.exp(-z * z / 2) / ROOT_2_PI;
    }

    /** Φ(z), the probability of a value not above z. */
    static double cumulative(double z) {
        return z <= 0 ? upperTail(-z) : 1 - upperTail(z);
    }

    /** Φ(b) − Φ(a) without loss of digits in the tails. */
    static double between(double a, double b) {
        if (b <= a) {
            return 0;
        }
        return a > 0 ? upperTail(a) - upperTail(b) : b < 0 ? upperTail(-b) - upperTail(-a) : cumulative(b) - cumulative(a);
    }

    /** 1 − Φ(z) for z ≥ 0, which is erfc(z/√2)/2. */
    private static double upperTail(double z) {
        double x = z / ROOT_2;
        return x < SERIES_ENDS ? (1 - series(x)) / 2 : continuedFraction(x) / 2;
    }

    /** erf x = 2/√π · exp(−x²) · Σ 2ⁿ x²ⁿ⁺¹ / (2n+1)!! (NIST Handbook of Mathematical Functions, 7.6.2). */
    private static double series(double x) {
        double term = x;
        double sum = x;
        for (int n = 1; term > sum * 1e-17; n++) {
            term *= 2 * x * x / (2 * n + 1);
            sum += term;
        }
        return 2 / ROOT_PI * Math.exp(-x * x) * sum;
    }

    /** erfc x = exp(−x²)/√π · 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + …)))) (the same, 7.9.1), from the end backward. */
    private static double continuedFraction(double x) {
        if (x > 30) {
            return 0;
        }
        double fraction = x;
        int terms = 10 + (int) (300 / (x * x));
        for (int n = terms; n > 0; n--) {
            fraction = x + n / 2.0 / fraction;
        }
        return Math.exp(-x * x) / ROOT_PI / fraction;
    }
}
