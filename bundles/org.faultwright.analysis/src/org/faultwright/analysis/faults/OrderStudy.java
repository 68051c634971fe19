/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.faultwright.analysis.Finding;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.measure.Expression;

/**
 * Whether the steps of a procedure could be asked in a better order: with the least expected time to a
 * conclusion, over the weights of the faults. What confirms the complaint stays first; repairs and what
 * follows them stay as they are; each way out keeps the test that leads to it. A test that needs something
 * opened, switched on or otherwise exposed waits as long as another that helps needs less of it,
 * whatever that costs.
 */
public final class OrderStudy {
    private static final int MOST_TRIALS = 6;
    private static final Exact UNLIKELY = Exact.ratio(1, 1_000_000);

    /**
     * The best order found against the author's own.
     *
     * @param before     the author's expected time to a conclusion in all, in seconds
     * @param after      that of the better order
     * @param bound      no order has less than this
     * @param isBest     whether no order that is allowed has less than {@code after}
     * @param authors    the author's order of this part, and
     * @param better     the better one
     * @param presumed   results that the table leaves open and the study takes for granted, such as {@code KeyLook upright}
     * @param reason     one sentence on why it is better
     */
    public record Comparison(Exact before, Exact after, Exact bound, boolean isBest, OrderedTests authors,
            OrderedTests better, List<String> presumed, String reason) {
        /** In seconds; never negative. */
        public Exact saving() {
            return before.minus(after);
        }
    }

    private final Procedure procedure;
    private final FaultWalks walks;
    private final Tree tree;
    private final Bench bench;
    private final Times times;
    private final PresumedTable presumed;
    private final Optional<Exact> whole;
    private final Optional<Proposal> best;
    private final Set<String> reasons = new LinkedHashSet<>();

    /** An order that has been tried in the text, and the change that puts it there. */
    public record Verified(Comparison comparison, Fix fix) {
    }

    /** What a change of the text is made from. */
    record Proposal(AskingPart part, PartSetUps setUps, TestTree better, Comparison comparison) {
    }

    private OrderStudy(Subject subject) {
        this.procedure = subject.procedure().orElseThrow();
        this.walks = FaultWalks.in(subject).orElseThrow();
        this.tree = walks.tree();
        this.bench = new Bench(subject.scope());
        this.times = new Times(subject.scope());
        this.presumed = new PresumedTable(walks.table());
        this.whole = TimeStudy.in(subject).orElseThrow().inAll().expected();
        if (walks.table().size() < 2 || whole.isEmpty() || tree.begin().isEmpty()
                || !walks.all().stream().allMatch(FaultWalk::isComplete)) {
            reasons.add(walks.table().size() < 2 ? "there are fewer than two faults" : "its ways have no end");
            this.best = Optional.empty();
        } else {
            this.best = best(Set.of());
        }
    }

    private Optional<Proposal> best(Set<Integer> asWritten) {
        Optional<Proposal> best = Optional.empty();
        for (int root : roots()) {
            try {
                Optional<Proposal> found = study(root, asWritten);
                if (found.isPresent() && (best.isEmpty()
                        || found.get().comparison().saving().compareTo(best.get().comparison().saving()) > 0)) {
                    best = found;
                }
            } catch (AskingPart.NotStudied notStudied) {
                reasons.add(notStudied.getMessage());
            }
        }
        return best;
    }

