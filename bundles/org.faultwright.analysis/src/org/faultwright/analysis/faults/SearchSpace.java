/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/**
 * A {@link TestProblem} as numbers and bits, with the questions that every search asks of it: what may be
 * asked, what it leads to, and what it will cost at least. Faults are renumbered by ascending weight.
 */
final class SearchSpace {
    /** What else than the faults still possible decides how a search goes on. */
    record Circumstance(long asked, List<Integer> evidence, int setUp) {
    }

    private final TestProblem problem;
    private final int[] original;
    private final double[] weight;
    private final int[] goal;
    private final long[][] can;
    private final long[] vague;
    private final long[][] apart;
    private final double[][][] share;
    private final long[] needsAsked;
    private final long[] confirming;
    private final int[] merged;
    private final double[] leastCost;
    private final boolean plain;
    private final boolean everyFaultMatters;
    private final WeightTable weights;
    private final SetUps setUps;
    private final List<Circumstance> circumstances = new ArrayList<>();
    private final Map<Circumstance, Integer> numbers = new HashMap<>();
    private double[][] costs = new double[1][];
    private long everNeeded;

    SearchSpace(TestProblem problem) {
        this.problem = problem;
        this.setUps = problem.setUps();
        int faults = problem.weights().size();
        int tests = problem.tests().size();
        this.original = IntStream.range(0, faults).boxed()
                .sorted(Comparator.comparing((Integer f) -> problem.weights().get(f)).thenComparing(f -> f))
                .mapToInt(Integer::intValue).toArray();
        this.weight = Arrays.stream(original).mapToDouble(f -> problem.weights().get(f).doubleValue()).toArray();
        this.goal = Arrays.stream(original).map(f -> problem.goals().get(f)).toArray();
        this.weights = new WeightTable(weight);
        this.everyFaultMatters = Arrays.stream(goal).distinct().count() == faults;
        this.can = new long[tests][];
        this.vague = new long[tests];
        this.share = new double[tests][faults][];
        this.apart = new long[tests][faults];
        this.needsAsked = new long[tests];
        this.confirming = new long[Arrays.stream(goal).max().orElse(-1) + 1];
        for (int t = 0; t < tests; t++) {
            readTest(t);
        }
        this.merged = merged();
        this.leastCost = IntStream.range(0, tests).mapToDouble(t -> setUps.leastCost(t).doubleValue()).toArray();
        this.plain = Arrays.stream(vague).allMatch(v -> v == 0) && everNeeded == 0
                && Arrays.stream(confirming).allMatch(c -> c == 0);
        number(new Circumstance(0, List.of(), setUps.start()));
    }

    private void readTest(int t) {
        TestProblem.Test test = problem.tests().get(t);
        can[t] = new long[test.outcomes()];
        for (int f = 0; f < original.length; f++) {
            share[t][f] = test.shares().get(original[f]).stream().mapToDouble(Exact::doubleValue).toArray();
            int possible = 0;
            for (int o = 0; o < share[t][f].length; o++) {
                if (share[t][f][o] > 0) {
                    can[t][o] |= 1L << f;
                    possible++;
                }
            }
            if (possible > 1) {
                vague[t] |= 1L << f;
            }
        }
        for (int f = 0; f < original.length; f++) {
            long together = 0;
            for (long outcome : can[t]) {
                together |= (outcome >> f & 1) != 0 ? outcome : 0;
            }
            apart[t][f] = ~together & all() & ~sameGoal(f);
        }
        test.after().forEach(before -> needsAsked[t] |= 1L << before);
        everNeeded |= needsAsked[t];
        test.confirms().stream().filter(g -> g < confirming.length).forEach(g -> confirming[g] |= 1L << t);
    }

    private long sameGoal(int fault) {
        return mask(IntStream.range(0, goal.length).filter(other -> goal[other] == goal[fault]));
    }

    private static long mask(IntStream bits) {
        return bits.mapToLong(bit -> 1L << bit).reduce(0, (a, b) -> a | b);
    }

