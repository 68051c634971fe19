/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

/** Sums of weights over sets of faults, eight faults at a time. */
final class WeightTable {
    private final double[][] sums;

    WeightTable(double[] weights) {
        sums = new double[(weights.length + 7) / 8][256];
        for (int block = 0; block < sums.length; block++) {
            for (int set = 1; set < 256; set++) {
                int fault = block * 8 + Integer.numberOfTrailingZeros(set);
                sums[block][set] = sums[block][set & set - 1] + (fault < weights.length ? weights[fault] : 0);
            }
        }
    }

    double of(long mask) {
        double sum = 0;
        long rest = mask;
        for (int block = 0; rest != 0; block++, rest >>>= 8) {
            sum += sums[block][(int) (rest & 255)];
        }
        return sum;
    }
}
