/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The states of a search through a {@link TestProblem}: what may be asked in each, what it costs and what it
 * leads to.
 */
final class SearchSpace {
    /** What else than the faults still possible decides how a search goes on. */
    record Circumstance(long asked, List<Integer> evidence, int setUp) {
    }

    private final TestProblem problem;
    private final FaultBits bits;
    private final WeightTable weights;
    private final SetUpCosts setUps;
    private final List<Circumstance> circumstances = new ArrayList<>();
    private final Map<Circumstance, Integer> numbers = new HashMap<>();
    private double[][] costs = new double[1][];
    private long[][] exposures = new long[1][];

    SearchSpace(TestProblem problem) {
        this.problem = problem;
        this.setUps = problem.setUps();
        this.bits = new FaultBits(problem);
        this.weights = new WeightTable(bits.weight);
        number(new Circumstance(0, List.of(), setUps.start()));
    }

    TestProblem problem() {
        return problem;
    }

    FaultBits bits() {
        return bits;
    }

    Circumstance circumstance(int number) {
        return circumstances.get(number);
    }

    /** Of each test, whatever the set-up. */
    double[] leastCosts() {
        return IntStream.range(0, bits.can.length).mapToDouble(t -> setUps.leastCost(t).doubleValue()).toArray();
    }

    int outcomes(int test) {
        return bits.can[test].length;
    }

    int start() {
        return 0;
    }

    private int number(Circumstance circumstance) {
        return numbers.computeIfAbsent(circumstance, c -> {
            circumstances.add(c);
            return circumstances.size() - 1;
        });
    }

    /** The faults still possible after an outcome. */
    long after(long mask, int test, int outcome) {
        return mask & bits.can[test][outcome];
    }

    /** The circumstances after an outcome that leaves those faults; what no longer matters is forgotten. */
    int after(int circumstance, long left, int test, int outcome) {
        Circumstance now = circumstances.get(circumstance);
        int setUp = setUps.after(now.setUp(), test, outcome);
        if (bits.isPlain()) {
            return setUp == now.setUp() ? circumstance : number(new Circumstance(0, List.of(), setUp));
        }
        List<Integer> evidence = new ArrayList<>(now.evidence());
        evidence.add(test * 64 + outcome);
        evidence.removeIf(e -> (bits.vague[e / 64] & left) == 0);
        evidence.sort(null);
        long matters = bits.everNeeded | bits.confirming(left);
        for (int t = 0; t < bits.vague.length; t++) {
            matters |= (bits.vague[t] & left) != 0 ? 1L << t : 0;
        }
        return number(new Circumstance((now.asked() | 1L << test) & matters, List.copyOf(evidence), setUp));
    }

    double weight(int fault, Circumstance circumstance) {
        double weighed = bits.weight[fault];
        for (int e : circumstance.evidence()) {
            weighed *= bits.share[e / 64][fault][e % 64];
        }
        return weighed;
    }

    double weight(long mask, int circumstance) {
        if (bits.isPlain()) {
            return weights.of(mask);
        }
        Circumstance now = circumstances.get(circumstance);
        double sum = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            sum += weight(Long.numberOfTrailingZeros(rest), now);
        }
        return sum;
    }

    /** The cost of a test for all that is still possible. */
    double cost(long mask, int circumstance, int test) {
        return weight(mask, circumstance) * cost(circumstances.get(circumstance).setUp(), test);
    }

    private double cost(int setUp, int test) {
        if (setUp >= costs.length) {
            costs = Arrays.copyOf(costs, 2 * setUp + 1);
        }
        if (costs[setUp] == null) {
            costs[setUp] = IntStream.range(0, bits.can.length).mapToDouble(t -> setUps.cost(setUp, t).doubleValue()).toArray();
        }
        return costs[setUp][test];
    }

    private long exposure(int setUp, int test) {
        if (setUp >= exposures.length) {
            exposures = Arrays.copyOf(exposures, 2 * setUp + 1);
        }
        if (exposures[setUp] == null) {
            exposures[setUp] = IntStream.range(0, bits.can.length).mapToLong(t -> setUps.exposure(setUp, t)).toArray();
        }
        return exposures[setUp][test];
    }

    /** The cost of going on with what was found. */
    double finish(long mask, int circumstance) {
        Circumstance now = circumstances.get(circumstance);
        double sum = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            sum += weight(fault, now) * setUps.finish(now.setUp(), bits.goal[fault]).doubleValue();
        }
        return sum;
    }

    /** The tests that may be asked: those that help, less those that would open or switch on something too early. */
    long admissible(long mask, int circumstance) {
        long helping = helping(mask, circumstance);
        int setUp = circumstances.get(circumstance).setUp();
        long allowed = helping;
        for (long rest = helping; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            long exposure = exposure(setUp, test);
            for (long others = exposure == 0 ? 0 : helping; others != 0; others &= others - 1) {
                long less = exposure(setUp, Long.numberOfTrailingZeros(others));
                if (less != exposure && (less & ~exposure) == 0) {
                    allowed &= ~(1L << test);
                }
            }
        }
        return allowed;
    }

    /** The tests not yet asked that tell something apart, confirm a goal or must come before one that does. */
    long helping(long mask, int circumstance) {
        long asked = circumstances.get(circumstance).asked();
        long wanted = bits.isPlain() ? 0 : bits.confirming(mask) & ~asked;
        for (int t = 0; t < bits.can.length; t++) {
            if ((asked >> t & 1) == 0 && bits.tellsApart(t, mask)) {
                wanted |= 1L << t;
            }
        }
        if (bits.everNeeded == 0) {
            return wanted;
        }
        for (long before = -1; before != wanted;) {
            before = wanted;
            for (long rest = before; rest != 0; rest &= rest - 1) {
                wanted |= bits.needsAsked[Long.numberOfTrailingZeros(rest)] & ~asked;
            }
        }
        long ready = 0;
        for (long rest = wanted; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            ready |= (bits.needsAsked[test] & ~asked) == 0 ? 1L << test : 0;
        }
        return ready;
    }
}
