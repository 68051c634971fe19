/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.PresumedTable;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.analysis.sequence.CostOfTree;
import org.faultwright.analysis.sequence.TestProblem;
import org.faultwright.analysis.sequence.TestSequencer;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.time.Duration;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.analysis.trace.FaultWalk;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.analysis.trace.StateGraph;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.measure.Expression;

/** Studies the order of one part of a tree, from one step on. */
final class PartStudy {
    /** What a cover is worth beside its time, in seconds, the most first. */
    private static final List<Exact> OPENINGS = List.of(Exact.of(1200), Exact.of(300), Exact.of(60));
    /** As good as equal: half a minute on average, or a fiftieth. */
    private static final Exact NEAR = Exact.of(30);
    private static final Exact NEAR_SHARE = Exact.ratio(1, 50);
    private static final Exact UNLIKELY = Exact.ratio(1, 1_000_000);

    private final FaultWalks walks;
    private final LinkedSteps tree;
    private final SetUpSimulator bench;
    private final StepTimes times;
    private final PresumedTable presumed;
    private final Exact whole;

    /** @param whole the expected time of the whole procedure, in seconds */
    PartStudy(FaultWalks walks, Scope scope, Exact whole) {
        this.walks = walks;
        this.tree = walks.tree();
        this.bench = new SetUpSimulator(scope);
        this.times = new StepTimes(scope);
        this.presumed = new PresumedTable(walks.table());
        this.whole = whole;
    }

    /** @param asWritten steps that are only come to in a set-up in which the author comes to them */
    Optional<OrderStudy.Proposal> of(int root, Set<Integer> asWritten) throws AskingPart.NotStudied {
        Map<Fault, Exact> arriving = arriving(root);
        if (arriving.size() < 2) {
            return Optional.empty();
        }
        List<Integer> setUp = setUpAt(root);
        AskingPart part = new AskingPart(walks, bench, times, presumed, root, setUp, List.copyOf(arriving.keySet()),
                List.copyOf(arriving.values()));
        List<Integer> entries = IntStream.range(0, arriving.size()).mapToObj(f -> part.exit(f).entry()).distinct().toList();
        if (entries.size() < 2 || arriving.size() > TestProblem.MOST || part.tests().size() > TestProblem.MOST) {
            return Optional.empty();
        }
        PartSetUps setUps = new PartSetUps(part, tree, bench, times, changes(part), entries, asWritten);
        for (int entry : entries) {
            if (!part.exitSetUps(entry).stream().allMatch(there -> setUps.isRight(entry, there))) {
                throw new AskingPart.NotStudied("what " + tree.step(entry).name() + " and the steps after it need is not there"
                        + " or not put back as things stand");
            }
        }
        TestProblem problem = problem(part, setUps, entries, List.copyOf(arriving.values()));
        TestSequencer.Result result = closedFirst(problem, setUps, TestSequencer.solve(problem));
        return isAllowed(result, problem) ? Optional.of(compared(part, setUps, result)) : Optional.empty();
    }

    /** The quickest order, or one nearly as quick that takes covers off later. */
    private TestSequencer.Result closedFirst(TestProblem problem, PartSetUps setUps, TestSequencer.Result quickest) {
        TestProblem dearer = new TestProblem(problem.weights(), problem.goals(), problem.tests(), new CoversLast(setUps, Exact.ONE));
        if (CostOfTree.of(dearer, quickest.tree()).equals(CostOfTree.of(problem, quickest.tree()))) {
            return quickest;
        }
        Exact most = quickest.cost().plus(NEAR.max(quickest.cost().times(NEAR_SHARE)));
        return OPENINGS.stream().map(opening -> {
            TestTree late = TestSequencer.solve(new TestProblem(problem.weights(), problem.goals(), problem.tests(), new CoversLast(setUps, opening))).tree();
            Exact cost = CostOfTree.of(problem, late);
            return new TestSequencer.Result(late, cost, quickest.bound(), quickest.isBest() && cost.compareTo(quickest.cost()) == 0);
        }).filter(late -> late.cost().compareTo(most) <= 0 && isAllowed(late, problem)).findFirst().orElse(quickest);
    }

    /** Those that the author uses in this part come first. */
    private SetUpChanges changes(AskingPart part) {
        List<Integer> order = IntStream.concat(part.movers().stream().mapToInt(Integer::intValue),
                IntStream.range(0, tree.size()).filter(step -> !part.movers().contains(step)))
                .filter(step -> !ClosingStep.is(tree.step(step))).boxed().toList();
        return new SetUpChanges(bench, times, order.stream().map(step -> SetUpChanges.mover(tree.step(step), walks))
                .flatMap(Optional::stream).toList());
    }

