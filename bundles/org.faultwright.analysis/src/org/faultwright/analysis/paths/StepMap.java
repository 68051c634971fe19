/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
    private final List<Place> places;
    private final List<Way> ways;
    private final int[] firstWay;
    private final Optional<Place> begin;
    private final List<Place> tooLarge;

    StepMap(Procedure procedure, Scope scope, List<Place> places, List<Way> ways, Optional<Place> begin,
            List<Place> tooLarge) {
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
    public List<Place> places() {
        return places;
    }

    public List<Way> ways() {
        return ways;
    }

    /** The ways on from a place, in the order of its outcomes. */
    public List<Way> ways(Place place) {
        return ways.subList(firstWay[place.index()], firstWay[place.index() + 1]);
    }

    /** Where it begins; absent when there is no such step. */
    public Optional<Place> begin() {
        return begin;
    }

    /** The place of a step of the procedure itself. */
    public Optional<Place> place(Name step) {
        return places.stream().filter(place -> place.isStep() && place.caller().isEmpty()
                && place.step().name().text().equals(step.text())).findFirst();
    }

    /** The perform steps whose routines are not written out because the map would grow too large. */
    public List<Place> tooLarge() {
        return tooLarge;
    }

    /** Which places stand before which on every path from the beginning. */
    public Dominators dominators() {
        return Dominators.of(successors(), begin.map(Place::index).orElse(-1));
    }

    /** Where each place leads to, bounds left aside. */
    int[][] successors() {
        int[][] successors = new int[places.size()][];
        for (Place place : places) {
            successors[place.index()] = ways(place).stream()
                    .flatMap(way -> Stream.concat(way.to().stream(), way.otherwise().stream()))
                    .mapToInt(Place::index).distinct().toArray();
        }
        return successors;
    }

    int firstWay(int place) {
        return firstWay[place];
    }
}
