/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.time.Times;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Step;

/** How much of a procedure its examples try on paper: which outcomes and conclusions some example takes. */
public final class ExampleCoverage {
    /** One outcome of a step, by its key. */
    public record Way(Step step, String outcome) {
        @Override
        public String toString() {
            return step.name() + " " + outcome;
        }
    }

    private final List<ExampleRun> runs;
    private final List<Way> tried = new ArrayList<>();
    private final List<Way> untried = new ArrayList<>();
    private final List<Step.Conclude> reached = new ArrayList<>();
    private final List<Step.Conclude> unreached = new ArrayList<>();
    private final LinkedSteps tree;
    private final Times times;
    private final Scope scope;

    private ExampleCoverage(Subject subject, Procedure procedure) {
        this.tree = LinkedSteps.in(subject, procedure);
        this.scope = subject.scope();
        this.times = new Times(scope);
        this.runs = procedure.examples().stream().map(example -> new ExampleRun(tree, scope, times, example)).toList();
        Set<LinkedSteps.Arrow> taken = new HashSet<>();
        runs.forEach(run -> taken.addAll(run.taken()));
        BitSet used = tree.used();
        used.stream().forEach(step -> {
            if (tree.step(step) instanceof Step.Conclude conclude) {
                boolean ended = runs.stream().anyMatch(run -> run.end().filter(end -> end == conclude).isPresent());
                (ended ? reached : unreached).add(conclude);
            } else if (tree.arrows(step).size() > 1) {
                tree.arrows(step).forEach(arrow -> (taken.contains(arrow) ? tried : untried)
                        .add(new Way(tree.step(step), arrow.key())));
            }
        });
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

    /** The outcomes of steps with a choice that an example takes. */
    public List<Way> tried() {
        return List.copyOf(tried);
    }

    /** The outcomes of steps with a choice that no example takes; only of steps the tree can come to. */
    public List<Way> untried() {
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
