/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.sequence.TestTree;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/**
 * Puts an order of tests into the steps of a procedure: which arrows lead elsewhere, which steps are needed
 * a second time under a name of their own, and which are no longer needed. A step has one place in a
 * text, so that what is asked on two ways with different sequels has to be written twice.
 */
final class Rerouting {
    /**
     * A step in its new place.
     *
     * @param original its number in the author's text
     * @param name     its own, or a new one for a copy
     * @param targets  the step that each outcome leads to, by the outcome's place; outcomes left out stay as they are
     * @param faults   those still possible there, by their numbers in the part
     */
    record ReroutedStep(int original, String name, Map<Integer, String> targets, Set<Integer> faults) {
    }

    private final AskingPart part;
    private final PartSetUps setUps;
    private final LinkedSteps tree;
    private final FaultWalks walks;
    private final Set<String> taken;
    private final Set<Integer> freeMovers;
    private final List<ReroutedStep> placed = new ArrayList<>();
    /** By identity: what a place leads to is filled in later. */
    private final Map<ReroutedStep, List<Integer>> arriving = new IdentityHashMap<>();
    private final Map<Integer, Set<Integer>> possible = new HashMap<>();
    private final String entry;
    private final List<String> obstacles = new ArrayList<>();

    Rerouting(Procedure procedure, OrderStudy study, OrderStudy.Proposal proposal) {
        this.part = proposal.part();
        this.setUps = proposal.setUps();
        this.walks = study.walks();
        this.tree = walks.tree();
        this.taken = names(procedure);
        this.freeMovers = freeMovers();
        this.entry = realise(proposal.better(), part.setUp());
        List.copyOf(placed).forEach(this::fillIn);
        checkEntriesFromOutside();
    }

    private static Set<String> names(Procedure procedure) {
        return Stream.of(procedure.steps().stream(), procedure.faults().stream(), procedure.scope().all()).<Declaration>flatMap(declared -> declared)
                .map(declared -> declared.name().text()).collect(Collectors.toCollection(HashSet::new));
    }

    /** The changes of set-up before tests that nothing outside this part leads to. */
    private Set<Integer> freeMovers() {
        Set<Integer> free = new LinkedHashSet<>(part.movers());
        List<Integer> open = new ArrayList<>();
        for (int fault = 0; fault < part.faults().size(); fault++) {
            open.add(part.exit(fault).entry());
        }
        Set<Integer> seen = new HashSet<>(open);
        for (int i = 0; i < open.size(); i++) {
            free.remove(open.get(i));
            if (!part.tests().contains(open.get(i)) && open.get(i) != part.root()) {
                tree.arrows(open.get(i)).forEach(arrow -> LinkedSteps.targets(arrow).stream().filter(seen::add).forEach(open::add));
            }
        }
        return free;
    }

    private String realise(TestTree order, List<Integer> setUp) {
        if (order instanceof TestTree.Left left) {
            int goal = part.exit(left.faults().get(0)).entry();
            return lead(setUps.goingOn(setUp, goal), tree.step(goal).name().text(), Set.copyOf(left.faults()));
        }
        TestTree.Ask ask = (TestTree.Ask) order;
        Map<Integer, String> targets = new TreeMap<>();
        ask.next().forEach((outcome, next) -> targets.put(outcome, realise(next, setUps.after(setUp, ask.test(), outcome))));
        Set<Integer> faults = faults(order);
        ReroutedStep test = place(part.tests().get(ask.test()), targets, true, faults);
        possible.computeIfAbsent(test.original(), t -> new HashSet<>()).addAll(faults);
        setUps.before(setUp, ask.test()).ifPresent(way -> arriving.put(test, way.to()));
        return lead(setUps.before(setUp, ask.test()), test.name(), faults);
    }

    private static Set<Integer> faults(TestTree order) {
        return order instanceof TestTree.Ask ask ? ask.next().values().stream().flatMap(next -> faults(next).stream())
                .collect(Collectors.toSet()) : Set.copyOf(((TestTree.Left) order).faults());
    }

