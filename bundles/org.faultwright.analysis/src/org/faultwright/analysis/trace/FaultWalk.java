/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.trace;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** Where a unit with one fault gets to in the tree, by what the fault table says it shows. */
public final class FaultWalk {
    /**
     * A conclusion that the fault can reach.
     *
     * @param path        the shortest way there, by known results alone where there is such a way
     * @param known       whether known results alone lead there
     * @param probability how likely, where every share on the way is known
     * @param finds       whether it finds this fault
     * @param repaired    whether one of the fault's remedies is done on that way
     */
    public record Ending(Step.Conclude conclusion, List<PathStep> path, boolean known, Optional<Exact> probability,
            boolean finds, boolean repaired) {
    }

    /**
     * Where tree and table part: the last step before every way to a conclusion that finds the fault is closed.
     *
     * @param outcome what the fault shows there; empty where nothing single is to be named
     * @param leadsTo the step the tree goes on to; empty where it goes nowhere
     * @param path    up to that step
     */
    public record Parting(Step at, String outcome, Optional<Step> leadsTo, List<PathStep> path) {
    }

    private final Fault fault;
    private final StateGraph all;
    private final BitSet finding;
    private final List<Ending> endings;
    private final Optional<Parting> parting;

    FaultWalk(LinkedSteps tree, Fault fault, StateGraph.Behaviour behaviour) {
        this.fault = fault;
        this.all = new StateGraph(tree, behaviour);
        this.finding = tree.finding(fault.name().text());
        this.endings = findEndings();
        this.parting = reachesFinding() || finding.isEmpty() || !all.isComplete() ? Optional.empty() : findParting();
    }

    public Fault fault() {
        return fault;
    }

    /** Whether every state was visited. Where it is false, nothing should be reported from this walk. */
    public boolean isComplete() {
        return all.isComplete();
    }

    /** The conclusions that the fault can reach, nearest first. */
    public List<Ending> endings() {
        return endings;
    }

    /** Whether any conclusion names the fault at all. */
    public boolean isConcluded() {
        return !finding.isEmpty();
    }

    public boolean reachesFinding() {
        return endings.stream().anyMatch(Ending::finds);
    }

    /** Present when a conclusion finds the fault and yet it is never reached. */
    public Optional<Parting> parting() {
        return parting;
    }

    /** The results it can show at a step it comes to, by outcome key; empty where it does not come. */
    public List<String> shownAt(Step step) {
        List<String> keys = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (all.tree().step(all.state(i).step()) == step) {
                all.moves(i).stream().map(move -> move.shown().arrow().key()).filter(k -> !keys.contains(k))
                        .forEach(keys::add);
            }
        }
        return List.copyOf(keys);
    }

    public StateGraph states() {
        return all;
    }

    /** Whether this state is a conclusion that finds the fault. */
    public boolean findsAt(int state) {
        return finding.get(all.state(state).step());
    }

    private List<Ending> findEndings() {
        Map<Integer, StateGraph.Move> anyWay = shortest(move -> true);
        Map<Integer, StateGraph.Move> knownWay = shortest(move -> move.shown().known());
        Map<Integer, Integer> best = new LinkedHashMap<>();
        for (Map<Integer, StateGraph.Move> ways : List.of(knownWay, anyWay)) {
            ways.keySet().stream().filter(all::isEnding).forEach(state -> best.putIfAbsent(all.state(state).step(), state));
        }
        if (all.size() > 0 && all.isEnding(0)) {
            best.put(all.state(0).step(), 0);
        }
        List<Ending> found = new ArrayList<>();
        best.forEach((step, state) -> {
            boolean known = knownWay.containsKey(state) || state == 0;
            found.add(new Ending((Step.Conclude) all.tree().step(step), path(known ? knownWay : anyWay, state), known,
                    probability(step), finding.get(step), all.state(state).done() != 0));
        });
        return List.copyOf(found);
    }

    /** For each state but the first the move by which it is reached soonest. */
    private Map<Integer, StateGraph.Move> shortest(Predicate<StateGraph.Move> allowed) {
        Map<Integer, StateGraph.Move> by = new LinkedHashMap<>();
        Deque<Integer> open = new ArrayDeque<>();
        if (all.size() > 0) {
            open.add(0);
        }
        while (!open.isEmpty()) {
            for (StateGraph.Move move : all.moves(open.remove())) {
                if (move.to().isPresent() && allowed.test(move) && move.to().get() != 0
                        && by.putIfAbsent(move.to().get(), move) == null) {
                    open.add(move.to().get());
                }
            }
        }
        return by;
    }

    private List<PathStep> path(Map<Integer, StateGraph.Move> ways, int state) {
        List<PathStep> path = new ArrayList<>();
        Step last = all.tree().step(all.state(state).step());
        path.add(new PathStep(last.name().text(), "", last.name().at()));
        for (StateGraph.Move move = ways.get(state); move != null; move = ways.get(move.from())) {
            Step step = all.tree().step(all.state(move.from()).step());
            path.add(new PathStep(step.name().text(), move.shown().arrow().key(), move.shown().arrow().outcome().at()));
        }
        Collections.reverse(path);
        return List.copyOf(path);
    }

    private Optional<Exact> probability(int conclusion) {
        List<List<MarkovChain.Link>> links = new ArrayList<>();
        List<Integer> ends = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (all.moves(i).stream().anyMatch(m -> m.shown().share().isEmpty() || m.to().isEmpty())) {
                return Optional.empty();
            }
            links.add(all.moves(i).stream()
                    .map(m -> new MarkovChain.Link(m.to().orElseThrow(), m.shown().share().orElseThrow())).toList());
            if (all.state(i).step() == conclusion) {
                ends.add(i);
            }
        }
        return new MarkovChain(links).endingIn(ends).get(0);
    }

    private Optional<Parting> findParting() {
        BitSet leading = all.tree().leadingTo(finding);
        Map<Integer, StateGraph.Move> ways = shortest(move -> true);
        for (int from = 0; from < all.size(); from++) {
            int step = all.state(from).step();
            for (StateGraph.Move move : all.moves(from)) {
                Optional<Integer> to = move.to().map(next -> all.state(next).step());
                if (leading.get(step) && to.filter(leading::get).isEmpty() && move.shown().known()) {
                    return Optional.of(new Parting(all.tree().step(step), move.shown().arrow().key(),
                            to.map(all.tree()::step), path(ways, from)));
                }
            }
        }
        return lastAsked(leading, ways);
    }

    /** Where the fault goes round for ever: the last step come to of which another outcome would lead on. */
    private Optional<Parting> lastAsked(BitSet leading, Map<Integer, StateGraph.Move> ways) {
        for (int from = all.size() - 1; from >= 0; from--) {
            int step = all.state(from).step();
            List<StateGraph.Move> moves = all.moves(from);
            boolean otherLeadsOn = all.tree().arrows(step).stream()
                    .filter(arrow -> moves.stream().noneMatch(move -> move.shown().arrow().equals(arrow)))
                    .anyMatch(arrow -> LinkedSteps.targets(arrow).stream().anyMatch(leading::get));
            if (otherLeadsOn) {
                Optional<Integer> to = moves.isEmpty() ? Optional.empty() : moves.get(0).to();
                return Optional.of(new Parting(all.tree().step(step),
                        moves.size() == 1 ? moves.get(0).shown().arrow().key() : "",
                        to.map(next -> all.tree().step(all.state(next).step())), path(ways, from)));
            }
        }
        return Optional.empty();
    }
}
