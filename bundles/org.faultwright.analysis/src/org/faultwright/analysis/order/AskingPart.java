/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.faults.PresumedTable;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Setting;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/**
 * The part of a tree, from one step on, that does nothing but ask and change the set-up for what it asks, as
 * its author ordered it. It is left where something else begins: a repair, a conclusion, a step of which
 * the table says nothing. Those places are what the faults are to be told apart into.
 */
final class AskingPart {
    /** Why an order is not studied; the message ends the sentence "The order of steps was not studied because ...". */
    static final class NotStudied extends Exception {
        private static final long serialVersionUID = 1;

        NotStudied(String because) {
            super(because);
        }
    }

    /** Where a fault leaves the part: the step gone on to, and the test that was asked last. */
    record Exit(int entry, int lastTest) {
    }

    private final FaultWalks walks;
    private final LinkedSteps tree;
    private final SetUpSimulator bench;
    private final StepTimes times;
    private final PresumedTable table;
    private final List<Fault> faults;
    private final int root;
    private final List<Integer> setUp;
    private final List<Integer> tests = new ArrayList<>();
    private final Set<Integer> movers = new LinkedHashSet<>();
    private final Map<Integer, List<Setting>> needs = new HashMap<>();
    private final Map<Integer, Map<Integer, Exit>> exits = new TreeMap<>();
    private final Map<Integer, Set<List<Integer>>> exitSetUps = new HashMap<>();
    private final Map<Integer, BitSet> possibleAt = new LinkedHashMap<>();
    private final Map<Integer, Set<List<Integer>>> testSetUps = new HashMap<>();
    private TestTree authors;
    private Exact cost = Exact.ZERO;

    /**
     * @param faults  those that come to the root, with their weights in the same order
     * @param setUp   as it is on coming to the root
     */
    AskingPart(FaultWalks walks, SetUpSimulator bench, StepTimes times, PresumedTable table, int root, List<Integer> setUp,
            List<Fault> faults, List<Exact> weights) throws NotStudied {
        this.walks = walks;
        this.tree = walks.tree();
        this.bench = bench;
        this.times = times;
        this.table = table;
        this.root = root;
        this.setUp = setUp;
        this.faults = faults;
        findTests();
        this.authors = follow(root, weights, setUp, new HashSet<>(), -1);
        for (int fault = 0; fault < faults.size(); fault++) {
            if (weights.get(fault).signum() > 0 && exits.getOrDefault(fault, Map.of()).size() != 1) {
                throw new NotStudied(faults.get(fault).name() + " goes on to different steps as things stand");
            }
        }
    }

    private boolean isTest(int step) {
        Step asked = tree.step(step);
        return asked.outcomes().size() > 1 && !(asked instanceof Step.Do) && !(asked instanceof Step.Perform)
                && asked.frame().confirms().isEmpty() && !walks.judgesRepair(asked)
                && walks.table().faults().stream().anyMatch(fault -> !walks.table().cell(fault, asked).isSilent());
    }

    private Optional<SetUpChanges.ChangingStep> mover(int step) {
        return SetUpChanges.mover(tree.step(step), walks);
    }

    private int target(SetUpChanges.ChangingStep mover) {
        return mover.goesOn().target().map(to -> tree.number(to.text()).orElse(LinkedSteps.NOWHERE)).orElse(LinkedSteps.NOWHERE);
    }

    private void findTests() throws NotStudied {
        Set<Integer> seen = new LinkedHashSet<>(List.of(root));
        List<Integer> open = new ArrayList<>(seen);
        for (int i = 0; i < open.size(); i++) {
            int step = open.get(i);
            if (isTest(step)) {
                tests.add(step);
                for (LinkedSteps.Arrow arrow : tree.arrows(step)) {
                    if (arrow.counter() >= 0) {
                        throw new NotStudied(tree.step(step).name() + " counts how often it is asked");
                    }
                    add(arrow.to(), seen, open);
                }
            } else {
                mover(step).ifPresent(mover -> add(target(mover), seen, open));
            }
        }
    }

    private static void add(int step, Set<Integer> seen, List<Integer> open) {
        if (step != LinkedSteps.NOWHERE && seen.add(step)) {
            open.add(step);
        }
    }

