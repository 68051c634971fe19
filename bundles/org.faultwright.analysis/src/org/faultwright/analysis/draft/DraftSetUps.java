/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import org.faultwright.analysis.order.PartSetUps;
import org.faultwright.analysis.order.SetUpChanges;
import org.faultwright.analysis.order.SetUpSimulator;
import org.faultwright.analysis.sequence.SetUpCosts;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** The cost of the tests of a draft, and of getting ready for what follows them. */
final class DraftSetUps implements SetUpCosts {
    private final List<Step> tests;
    /** The first act of each goal; absent where it is only concluded. */
    private final List<Optional<Step>> first;
    private final BiPredicate<Step, List<Integer>> ready;
    private final SetUpSimulator bench;
    private final SetUpChanges changes;
    private final List<List<Integer>> known = new ArrayList<>();

    DraftSetUps(List<Step> tests, List<Optional<Step>> first, BiPredicate<Step, List<Integer>> ready, SetUpSimulator bench, SetUpChanges changes,
            List<Integer> start) {
        this.ready = ready;
        this.tests = tests;
        this.first = first;
        this.bench = bench;
        this.changes = changes;
        known.add(start);
    }

    @Override
    public int start() {
        return 0;
    }

    private Optional<SetUpChanges.SetUpRoute> before(int setUp, int test) {
        return changes.to(known.get(setUp), to -> ready.test(tests.get(test), to));
    }

    @Override
    public Exact cost(int setUp, int test) {
        return before(setUp, test).map(way -> way.time().plus(leastCost(test))).orElse(PartSetUps.NEVER);
    }

    @Override
    public Exact leastCost(int test) {
        return StepTimes.stated(tests.get(test)).orElse(DraftTree.USUAL_TIME);
    }

    @Override
    public int after(int setUp, int test, int outcome) {
        Step step = tests.get(test);
        List<Integer> after = before(setUp, test).flatMap(way -> bench.after(way.to(), step, step.outcomes().get(outcome)))
                .orElse(known.get(setUp));
        if (!known.contains(after)) {
            known.add(after);
        }
        return known.indexOf(after);
    }

    @Override
    public Exact finish(int setUp, int goal) {
        Predicate<List<Integer>> wanted = first.get(goal).<Predicate<List<Integer>>>map(act ->
                to -> ready.test(act, to)).orElse(bench::isPutBack);
        return changes.to(known.get(setUp), wanted).map(SetUpChanges.SetUpRoute::time).orElse(Exact.ZERO);
    }

    @Override
    public long exposure(int setUp, int test) {
        return before(setUp, test).map(way -> bench.exposed(known.get(setUp), way.to())).orElse(-1L);
    }
}
