/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order of independent checks, each of which finds one fault or not: the largest weight over cost
 * first (W. E. Smith, "Various optimizers for single-stage production", 1956; for search by inspection
 * J. B. Kadane and H. A. Simon, "Optimal strategies for a class of constrained sequential problems", 1977).
 */
final class CheckOrder {
    private CheckOrder() {
    }

    /** One fault that one test tells from all the others, as the search knows them. */
    record Single(int test, double weight, double cost) {
    }

    /** What the order of single checks comes to. */
    record Checks(int first, double cost) {
    }

    /**
     * The best order of checks of which each tells one fault from the rest. Where every fault has a check, the last
     * fault need not be checked for: it is what is left.
     *
     * @param singles    one for each fault that has a check; two or more
     * @param unchecked  the weight of the faults that have none
     * @param oneIsLeft  whether every fault has a check
     */
    static Checks best(List<Single> singles, double unchecked, boolean oneIsLeft) {
        List<Single> sorted = new ArrayList<>(singles);
        sorted.sort(Comparator.comparingDouble((Single s) -> -s.weight() / s.cost()).thenComparingInt(Single::test));
        if (!oneIsLeft) {
            return order(sorted, unchecked, -1);
        }
        Checks best = order(sorted, 0, 0);
        for (int left = 1; left < sorted.size(); left++) {
            Checks other = order(sorted, 0, left);
            best = other.cost() < best.cost() ? other : best;
        }
        return best;
    }

    private static Checks order(List<Single> sorted, double unchecked, int left) {
        double weight = unchecked + sorted.stream().mapToDouble(Single::weight).sum();
        double cost = 0;
        int first = -1;
        for (int i = 0; i < sorted.size(); i++) {
            if (i != left) {
                cost += weight * sorted.get(i).cost();
                weight -= sorted.get(i).weight();
                first = first < 0 ? sorted.get(i).test() : first;
            }
        }
        return new Checks(first, cost);
    }
}