    /** The step to lead to so that the set-up is changed first; the target itself where nothing is to be changed. */
    private String lead(Optional<SetUpChanges.SetUpRoute> way, String target, Set<Integer> faults) {
        require(way.isPresent(), "nothing brings about what \"" + target + "\" needs where it would come");
        String to = target;
        List<SetUpChanges.ChangingStep> movers = way.map(SetUpChanges.SetUpRoute::movers).orElse(List.of());
        for (int i = movers.size() - 1; i >= 0; i--) {
            SetUpChanges.ChangingStep mover = movers.get(i);
            int step = tree.number(mover.step().name().text()).orElseThrow();
            int goesOn = mover.step().outcomes().indexOf(mover.goesOn());
            boolean asItIs = mover.goesOn().target().map(Object::toString).filter(to::equals).isPresent();
            to = asItIs && !freeMovers.contains(step) ? mover.step().name().text()
                    : place(step, Map.of(goesOn, to), freeMovers.contains(step), faults).name();
        }
        return to;
    }

    private ReroutedStep place(int step, Map<Integer, String> targets, boolean mayBeMoved, Set<Integer> faults) {
        for (ReroutedStep known : placed) {
            if (known.original() == step && agree(known.targets(), targets)) {
                known.targets().putAll(targets);
                known.faults().addAll(faults);
                return known;
            }
        }
        String own = tree.step(step).name().text();
        boolean first = mayBeMoved && placed.stream().noneMatch(known -> known.name().equals(own));
        ReroutedStep fresh = new ReroutedStep(step, first ? own : newName(own), new TreeMap<>(targets),
                new TreeSet<>(faults));
        placed.add(fresh);
        return fresh;
    }

    private static boolean agree(Map<Integer, String> one, Map<Integer, String> other) {
        return one.entrySet().stream().allMatch(e -> e.getValue().equals(other.getOrDefault(e.getKey(), e.getValue())));
    }

    private String newName(String own) {
        int number = 2;
        while (!taken.add(own + number)) {
            number++;
        }
        return own + number;
    }

    /** Outcomes that no fault shows keep leading out of this part; those that led on within it hand the unit on. */
    private void fillIn(ReroutedStep step) {
        if (!part.tests().contains(step.original())) {
            return;
        }
        for (int outcome = 0; outcome < tree.arrows(step.original()).size(); outcome++) {
            int to = tree.arrows(step.original()).get(outcome).to();
            if (!step.targets().containsKey(outcome) && to != LinkedSteps.NOWHERE) {
                List<Integer> setUp = arriving.containsKey(step) ? setUps.after(arriving.get(step),
                        part.tests().indexOf(step.original()), outcome) : part.setUp();
                Optional<Integer> target = belongsToPart(to) ? handsOn() : Optional.of(to);
                require(target.isPresent(), "\"" + tree.arrows(step.original()).get(outcome).outcome().key() + "\" of \""
                        + tree.step(step.original()).name() + "\" would have to be handed on, and no conclusion only refers the unit to somebody");
                int after = outcome;
                target.ifPresent(t -> step.targets().put(after, lead(setUps.goingOn(setUp, t), tree.step(t).name().text(),
                        Set.of())));
            }
        }
    }

    private boolean belongsToPart(int step) {
        return part.tests().contains(step) || freeMovers.contains(step);
    }

    /** Where the author's own order goes when nothing explains what is seen. */
    private Optional<Integer> handsOn() {
        Stream<Integer> inPart = part.tests().stream().flatMap(test -> tree.arrows(test).stream()).map(LinkedSteps.Arrow::to);
        Stream<Integer> all = tree.used().stream().boxed().flatMap(step -> tree.arrows(step).stream()).map(LinkedSteps.Arrow::to);
        return Stream.concat(inPart, all).filter(to -> to != LinkedSteps.NOWHERE && !belongsToPart(to)).filter(to -> {
            int end = tree.straightOn(to);
            return end != LinkedSteps.NOWHERE && tree.step(end) instanceof Step.Conclude conclude && conclude.refersTo().isPresent()
                    && conclude.finds().isEmpty();
        }).findFirst();
    }

