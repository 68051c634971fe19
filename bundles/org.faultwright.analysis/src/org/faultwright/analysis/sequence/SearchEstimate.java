/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What can be said of a state of the search without searching: a bound, what a test tells, and orders known beforehand. */
final class SearchEstimate {
    private final FaultBits bits;
    private final SearchSpace space;
    private final double[] leastCost;
    private final boolean setUpsAreFixed;

    SearchEstimate(SearchSpace space) {
        this.space = space;
        this.bits = space.bits();
        this.leastCost = space.leastCosts();
        this.setUpsAreFixed = space.problem().setUps().areFixed();
    }

    /** What a test tells of the goals still possible, in bit. */
    double gain(long mask, int circumstance, int test) {
        SearchSpace.Circumstance now = space.circumstance(circumstance);
        double[][] weights = new double[bits.can[test].length][bits.confirming.length];
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            for (int outcome = 0; outcome < weights.length; outcome++) {
                double shown = outcome < bits.share[test][fault].length ? bits.share[test][fault][outcome] : 0;
                weights[outcome][bits.goal[fault]] += space.weight(fault, now) * shown;
            }
        }
        return InformationGain.of(weights);
    }

    /**
     * The checks in question, where each test that helps tells one fault from all the others and no test does more;
     * empty where this is not so.
     */
    List<CheckOrder.Single> singles(long mask, long tests) {
        if (!bits.isPlain() || !bits.everyFaultMatters() || !setUpsAreFixed || Long.bitCount(mask) < 3) {
            return List.of();
        }
        Map<Integer, CheckOrder.Single> cheapest = new TreeMap<>();
        for (long rest = tests; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            long first = bits.shownWith(test, mask, mask);
            long other = mask & ~first;
            long one = Long.bitCount(first) == 1 ? first : other;
            if (Long.bitCount(one) != 1 || bits.shownWith(test, other, mask) != other) {
                return List.of();
            }
            int fault = Long.numberOfTrailingZeros(one);
            CheckOrder.Single single = new CheckOrder.Single(test, bits.weight[fault], leastCost[test]);
            cheapest.merge(fault, single, (a, b) -> a.cost() <= b.cost() ? a : b);
        }
        return List.copyOf(cheapest.values());
    }

    /** What telling the rest apart costs at least: the larger of the Huffman bound and the tests that must be asked anyway. */
    double bound(long mask, int circumstance) {
        SearchSpace.Circumstance now = space.circumstance(circumstance);
        double[] things = new double[Long.bitCount(mask)];
        int[] names = new int[things.length];
        int count = 0;
        double sum = 0;
        double confirmations = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            double weighed = space.weight(fault, now);
            sum += weighed;
            if (!bits.isPlain()) {
                confirmations += weighed * cost(bits.confirming[bits.goal[fault]] & ~now.asked());
            }
            int place = 0;
            while (place < count && names[place] != bits.merged[fault]) {
                place++;
            }
            names[place] = bits.merged[fault];
            things[place] += weighed;
            count = Math.max(count, place + 1);
        }
        return count <= 1 || sum <= 0 ? confirmations
                : Math.max(confirmations, sum * huffman(Arrays.copyOf(things, count), sum, mask, now.asked()));
    }

    private double cost(long tests) {
        double sum = 0;
        for (long rest = tests; rest != 0; rest &= rest - 1) {
            sum += leastCost[Long.numberOfTrailingZeros(rest)];
        }
        return sum;
    }

    private double huffman(double[] things, double sum, long mask, long asked) {
        double[] useful = new double[bits.can.length];
        int count = 0;
        int digits = 2;
        // A test asked for another reason may part two faults by chance.
        long anyway = bits.isPlain() ? 0 : bits.confirming(mask) | bits.everNeeded;
        for (int t = 0; t < bits.can.length; t++) {
            if ((asked >> t & 1) == 0 && ((anyway >> t & 1) != 0 || bits.tellsApart(t, mask))) {
                useful[count++] = leastCost[t];
                digits = Math.max(digits, bits.can[t].length);
            }
        }
        Arrays.sort(things);
        Arrays.sort(useful, 0, count);
        double length = HuffmanBound.lengthOfSorted(things, things.length, digits) / sum;
        return HuffmanBound.cost(length, useful, count);
    }
}
