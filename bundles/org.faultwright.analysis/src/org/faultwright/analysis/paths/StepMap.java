/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.OnDemand;
import org.faultwright.procedure.Condition;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;

/**
 * The steps of a procedure with every routine written out behind each step that performs it. Broken
 * texts have a map too: what leads to an unknown step leads nowhere, and a routine that is unknown or
 * performs itself is not written out; its perform step then leads on by its own outcomes.
 */
public final class StepMap {
    private final Procedure procedure;
    private final Scope scope;
    private final List<InlinedStep> places;
    private final List<Transition> ways;
    private final int[] firstWay;
    private final Optional<InlinedStep> begin;
    private final List<InlinedStep> tooLarge;
    private final Components loops;
    /** By way; -1 where it leads nowhere. Every exploration reads them. */
    private final int[] targets;
    private final int[] otherTargets;
    private final int[] bounds;
    private final OnDemand<Map<String, List<InlinedStep>>> named = new OnDemand<>();

    StepMap(Procedure procedure, Scope scope, List<InlinedStep> places, List<Transition> ways, Optional<InlinedStep> begin,
            List<InlinedStep> tooLarge) {
        this.procedure = procedure;
        this.scope = scope;
        this.places = List.copyOf(places);
        this.ways = List.copyOf(ways);
        this.begin = begin;
        this.tooLarge = List.copyOf(tooLarge);
        this.firstWay = new int[places.size() + 1];
        this.ways.forEach(way -> firstWay[way.from().index() + 1]++);
        for (int i = 0; i < places.size(); i++) {
            firstWay[i + 1] += firstWay[i];
        }
        this.loops = Components.of(successors());
        this.targets = this.ways.stream().mapToInt(way -> way.to().map(InlinedStep::index).orElse(-1)).toArray();
        this.otherTargets = this.ways.stream().mapToInt(way -> way.otherwise().map(InlinedStep::index).orElse(-1)).toArray();
        this.bounds = this.ways.stream().mapToInt(Transition::atMost).toArray();
    }

    public static StepMap of(Procedure procedure) {
        return new StepMapBuilder(procedure).build();
    }

    public Procedure procedure() {
        return procedure;
    }

    public Scope scope() {
        return scope;
    }

    /** Every condition that can be named, in the order of the scope. */
    public List<Condition> conditions() {
        return scope.conditions();
    }

    /** Every place, whether it can be reached or not. */
    public List<InlinedStep> places() {
        return places;
    }

    public List<Transition> ways() {
        return ways;
    }

    /** The ways on from a place, in the order of its outcomes. */
    public List<Transition> ways(InlinedStep place) {
        return ways.subList(firstWay[place.index()], firstWay[place.index() + 1]);
    }

    /** Where each way leads, by its number. Not to be changed. */
    int[] targets() {
        return targets;
    }

    /** Where each way leads when it was taken as often as it may be. Not to be changed. */
    int[] otherTargets() {
        return otherTargets;
    }

    /** How often each way may be taken. Not to be changed. */
    int[] bounds() {
        return bounds;
    }

    /** Where it begins; absent when there is no such step. */
    public Optional<InlinedStep> begin() {
        return begin;
    }

    /** The place of a step of the procedure itself. */
    public Optional<InlinedStep> place(Name step) {
        return named(step.text()).stream().filter(place -> place.isStep() && place.caller().isEmpty()).findFirst();
    }

    /** The places of every step of this name, of the procedure itself and of its routines. */
    public List<InlinedStep> named(String step) {
        return named.get(() -> places.stream().collect(Collectors.groupingBy(place -> place.step().name().text()))).getOrDefault(step, List.of());
    }

    /** The perform steps whose routines are not written out because the map would grow too large. */
    public List<InlinedStep> tooLarge() {
        return tooLarge;
    }

    /** Which places stand before which on every path from the beginning. */
    public Dominators dominators() {
        return Dominators.of(successors(), begin.map(InlinedStep::index).orElse(-1));
    }

    /** Where each place leads to, bounds left aside. */
    int[][] successors() {
        int[][] successors = new int[places.size()][];
        for (int place = 0; place < successors.length; place++) {
            int[] found = new int[2 * (firstWay[place + 1] - firstWay[place])];
            int count = 0;
            for (Transition way : ways.subList(firstWay[place], firstWay[place + 1])) {
                count = add(way.to(), found, count);
                count = add(way.otherwise(), found, count);
            }
            successors[place] = Arrays.copyOf(found, count);
        }
        return successors;
    }

    /** @return how many there are then, each once */
    private static int add(Optional<InlinedStep> place, int[] found, int count) {
        if (place.isEmpty()) {
            return count;
        }
        int index = place.get().index();
        for (int i = 0; i < count; i++) {
            if (found[i] == index) {
                return count;
            }
        }
        found[count] = index;
        return count + 1;
    }

    /** The places that lead to one another, bounds left aside. */
    Components loops() {
        return loops;
    }

    int firstWay(int place) {
        return firstWay[place];
    }
}