    /** The faults that come to a step before anything has been repaired, with how often they do. */
    private Map<Fault, Exact> arriving(int root) {
        Map<Fault, Exact> arriving = new LinkedHashMap<>();
        for (FaultWalk walk : walks.all()) {
            StateGraph all = walk.states();
            Duration duration = new Duration(all, times, move -> move.to().filter(walk::findsAt).isPresent());
            duration.chanceOf(state -> all.state(state).step() == root && all.state(state).done() == 0)
                    .filter(chance -> chance.signum() > 0).ifPresent(chance -> arriving.put(walk.fault(),
                            chance.times(walks.table().weight(walk.fault())).max(UNLIKELY)));
        }
        return arriving;
    }

    private List<Integer> setUpAt(int root) throws AskingPart.NotStudied {
        record StepInSetUp(int step, List<Integer> setUp) {
        }
        Set<StepInSetUp> seen = new LinkedHashSet<>(Set.of(new StepInSetUp(tree.begin().orElseThrow(), bench.start())));
        List<StepInSetUp> open = new ArrayList<>(seen);
        Set<List<Integer>> found = new HashSet<>();
        for (int i = 0; i < open.size(); i++) {
            StepInSetUp at = open.get(i);
            if (at.step() == root) {
                found.add(at.setUp());
                continue;
            }
            for (LinkedSteps.Arrow arrow : tree.arrows(at.step())) {
                bench.all(at.setUp(), tree.step(at.step()), arrow.outcome()).ifPresent(after -> LinkedSteps.targets(arrow)
                        .forEach(to -> after.stream().map(one -> new StepInSetUp(to, one)).filter(seen::add).forEach(open::add)));
            }
        }
        if (found.size() != 1) {
            throw new AskingPart.NotStudied("the set-up at " + tree.step(root).name() + " is not always the same");
        }
        return found.iterator().next();
    }

    private TestProblem problem(AskingPart part, PartSetUps setUps, List<Integer> entries, List<Exact> weights) {
        List<Integer> goals = IntStream.range(0, weights.size()).mapToObj(f -> entries.indexOf(part.exit(f).entry())).toList();
        List<TestProblem.Test> tests = new ArrayList<>();
        for (int test = 0; test < part.tests().size(); test++) {
            Step step = tree.step(part.tests().get(test));
            tests.add(new TestProblem.Test(part.faults().stream().map(fault -> presumed.shares(fault, step)).toList(),
                    before(part, step), confirms(part, goals, part.tests().get(test))));
        }
        return new TestProblem(weights, goals, tests, setUps);
    }

    /** The tests whose readings a decision computes with. */
    private List<Integer> before(AskingPart part, Step step) {
        Set<String> readings = step instanceof Step.Calculate calculate
                ? calculate.formula().flatMap(formula -> Formulas.computable(formula.value())).map(Expression::readings)
                        .orElse(Set.of()) : Set.of();
        return IntStream.range(0, part.tests().size())
                .filter(test -> readings.contains(tree.step(part.tests().get(test)).name().text())).boxed().toList();
    }

    /** The goals that the author goes on to only from this test. */
    private static List<Integer> confirms(AskingPart part, List<Integer> goals, int test) {
        return goals.stream().distinct().filter(goal -> IntStream.range(0, goals.size())
                .filter(fault -> goals.get(fault).equals(goal)).allMatch(f -> part.exit(f).lastTest() == test)).toList();
    }

    private static boolean isAllowed(TestSequencer.Result result, TestProblem problem) {
        return result.cost().compareTo(PartSetUps.NEVER.times(UNLIKELY)) < 0 && partsGoals(result.tree(), problem);
    }

    private static boolean partsGoals(TestTree order, TestProblem problem) {
        if (order instanceof TestTree.Ask ask) {
            return ask.next().values().stream().allMatch(next -> partsGoals(next, problem));
        }
        return ((TestTree.Left) order).faults().stream().map(problem.goals()::get).distinct().count() <= 1;
    }

    private OrderStudy.Proposal compared(AskingPart part, PartSetUps setUps, TestSequencer.Result result) {
        boolean better = result.cost().compareTo(part.cost()) < 0;
        TestTree order = better ? result.tree() : part.authors();
        Exact rest = whole.minus(part.cost());
        OrderedTests shown = OrderedTests.of(order, part, tree);
        OrderStudy.Comparison comparison = new OrderStudy.Comparison(whole, better ? rest.plus(result.cost()) : whole,
                rest.plus(result.bound().min(part.cost())), result.isBest(), OrderedTests.of(part.authors(), part, tree), shown,
                presumptions(part), better ? new OrderReason(part, setUps, tree, times, walks.table()).of(order) : "",
                better ? new OrderReason(part, setUps, tree, times, walks.table()).all(order) : List.of());
        return new OrderStudy.Proposal(part, setUps, order, comparison);
    }

    private List<String> presumptions(AskingPart part) {
        List<String> found = new ArrayList<>();
        for (int test : part.tests()) {
            Step step = tree.step(test);
            boolean open = part.faults().stream().anyMatch(fault -> walks.table().cell(fault, step).isSilent());
            presumed.presumed(step).filter(result -> open).ifPresent(result -> found.add(step.name() + " " + result));
        }
        return found;
    }
}