    /** Faults that no order is sure to tell apart, however it goes, are one thing for the bound. */
    private int[] merged() {
        int[] group = goal.clone();
        for (int f = 0; f < goal.length; f++) {
            long apartFromF = sameGoal(f);
            for (long[] byTest : apart) {
                apartFromF |= byTest[f];
            }
            for (int other = 0; other < goal.length; other++) {
                if ((apartFromF >> other & 1) == 0) {
                    int from = group[other];
                    int to = group[f];
                    Arrays.setAll(group, i -> group[i] == from ? to : group[i]);
                }
            }
        }
        return group;
    }

    long all() {
        return original.length == 0 ? 0 : -1L >>> Long.SIZE - original.length;
    }

    int tests() {
        return can.length;
    }

    int outcomes(int test) {
        return can[test].length;
    }

    List<Integer> originals(long mask) {
        return IntStream.range(0, original.length).filter(f -> (mask >> f & 1) != 0).map(f -> original[f]).sorted().boxed()
                .toList();
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

    /** Whether nothing but the set-up and the faults still possible decides how a search goes on. */
    boolean isPlain() {
        return plain;
    }

    /** The faults still possible after an outcome. */
    long after(long mask, int test, int outcome) {
        return mask & can[test][outcome];
    }

    /** The circumstances after an outcome that leaves those faults; what no longer matters is forgotten. */
    int after(int circumstance, long left, int test, int outcome) {
        Circumstance now = circumstances.get(circumstance);
        int setUp = setUps.after(now.setUp(), test, outcome);
        if (plain) {
            return setUp == now.setUp() ? circumstance : number(new Circumstance(0, List.of(), setUp));
        }
        List<Integer> evidence = new ArrayList<>(now.evidence());
        evidence.add(test * 64 + outcome);
        evidence.removeIf(e -> (vague[e / 64] & left) == 0);
        evidence.sort(null);
        long matters = everNeeded | confirming(left);
        for (int t = 0; t < vague.length; t++) {
            matters |= (vague[t] & left) != 0 ? 1L << t : 0;
        }
        return number(new Circumstance((now.asked() | 1L << test) & matters, List.copyOf(evidence), setUp));
    }

    private long confirming(long mask) {
        long found = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            found |= confirming[goal[Long.numberOfTrailingZeros(rest)]];
        }
        return found;
    }

    private double weight(int fault, Circumstance circumstance) {
        double weighed = weight[fault];
        for (int e : circumstance.evidence()) {
            weighed *= share[e / 64][fault][e % 64];
        }
        return weighed;
    }

    double weight(long mask, int circumstance) {
        if (plain) {
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
            costs[setUp] = IntStream.range(0, can.length).mapToDouble(t -> setUps.cost(setUp, t).doubleValue()).toArray();
        }
        return costs[setUp][test];
    }

    /** The cost of going on with what was found. */
    double finish(long mask, int circumstance) {
        Circumstance now = circumstances.get(circumstance);
        double sum = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            sum += weight(fault, now) * setUps.finish(now.setUp(), goal[fault]).doubleValue();
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
            long exposure = setUps.exposure(setUp, test);
            for (long others = exposure == 0 ? 0 : helping; others != 0; others &= others - 1) {
                long less = setUps.exposure(setUp, Long.numberOfTrailingZeros(others));
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
        long wanted = plain ? 0 : confirming(mask) & ~asked;
        for (int t = 0; t < can.length; t++) {
            if ((asked >> t & 1) == 0 && tellsApart(t, mask)) {
                wanted |= 1L << t;
            }
        }
        if (everNeeded == 0) {
            return wanted;
        }
        for (long before = -1; before != wanted;) {
            before = wanted;
            for (long rest = before; rest != 0; rest &= rest - 1) {
                wanted |= needsAsked[Long.numberOfTrailingZeros(rest)] & ~asked;
            }
        }
        long ready = 0;
        for (long rest = wanted; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            ready |= (needsAsked[test] & ~asked) == 0 ? 1L << test : 0;
        }
        return ready;
    }

    private boolean tellsApart(int test, long mask) {
        if (everyFaultMatters && (vague[test] & mask) == 0) {
            return (apart[test][Long.numberOfTrailingZeros(mask)] & mask) != 0;
        }
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            if ((apart[test][Long.numberOfTrailingZeros(rest)] & mask) != 0) {
                return true;
            }
        }
        return false;
    }