    /** The author's order from a step on, for the faults still possible by their weights. */
    private TestTree follow(int entry, List<Exact> weights, List<Integer> arriving, Set<Integer> asked, int lastTest)
            throws NotStudied {
        int at = entry;
        List<Integer> now = arriving;
        List<Integer> passed = new ArrayList<>();
        Exact waiting = Exact.ZERO;
        while (!isTest(at)) {
            Optional<SetUpChanges.ChangingStep> mover = mover(at);
            Optional<List<Integer>> moved = Optional.empty();
            if (mover.isPresent() && target(mover.get()) != LinkedSteps.NOWHERE && !passed.contains(at)) {
                moved = bench.after(now, mover.get().step(), mover.get().goesOn());
            }
            if (moved.isEmpty()) {
                return leave(entry, lastTest, weights, arriving);
            }
            passed.add(at);
            now = moved.get();
            waiting = waiting.plus(times.of(mover.get().step(), mover.get().goesOn().key()).expected());
            at = target(mover.get());
        }
        if (!asked.add(at)) {
            throw new NotStudied(tree.step(at).name() + " is asked twice on one path");
        }
        movers.addAll(passed);
        needs.putIfAbsent(at, tree.step(at).frame().needs().isEmpty() ? left(passed) : tree.step(at).frame().needs());
        testSetUps.computeIfAbsent(at, t -> new HashSet<>()).add(now);
        return ask(at, weights, now, waiting, asked);
    }

    /** What the changes before a test leave: it stands in for what a test needs where the author does not say. */
    private List<Setting> left(List<Integer> passed) {
        return passed.stream().flatMap(step -> tree.step(step).frame().sets().stream()).toList();
    }

    private TestTree ask(int test, List<Exact> weights, List<Integer> now, Exact waiting, Set<Integer> asked)
            throws NotStudied {
        Step step = tree.step(test);
        note(test, weights);
        Exact all = weights.stream().reduce(Exact.ZERO, Exact::plus);
        cost = cost.plus(all.times(waiting.plus(times.of(step, "").expected())));
        Map<Integer, TestTree> next = new TreeMap<>();
        for (int outcome = 0; outcome < step.outcomes().size(); outcome++) {
            List<Exact> left = weighed(weights, step, outcome);
            if (left.stream().anyMatch(weight -> weight.signum() > 0)) {
                Optional<List<Integer>> after = bench.after(now, step, step.outcomes().get(outcome));
                int to = tree.arrows(test).get(outcome).to();
                if (after.isEmpty() || to == LinkedSteps.NOWHERE) {
                    throw new NotStudied(after.isEmpty() ? "what " + step.name() + " needs is not there"
                            : "an outcome of " + step.name() + " leads nowhere");
                }
                next.put(outcome, follow(to, left, after.get(), new HashSet<>(asked), test));
            }
        }
        return new TestTree.Ask(tests.indexOf(test), next);
    }

    private void note(int test, List<Exact> weights) {
        BitSet possible = possibleAt.computeIfAbsent(test, t -> new BitSet());
        for (int fault = 0; fault < weights.size(); fault++) {
            if (weights.get(fault).signum() > 0) {
                possible.set(fault);
            }
        }
    }

    private List<Exact> weighed(List<Exact> weights, Step step, int outcome) {
        List<Exact> left = new ArrayList<>();
        for (int fault = 0; fault < weights.size(); fault++) {
            left.add(weights.get(fault).times(table.shares(faults.get(fault), step).get(outcome)));
        }
        return left;
    }

    private TestTree leave(int entry, int lastTest, List<Exact> weights, List<Integer> setUpThere) {
        List<Integer> here = new ArrayList<>();
        for (int fault = 0; fault < weights.size(); fault++) {
            if (weights.get(fault).signum() > 0) {
                here.add(fault);
                exits.computeIfAbsent(fault, f -> new TreeMap<>()).putIfAbsent(entry, new Exit(entry, lastTest));
            }
        }
        exitSetUps.computeIfAbsent(entry, e -> new HashSet<>()).add(setUpThere);
        return new TestTree.Left(here);
    }

    int root() {
        return root;
    }

    List<Integer> setUp() {
        return setUp;
    }

    List<Fault> faults() {
        return faults;
    }

    /** The tests by their step numbers; a test's place in this list is its number in orders. */
    List<Integer> tests() {
        return tests;
    }

    /** The steps that change the set-up on the way to a test. */
    Set<Integer> movers() {
        return movers;
    }

    /** What must hold for a test, by step number. */
    List<Setting> needs(int test) {
        return needs.getOrDefault(test, tree.step(test).frame().needs());
    }

    Exit exit(int fault) {
        return exits.get(fault).values().iterator().next();
    }

    /** The set-ups in which the author leaves the part there. */
    Set<List<Integer>> exitSetUps(int entry) {
        return exitSetUps.getOrDefault(entry, Set.of());
    }

    /** The set-ups in which the author asks this test, by step number. */
    Set<List<Integer>> testSetUps(int test) {
        return testSetUps.getOrDefault(test, Set.of());
    }

    /** The faults still possible when the author asks this test, by step number; none where no fault comes to it. */
    BitSet possibleAt(int test) {
        return possibleAt.getOrDefault(test, new BitSet());
    }

    TestTree authors() {
        return authors;
    }

    /** The expected time of the author's order, in seconds, over the weights as they are. */
    Exact cost() {
        return cost;
    }
}
