/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.faultwright.quantity.Exact;

/**
 * Tries every order of tests there is, without bounds, memory or bits: slow, exact, and written apart from
 * the search that it judges.
 */
final class EveryOrder {
    private final TestProblem problem;

    EveryOrder(TestProblem problem) {
        this.problem = problem;
    }

    Exact leastCost() {
        return leastCost(problem.weights(), Set.of(), problem.setUps().start());
    }

    private Exact leastCost(List<Exact> weights, Set<Integer> asked, int setUp) {
        List<Integer> allowed = allowed(weights, asked, setUp);
        if (allowed.isEmpty()) {
            return finish(weights, setUp);
        }
        return allowed.stream().map(test -> cost(weights, asked, setUp, test)).min(Exact::compareTo).orElseThrow();
    }

    private Exact cost(List<Exact> weights, Set<Integer> asked, int setUp, int test) {
        Exact cost = sum(weights).times(problem.setUps().cost(setUp, test));
        Set<Integer> then = new HashSet<>(asked);
        then.add(test);
        for (int outcome = 0; outcome < problem.tests().get(test).outcomes(); outcome++) {
            List<Exact> left = after(weights, test, outcome);
            if (sum(left).signum() > 0) {
                cost = cost.plus(leastCost(left, then, problem.setUps().after(setUp, test, outcome)));
            }
        }
        return cost;
    }

    private Exact finish(List<Exact> weights, int setUp) {
        return IntStream.range(0, weights.size())
                .mapToObj(f -> weights.get(f).times(problem.setUps().finish(setUp, problem.goals().get(f))))
                .reduce(Exact.ZERO, Exact::plus);
    }

    /** The cost of one given order; fails where it asks what it must not, stops too early or goes on for nothing. */
    Exact costOf(TestTree order) {
        return costOf(order, problem.weights(), Set.of(), problem.setUps().start());
    }

    private Exact costOf(TestTree order, List<Exact> weights, Set<Integer> asked, int setUp) {
        List<Integer> allowed = allowed(weights, asked, setUp);
        if (!(order instanceof TestTree.Ask ask)) {
            check(allowed.isEmpty(), "stops although " + allowed + " may be asked");
            check(((TestTree.Left) order).faults().equals(possible(weights)), "does not name what is left");
            return finish(weights, setUp);
        }
        check(allowed.contains(ask.test()), "asks " + ask.test() + " of " + allowed);
        Exact cost = sum(weights).times(problem.setUps().cost(setUp, ask.test()));
        Set<Integer> then = new HashSet<>(asked);
        then.add(ask.test());
        for (int outcome = 0; outcome < problem.tests().get(ask.test()).outcomes(); outcome++) {
            List<Exact> left = after(weights, ask.test(), outcome);
            check(ask.next().containsKey(outcome) == sum(left).signum() > 0, "outcome " + outcome);
            if (ask.next().containsKey(outcome)) {
                cost = cost.plus(costOf(ask.next().get(outcome), left, then, problem.setUps().after(setUp, ask.test(), outcome)));
            }
        }
        return cost;
    }

    private static void check(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }

    private static Exact sum(List<Exact> weights) {
        return weights.stream().reduce(Exact.ZERO, Exact::plus);
    }

    private static List<Integer> possible(List<Exact> weights) {
        return IntStream.range(0, weights.size()).filter(f -> weights.get(f).signum() > 0).boxed().toList();
    }

    private Exact share(int test, int fault, int outcome) {
        List<Exact> shares = problem.tests().get(test).shares().get(fault);
        return outcome < shares.size() ? shares.get(outcome) : Exact.ZERO;
    }

    private List<Exact> after(List<Exact> weights, int test, int outcome) {
        return IntStream.range(0, weights.size()).mapToObj(f -> weights.get(f).times(share(test, f, outcome))).toList();
    }

    private List<Integer> allowed(List<Exact> weights, Set<Integer> asked, int setUp) {
        Set<Integer> wanted = new HashSet<>();
        List<Integer> possible = possible(weights);
        for (int test = 0; test < problem.tests().size(); test++) {
            int t = test;
            boolean confirms = possible.stream().anyMatch(f -> problem.tests().get(t).confirms().contains(problem.goals().get(f)));
            boolean parts = possible.stream().anyMatch(f -> possible.stream().anyMatch(g -> parts(t, f, g)));
            if (!asked.contains(test) && (confirms || parts)) {
                wanted.add(test);
            }
        }
        for (int round = 0; round < problem.tests().size(); round++) {
            Set.copyOf(wanted).forEach(test -> problem.tests().get(test).after().stream().filter(b -> !asked.contains(b))
                    .forEach(wanted::add));
        }
        wanted.removeIf(test -> !asked.containsAll(problem.tests().get(test).after()));
        return wanted.stream().filter(test -> wanted.stream().noneMatch(other -> exposesLess(other, test, setUp))).sorted().toList();
    }

    private boolean parts(int test, int one, int other) {
        return !problem.goals().get(one).equals(problem.goals().get(other))
                && IntStream.range(0, problem.tests().get(test).outcomes())
                .noneMatch(o -> share(test, one, o).signum() > 0 && share(test, other, o).signum() > 0);
    }

    private boolean exposesLess(int one, int other, int setUp) {
        long less = problem.setUps().exposure(setUp, one);
        long more = problem.setUps().exposure(setUp, other);
        return less != more && (less & more) == less;
    }
}