    /** What a test tells of the goals still possible, in bit. */
    double gain(long mask, int circumstance, int test) {
        Circumstance now = circumstances.get(circumstance);
        double[][] weights = new double[can[test].length][confirming.length];
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            for (int outcome = 0; outcome < weights.length; outcome++) {
                double shown = outcome < share[test][fault].length ? share[test][fault][outcome] : 0;
                weights[outcome][goal[fault]] += weight(fault, now) * shown;
            }
        }
        return InformationGain.of(weights);
    }

    /**
     * The checks in question, where each test that helps tells one fault from all the others and no test does more;
     * empty where this is not so.
     */
    List<CheckOrder.Single> singles(long mask, long tests) {
        if (!plain || !everyFaultMatters || !setUps.areFixed() || Long.bitCount(mask) < 3) {
            return List.of();
        }
        Map<Integer, CheckOrder.Single> cheapest = new TreeMap<>();
        for (long rest = tests; rest != 0; rest &= rest - 1) {
            int test = Long.numberOfTrailingZeros(rest);
            long first = shownWith(test, mask, mask);
            long other = mask & ~first;
            long one = Long.bitCount(first) == 1 ? first : other;
            if (Long.bitCount(one) != 1 || shownWith(test, other, mask) != other) {
                return List.of();
            }
            int fault = Long.numberOfTrailingZeros(one);
            CheckOrder.Single single = new CheckOrder.Single(test, weight[fault], leastCost[test]);
            cheapest.merge(fault, single, (a, b) -> a.cost() <= b.cost() ? a : b);
        }
        return List.copyOf(cheapest.values());
    }

    /** The faults that show what the first of some faults shows, where each shows one thing only. */
    private long shownWith(int test, long some, long mask) {
        int outcome = 0;
        while ((can[test][outcome] >> Long.numberOfTrailingZeros(some) & 1) == 0) {
            outcome++;
        }
        return can[test][outcome] & mask;
    }

    /** What telling the rest apart costs at least: the larger of the Huffman bound and the tests that must be asked anyway. */
    double bound(long mask, int circumstance) {
        Circumstance now = circumstances.get(circumstance);
        double[] things = new double[Long.bitCount(mask)];
        int[] names = new int[things.length];
        int count = 0;
        double sum = 0;
        double confirmations = 0;
        for (long rest = mask; rest != 0; rest &= rest - 1) {
            int fault = Long.numberOfTrailingZeros(rest);
            double weighed = weight(fault, now);
            sum += weighed;
            if (!plain) {
                confirmations += weighed * cost(confirming[goal[fault]] & ~now.asked());
            }
            int place = 0;
            while (place < count && names[place] != merged[fault]) {
                place++;
            }
            names[place] = merged[fault];
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
        double[] useful = new double[can.length];
        int count = 0;
        int digits = 2;
        // A test asked for another reason may part two faults by chance.
        long anyway = plain ? 0 : confirming(mask) | everNeeded;
        for (int t = 0; t < can.length; t++) {
            if ((asked >> t & 1) == 0 && ((anyway >> t & 1) != 0 || tellsApart(t, mask))) {
                useful[count++] = leastCost[t];
                digits = Math.max(digits, can[t].length);
            }
        }
        Arrays.sort(things);
        Arrays.sort(useful, 0, count);
        double length = HuffmanBound.lengthOfSorted(things, things.length, digits) / sum;
        return HuffmanBound.cost(length, useful, count);
    }

    TestProblem problem() {
        return problem;
    }
}
