/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.plan;

import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/** Steps printed together: the procedure's own, a routine's, or those of a routine printed where it is performed. */
public final class Run {
    /** Where an arrow leads. */
    public sealed interface Target {
    }

    /** To a step on the card. @param by the outcome of the performing step that is left by, where a routine in place ends here */
    public record To(Placed step, Optional<Outcome> by) implements Target {
    }

    /** Out of a routine that is printed apart, back to whoever came from. */
    public record Back(String exit) implements Target {
    }

    /** To a name that nothing has. */
    public record Nowhere(String name) implements Target {
    }

    private final StepGraph graph;
    private final Optional<Placed> caller;
    private final Map<Step, Placed> placed = new IdentityHashMap<>();

    Run(StepGraph graph, Optional<Placed> caller) {
        this.graph = graph;
        this.caller = caller;
    }

    void place(Step step, Placed at) {
        placed.put(step, at);
    }

    public StepGraph graph() {
        return graph;
    }

    /** The step that performs a routine in place. */
    public Optional<Placed> caller() {
        return caller;
    }

    Optional<Placed> first() {
        return graph.first().map(placed::get);
    }

    Optional<Placed> placed(Step step) {
        return Optional.ofNullable(placed.get(step));
    }

    public Target target(Name name) {
        Optional<Placed> step = graph.step(name).map(placed::get);
        if (step.isPresent()) {
            return new To(step.get(), Optional.empty());
        }
        if (!graph.isExit(name)) {
            return new Nowhere(name.text());
        }
        if (caller.isEmpty()) {
            return new Back(name.text());
        }
        Optional<Outcome> left = caller.get().step().outcomes().stream()
                .filter(outcome -> outcome.key().equals(name.text())).findFirst();
        return left.flatMap(Outcome::target).map(caller.get().run()::target)
                .map(target -> target instanceof To to && to.by().isEmpty() ? new To(to.step(), left) : target)
                .orElseGet(() -> new Nowhere(name.text()));
    }
}
