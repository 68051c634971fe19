/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** How much of a procedure its examples try on paper: which outcomes and conclusions some example takes. */
public final class ExampleCoverage {
    /** One outcome of a step, by its key. */
    public record StepOutcome(Step step, String outcome) {
        @Override
        public String toString() {
            return step.name() + " " + outcome;
        }
    }

    private final List<ExampleRun> runs;
    private final List<StepOutcome> tried = new ArrayList<>();
    private final List<StepOutcome> untried = new ArrayList<>();
    private final List<Step.Conclude> reached = new ArrayList<>();
    private final List<Step.Conclude> unreached = new ArrayList<>();
    private final LinkedSteps tree;
    private final StepTimes times;
    private final Scope scope;

    private ExampleCoverage(Subject subject, Procedure procedure) {
        this.tree = LinkedSteps.in(subject, procedure);
        this.scope = subject.scope();
        this.times = new StepTimes(scope);
        this.runs = procedure.examples().stream().map(example -> new ExampleRun(tree, scope, times, example)).toList();
        Set<LinkedSteps.Arrow> taken = new HashSet<>();
        runs.forEach(run -> taken.addAll(run.taken()));
        Map<Exit, StepOutcome> elsewhere = new LinkedHashMap<>();
        Set<Exit> seen = new HashSet<>();
        BitSet used = tree.used();
        used.stream().forEach(step -> {
            if (tree.step(step) instanceof Step.Conclude conclude) {
                boolean ended = runs.stream().anyMatch(run -> run.end().filter(end -> end == conclude).isPresent());
                (ended ? reached : unreached).add(conclude);
            } else if (tree.arrows(step).size() > 1) {
                tree.arrows(step).forEach(arrow -> {
                    StepOutcome way = new StepOutcome(tree.step(step), arrow.key());
                    Optional<Exit> exit = otherwise(way);
                    if (taken.contains(arrow) && exit.map(seen::add).orElse(true)) {
                        tried.add(way);
                    } else if (exit.isEmpty()) {
                        untried.add(way);
                    } else {
                        elsewhere.putIfAbsent(exit.get(), way);
                    }
                });
            }
        });
        elsewhere.forEach((exit, way) -> {
            if (!seen.contains(exit)) {
                untried.add(way);
            }
        });
    }

    /** An exit of a routine that leads where the text leads whatever it does not name. */
    private record Exit(String routine, String name) {
    }

    /**
     * The exit that this is, where the step has no arrow for it. Wherever the same routine is followed it leads to the same end by the same words,
     * so that one example of it tells all there is to tell.
     */
    private static Optional<Exit> otherwise(StepOutcome way) {
        return Results.byKey(way.step(), way.outcome()).filter(Outcome::isUnderstood).isEmpty() || !(way.step() instanceof Step.Perform perform) ? Optional.empty()
                : perform.routine().map(routine -> new Exit(routine.text(), way.outcome()));
    }

    /** The runs of a subject that is a procedure, computed once. */
    public static Optional<ExampleCoverage> in(Subject subject) {
        return subject.procedure().map(procedure -> subject.shared(ExampleCoverage.class,
                s -> new ExampleCoverage(s, procedure)));
    }

    public static ExampleCoverage of(Procedure procedure) {
        return in(new Subject(procedure, Optional.empty())).orElseThrow();
    }

    /** One for each example, in the order written. */
    public List<ExampleRun> runs() {
        return runs;
    }

    /** The outcomes of steps with a choice that an example takes; an exit of a routine that no arrow names counts once for all steps that follow the routine. */
    public List<StepOutcome> tried() {
        return List.copyOf(tried);
    }

    /** The outcomes of steps with a choice that no example takes; only of steps the tree can come to. */
    public List<StepOutcome> untried() {
        return List.copyOf(untried);
    }

    public List<Step.Conclude> reached() {
        return List.copyOf(reached);
    }

    public List<Step.Conclude> unreached() {
        return List.copyOf(unreached);
    }

    public boolean isComplete() {
        return untried.isEmpty() && unreached.isEmpty();
    }

    /** The run of an example that may not stand in the text, or not so. */
    ExampleRun run(Example example) {
        return new ExampleRun(tree, scope, times, example);
    }

    LinkedSteps tree() {
        return tree;
    }
}
