/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * Where somebody stands who walks a procedure: a step, the steps that performed the routines around it, and how often each
 * bounded way was taken. A position never changes; each result gives the next one. A step that performs a routine may be
 * entered, or passed as a whole by a result.
 */
public final class Position {
    /** Routines that perform one another round a circle end here. */
    public static final int DEEPEST = 12;

    /**
     * What one result does.
     *
     * @param passed what is left behind by it, the step first; then each step whose routine it leaves, from the inside outward
     * @param to     where it leads; absent where an arrow leads nowhere
     */
    public record Move(List<PassedStep> passed, Optional<Position> to) {
    }

    /**
     * A step left behind by an outcome.
     *
     * @param path of the step, itself the last
     */
    public record PassedStep(List<Step> path, Outcome outcome) {
        public Step step() {
            return path.get(path.size() - 1);
        }
    }

    private final StepGraph procedure;
    private final Scope scope;
    private final List<Step> path;
    private final Map<String, Integer> taken;

    private Position(StepGraph procedure, Scope scope, List<Step> path, Map<String, Integer> taken) {
        this.procedure = procedure;
        this.scope = scope;
        this.path = path;
        this.taken = taken;
    }

    /** Absent for a text without a step to begin at. */
    public static Optional<Position> start(StepGraph procedure, Scope scope) {
        return procedure.first().map(first -> new Position(procedure, scope, List.of(first), Map.of()));
    }

    public Step step() {
        return path.get(path.size() - 1);
    }

    /** The performing steps from the outside inward, then the step itself. */
    public List<Step> path() {
        return path;
    }

    /** Such as {@code SeeIt}, and in a routine {@code MakeSafe/SwitchOff}. */
    public String label() {
        return label(path);
    }

    static String label(List<Step> path) {
        return path.stream().map(step -> step.name().text()).collect(Collectors.joining("/"));
    }

    public boolean isEnd() {
        return step() instanceof Step.Conclude;
    }

    /** Whether the step performs a routine that has a step to begin at. */
    public boolean canEnter() {
        return path.size() <= DEEPEST && scope.performedBy(step()).flatMap(Routine::first).isPresent();
    }

    /** @throws IllegalStateException if there is no routine to enter */
    public Position entered() {
        Step first = scope.performedBy(step()).filter(routine -> canEnter()).flatMap(Routine::first)
                .orElseThrow(() -> new IllegalStateException("there is no routine to enter at " + label()));
        return new Position(procedure, scope, Stream.concat(path.stream(), Stream.of(first)).toList(), taken);
    }

    /**
     * Past the step by one of its outcomes.
     *
     * @throws IllegalArgumentException if the outcome is none of this step
     */
    public Move after(Outcome outcome) {
        if (step().outcomes().stream().noneMatch(own -> own == outcome)) {
            throw new IllegalArgumentException(label() + " has no such outcome: " + outcome.key());
        }
        List<PassedStep> passed = new ArrayList<>();
        Map<String, Integer> counts = new HashMap<>(taken);
        Optional<List<Step>> to = leave(path, outcome, counts, passed);
        return new Move(List.copyOf(passed), to.map(next -> new Position(procedure, scope, next, Map.copyOf(counts))));
    }

    private Optional<List<Step>> leave(List<Step> at, Outcome outcome, Map<String, Integer> counts, List<PassedStep> passed) {
        passed.add(new PassedStep(at, outcome));
        List<Step> outer = at.subList(0, at.size() - 1);
        Optional<StepGraph> graph = outer.isEmpty() ? Optional.of(procedure)
                : scope.performedBy(outer.get(outer.size() - 1)).map(routine -> routine);
        Optional<Name> target = target(at, outcome, counts);
        if (graph.isEmpty() || target.isEmpty()) {
            return Optional.empty();
        }
        Optional<Step> next = graph.get().step(target.get());
        if (next.isPresent()) {
            return Optional.of(Stream.concat(outer.stream(), next.stream()).toList());
        }
        return outer.isEmpty() || !graph.get().isExit(target.get()) ? Optional.empty()
                : outer.get(outer.size() - 1).outcomes().stream().filter(exit -> exit.key().equals(target.get().text())).findFirst()
                        .flatMap(exit -> leave(outer, exit, counts, passed));
    }

    /** Counts the way, and leads elsewhere once it was taken as often as it may be. */
    private static Optional<Name> target(List<Step> at, Outcome outcome, Map<String, Integer> counts) {
        if (outcome.repeat().isEmpty()) {
            return outcome.target();
        }
        String way = way(at, outcome);
        int before = counts.getOrDefault(way, 0);
        if (before >= outcome.repeat().get().atMost()) {
            return Optional.of(outcome.repeat().get().otherwise());
        }
        counts.put(way, before + 1);
        return outcome.target();
    }

    private static String way(List<Step> at, Outcome outcome) {
        return label(at) + "\n" + outcome.key();
    }

    /** How often a bounded way from the step was taken. */
    public int taken(Outcome outcome) {
        return taken.getOrDefault(way(path, outcome), 0);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Position that && path.equals(that.path) && taken.equals(that.taken);
    }

    @Override
    public int hashCode() {
        return 31 * label().hashCode() + taken.hashCode();
    }

    @Override
    public String toString() {
        return label();
    }
}
