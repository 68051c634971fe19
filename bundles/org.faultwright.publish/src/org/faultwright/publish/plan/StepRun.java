/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Steps printed together: the procedure's own, a routine's, or those of a routine printed where it is performed. */
public final class StepRun {
    /** Where an arrow leads. */
    public sealed interface Target {
    }

    /** The outcome by which a step whose routine stands in place is left when that ends; its names are those of the step's own run. */
    public record Left(PlacedStep step, Outcome by) {
    }

    /** To a step on the card. @param left the steps left on the way where routines in place end here, the innermost first */
    public record To(PlacedStep step, List<Left> left) implements Target {
    }

    /** Out of a routine that is printed apart, back to whoever came from. @param left as for {@link To} */
    public record Back(String exit, List<Left> left) implements Target {
    }

    /** To a name that nothing has. */
    public record Nowhere(String name) implements Target {
    }

    private final StepGraph graph;
    private final Optional<PlacedStep> caller;
    private final Map<Step, PlacedStep> placed = new IdentityHashMap<>();

    StepRun(StepGraph graph, Optional<PlacedStep> caller) {
        this.graph = graph;
        this.caller = caller;
    }

    void place(Step step, PlacedStep at) {
        placed.put(step, at);
    }

    public StepGraph graph() {
        return graph;
    }

    /** Whether its steps prove something, such as that nothing is charged, and do not belong to the procedure itself. */
    public boolean proves() {
        return graph instanceof Routine && graph.steps().stream().flatMap(step -> step.outcomes().stream()).anyMatch(outcome -> !outcome.proves().isEmpty());
    }

    /** The step that performs a routine in place. */
    public Optional<PlacedStep> caller() {
        return caller;
    }

    Optional<PlacedStep> first() {
        return graph.first().map(placed::get);
    }

    Optional<PlacedStep> placed(Step step) {
        return Optional.ofNullable(placed.get(step));
    }

    public Target target(Name name) {
        Optional<PlacedStep> step = graph.step(name).map(placed::get);
        if (step.isPresent()) {
            return new To(step.get(), List.of());
        }
        if (!graph.isExit(name)) {
            return new Nowhere(name.text());
        }
        if (caller.isEmpty()) {
            return new Back(name.text(), List.of());
        }
        PlacedStep performing = caller.get();
        Optional<Outcome> by = performing.step().outcomes().stream().filter(outcome -> outcome.key().equals(name.text())).findFirst();
        return by.flatMap(Outcome::target).map(target -> leaving(new Left(performing, by.get()), target))
                .orElseGet(() -> new Nowhere(name.text()));
    }

    private static Target leaving(Left first, Name target) {
        Target goal = first.step().run().target(target);
        if (goal instanceof To to) {
            return new To(to.step(), with(first, to.left()));
        }
        return goal instanceof Back back ? new Back(back.exit(), with(first, back.left())) : goal;
    }

    private static List<Left> with(Left first, List<Left> others) {
        List<Left> all = new ArrayList<>(List.of(first));
        all.addAll(others);
        return List.copyOf(all);
    }
}
