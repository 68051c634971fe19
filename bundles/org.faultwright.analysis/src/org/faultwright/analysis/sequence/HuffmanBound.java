/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

/**
 * Lower bounds on the expected cost of telling things apart. No order of tests can ask fewer questions on
 * average than an optimal prefix code has digits (Huffman 1952; for tests of equal cost Pattipati and
 * Alexandridis 1990, section III). Where costs differ, the cheapest so many tests are still a bound, as the
 * sum of the cheapest k costs is convex in k (Jensen's inequality).
 */
final class HuffmanBound {
    private HuffmanBound() {
    }

    /**
     * The mean length of an optimal code, times the sum of the weights.
     *
     * @param weights what is to be told apart, ascending; the array is used up
     * @param count   how many of them count, from the first on
     * @param digits  how many different outcomes a test can have at most; 2 or more
     */
    static double lengthOfSorted(double[] weights, int count, int digits) {
        double[] merged = new double[count];
        int leaf = 0;
        int from = 0;
        int to = 0;
        double length = 0;
        // The first group may be smaller, so that the last one is full.
        int group = count <= 1 ? 0 : (count - 2) % (digits - 1) + 2;
        for (int left = count; left > 1; left -= group - 1, group = digits) {
            double sum = 0;
            for (int i = 0; i < group; i++) {
                sum += leaf < count && (from == to || weights[leaf] <= merged[from]) ? weights[leaf++] : merged[from++];
            }
            merged[to++] = sum;
            length += sum;
        }
        return length;
    }

    /**
     * The cost of so many tests on average, were they always the cheapest.
     *
     * @param length the mean number of tests
     * @param costs  ascending
     * @param count  how many of them there are
     */
    static double cost(double length, double[] costs, int count) {
        double cost = 0;
        double left = length;
        for (int i = 0; i < count && left > 0; i++) {
            cost += Math.min(1, left) * costs[i];
            left -= 1;
        }
        return cost;
    }
}