    /** The study of a subject that is a procedure, computed once. */
    public static Optional<OrderStudy> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(OrderStudy.class, OrderStudy::new));
    }

    public static OrderStudy of(Procedure procedure) {
        return in(new Subject(procedure, Optional.empty())).orElseThrow();
    }

    /** The best order found, also where the author's own is as good; absent where none could be studied. */
    public Optional<Comparison> best() {
        return best.map(Proposal::comparison);
    }

    /**
     * The best order that can be written into the text without a new error or warning, with the changes that do so. An
     * order that fails is tried again with the step in question kept in the set-up that the author asks it in.
     *
     * @param check the findings of a procedure, with which an order is judged
     */
    public Optional<Verified> verified(Function<Procedure, List<Finding>> check) {
        List<Finding> before = List.of();
        Set<Integer> asWritten = new HashSet<>();
        for (int i = 0; i <= MOST_TRIALS; i++) {
            Optional<Proposal> found = i == 0 ? best : best(asWritten);
            if (found.filter(proposal -> proposal.comparison().saving().signum() > 0).isEmpty()) {
                return Optional.empty();
            }
            Rerouting rerouting = new Rerouting(procedure, this, found.get());
            if (!rerouting.works()) {
                return Optional.empty();
            }
            ReroutedText text = new ReroutedText(procedure, rerouting);
            before = i == 0 ? check.apply(procedure) : before;
            List<Finding> worse = worse(before, check.apply(text.changed()));
            if (worse.isEmpty()) {
                return Optional.of(new Verified(found.get().comparison(), new Fix("Ask in the better order", text.edits())));
            }
            Set<Integer> blamed = new HashSet<>();
            worse.forEach(finding -> blamed.addAll(rerouting.blamed(finding.path())));
            if (!asWritten.addAll(blamed)) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    /** Errors and warnings of rules that now find more of them. Their places have moved, so that they are counted. */
    private static List<Finding> worse(List<Finding> before, List<Finding> after) {
        Map<String, Long> allowed = counted(before);
        Map<String, Long> now = counted(after);
        Set<String> known = before.stream().map(Finding::message).collect(Collectors.toSet());
        return after.stream().filter(finding -> finding.severity() != Severity.ADVICE
                && now.get(finding.rule()) > allowed.getOrDefault(finding.rule(), 0L)
                && !known.contains(finding.message())).toList();
    }

    private static Map<String, Long> counted(List<Finding> findings) {
        return findings.stream().filter(finding -> finding.severity() != Severity.ADVICE)
                .collect(Collectors.groupingBy(Finding::rule, Collectors.counting()));
    }

    /** Why parts were not studied, each as the end of a sentence that begins "The order was not studied because". */
    public List<String> notStudied() {
        return List.copyOf(reasons);
    }

    Optional<Proposal> proposal() {
        return best;
    }

    FaultWalks walks() {
        return walks;
    }

    /** Where the asking begins: behind the steps that confirm the complaint, or at the beginning. */
    private List<Integer> roots() {
        int begin = tree.begin().orElseThrow();
        Set<Integer> roots = new LinkedHashSet<>();
        tree.reachable(begin).stream().filter(step -> tree.step(step).frame().confirms().isPresent())
                .forEach(step -> tree.arrows(step).stream().map(Tree.Arrow::to).filter(to -> to != Tree.NOWHERE
                        && !tree.isConclusion(to)).forEach(roots::add));
        return roots.isEmpty() ? List.of(begin) : List.copyOf(roots);
    }

    private Optional<Proposal> study(int root, Set<Integer> asWritten) throws AskingPart.NotStudied {
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
        TestSequencer.Result result = TestSequencer.solve(problem);
        return isAllowed(result, problem) ? Optional.of(compared(part, setUps, result)) : Optional.empty();
    }

    /** Those that the author uses in this part come first. */
    private SetUpChanges changes(AskingPart part) {
        List<Integer> order = IntStream.concat(part.movers().stream().mapToInt(Integer::intValue),
                IntStream.range(0, tree.size()).filter(step -> !part.movers().contains(step))).boxed().toList();
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
        record At(int step, List<Integer> setUp) {
        }
        Set<At> seen = new LinkedHashSet<>(Set.of(new At(tree.begin().orElseThrow(), bench.start())));
        List<At> open = new ArrayList<>(seen);
        Set<List<Integer>> found = new HashSet<>();
        for (int i = 0; i < open.size(); i++) {
            At at = open.get(i);
            if (at.step() == root) {
                found.add(at.setUp());
                continue;
            }
            for (Tree.Arrow arrow : tree.arrows(at.step())) {
                bench.all(at.setUp(), tree.step(at.step()), arrow.outcome()).ifPresent(after -> Tree.targets(arrow)
                        .forEach(to -> after.stream().map(one -> new At(to, one)).filter(seen::add).forEach(open::add)));
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
        Set<String> readings = step instanceof Step.Decide decide
                ? decide.compute().flatMap(formula -> Formulas.computable(formula.value())).map(Expression::readings)
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

    private Proposal compared(AskingPart part, PartSetUps setUps, TestSequencer.Result result) {
        boolean better = result.cost().compareTo(part.cost()) < 0;
        TestTree order = better ? result.tree() : part.authors();
        Exact all = whole.orElseThrow();
        Exact rest = all.minus(part.cost());
        OrderedTests shown = OrderedTests.of(order, part, tree);
        Comparison comparison = new Comparison(all, better ? rest.plus(result.cost()) : all,
                rest.plus(result.bound().min(part.cost())), result.isBest(), OrderedTests.of(part.authors(), part, tree), shown,
                presumptions(part), better ? new OrderReason(part, tree, times, walks.table()).of(order) : "");
        return new Proposal(part, setUps, order, comparison);
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
