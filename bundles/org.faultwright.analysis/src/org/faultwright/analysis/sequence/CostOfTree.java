/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.sequence;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.faultwright.quantity.Exact;

/** The expected cost of an order of tests, exactly. */
public final class CostOfTree {
    private final TestProblem problem;

    private CostOfTree(TestProblem problem) {
        this.problem = problem;
    }

    public static Exact of(TestProblem problem, TestTree tree) {
        return new CostOfTree(problem).of(tree, problem.weights(), problem.setUps().start());
    }

    private Exact of(TestTree tree, List<Exact> weights, int setUp) {
        if (!(tree instanceof TestTree.Ask ask)) {
            return finish(weights, setUp);
        }
        Exact cost = sum(weights).times(problem.setUps().cost(setUp, ask.test()));
        for (Map.Entry<Integer, TestTree> next : ask.next().entrySet()) {
            int outcome = next.getKey();
            cost = cost.plus(of(next.getValue(), after(weights, ask.test(), outcome),
                    problem.setUps().after(setUp, ask.test(), outcome)));
        }
        return cost;
    }

    private List<Exact> after(List<Exact> weights, int test, int outcome) {
        List<Exact> left = new ArrayList<>();
        for (int f = 0; f < weights.size(); f++) {
            List<Exact> shares = problem.tests().get(test).shares().get(f);
            left.add(outcome < shares.size() ? weights.get(f).times(shares.get(outcome)) : Exact.ZERO);
        }
        return left;
    }

    private Exact finish(List<Exact> weights, int setUp) {
        Exact cost = Exact.ZERO;
        for (int f = 0; f < weights.size(); f++) {
            cost = cost.plus(weights.get(f).times(problem.setUps().finish(setUp, problem.goals().get(f))));
        }
        return cost;
    }

    private static Exact sum(List<Exact> weights) {
        return weights.stream().reduce(Exact.ZERO, Exact::plus);
    }
}