    /** A step outside that leads into the middle of this part must still find all that was possible there. */
    private void checkEntriesFromOutside() {
        for (int step : tree.used().stream().toArray()) {
            if (belongsToPart(step)) {
                continue;
            }
            for (LinkedSteps.Arrow arrow : tree.arrows(step)) {
                require(arrow.otherwise() != part.root(), "\"" + tree.step(step).name() + "\" leads back to \"" + tree.step(part.root()).name()
                        + "\" when it was asked too often");
                for (int to : LinkedSteps.targets(arrow)) {
                    boolean keeps = to == part.root() || !belongsToPart(to) || possible.containsKey(to)
                            && part.possibleAt(to).stream().allMatch(possible.get(to)::contains);
                    require(keeps, "\"" + tree.step(step).name() + "\" leads into the middle of these steps, to \""
                            + (to == LinkedSteps.NOWHERE ? "" : tree.step(to).name()) + "\", where other faults would be looked for");
                }
            }
        }
    }

    /** Whether the order can be put into the text at all. */
    boolean works() {
        return obstacles.isEmpty();
    }

    /** What stands in the way of it, each the words of a sentence. */
    List<String> obstacles() {
        return obstacles.stream().distinct().map(one -> one.substring(0, 1).toUpperCase(Locale.ROOT) + one.substring(1) + ".").toList();
    }

    private void require(boolean holds, String otherwise) {
        if (!holds) {
            obstacles.add(otherwise);
        }
    }

    /** The step that the part now begins at. */
    String entry() {
        return entry;
    }

    List<ReroutedStep> placed() {
        return placed;
    }

    boolean isCopy(ReroutedStep step) {
        return !tree.step(step.original()).name().text().equals(step.name());
    }

    boolean comesTo(Fault fault, ReroutedStep copy) {
        return copy.faults().contains(part.faults().indexOf(fault));
    }

    /** Steps of the part that nothing leads to any more, by number. */
    Set<Integer> dropped() {
        Set<Integer> dropped = new LinkedHashSet<>(part.tests());
        dropped.addAll(freeMovers);
        placed.stream().filter(step -> !isCopy(step)).map(ReroutedStep::original).forEach(dropped::remove);
        return dropped;
    }

    /** The changed arrows of the author's own steps: by step and outcome, the new target. */
    Map<Integer, Map<Integer, String>> changes() {
        Map<Integer, Map<Integer, String>> changes = new LinkedHashMap<>();
        placed.stream().filter(step -> !isCopy(step)).forEach(step -> changes.put(step.original(), step.targets()));
        for (int step = 0; step < tree.size(); step++) {
            if (changes.containsKey(step) || dropped().contains(step)) {
                continue;
            }
            Map<Integer, String> leading = new TreeMap<>();
            for (int outcome = 0; outcome < tree.arrows(step).size(); outcome++) {
                if (tree.arrows(step).get(outcome).to() == part.root()) {
                    leading.put(outcome, entry);
                }
            }
            changes.put(step, leading);
        }
        return changes;
    }

    private Optional<Integer> blamedStep(String name) {
        String own = name.contains("/") ? name.substring(0, name.indexOf('/')) : name;
        Optional<Integer> step = placed.stream().filter(one -> one.name().equals(own)).map(ReroutedStep::original).findFirst()
                .or(() -> tree.number(own).stream().boxed().findFirst());
        return step.filter(number -> part.tests().contains(number) || IntStream.range(0, part.faults().size())
                .anyMatch(fault -> part.exit(fault).entry() == number));
    }

    /** The step of this part, or the way out of it, that a path passed last; none where it passed none. */
    Set<Integer> blamed(List<PathStep> path) {
        for (int i = path.size() - 1; i >= 0; i--) {
            Optional<Integer> step = blamedStep(path.get(i).step());
            if (step.isPresent()) {
                return Set.of(step.get());
            }
        }
        return Set.of();
    }

    boolean beginsAtRoot() {
        return tree.begin().stream().anyMatch(begin -> begin == part.root());
    }

    LinkedSteps tree() {
        return tree;
    }
}
