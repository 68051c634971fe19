/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Arrays;

/**
 * How much a question tells, in bit: the entropy before less the mean entropy after (J. R. Quinlan, "Induction
 * of decision trees", Machine Learning 1, 1986).
 */
public final class InformationGain {
    private InformationGain() {
    }

    /** @param weights for each outcome of the question the weights of the classes that show it, in one order of the classes */
    public static double of(double[][] weights) {
        int classes = Arrays.stream(weights).mapToInt(row -> row.length).max().orElse(0);
        double[] all = new double[classes];
        for (double[] row : weights) {
            for (int c = 0; c < row.length; c++) {
                all[c] += row[c];
            }
        }
        double sum = Arrays.stream(all).sum();
        double after = Arrays.stream(weights).mapToDouble(row -> Arrays.stream(row).sum() * entropy(row)).sum();
        return sum > 0 ? entropy(all) - after / sum : 0;
    }

    /** The entropy of weights, whatever they sum to, in bit (Shannon 1948). */
    public static double entropy(double[] weights) {
        double sum = Arrays.stream(weights).sum();
        return Arrays.stream(weights).filter(w -> w > 0).map(w -> -w / sum * Math.log(w / sum) / Math.log(2)).sum();
    }
}
