/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.faults.LinkedSteps;
import org.faultwright.analysis.paths.Position;
import org.faultwright.analysis.time.StepTimes;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Results;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** One example, run on paper: where its readings lead. */
public final class ExampleRun {
    /** Why a run stops or does not end as the example says. */
    public enum Failure {
        /** It comes to a step of several outcomes and does not say what it shows. */
        NOTHING_SAID,
        /** What it says there is no outcome of that step. */
        UNKNOWN_RESULT,
        /** An arrow leads nowhere. */
        LEADS_NOWHERE,
        /** It goes round for ever. */
        NO_END,
        /** It says what a step shows and never comes to that step, or not so often. */
        NEVER_ASKED,
        /** It ends at another conclusion. */
        OTHER_END,
        /** It is a case of a fault which its conclusion does not find. */
        OTHER_FAULT
    }

    /**
     * Where the path leaves what was said.
     *
     * @param at   the words of the example that this is about
     * @param step the step in question; absent for a text without steps
     */
    public record Problem(Failure failure, SourceRange at, Optional<Step> step) {
    }

    private final Example example;
    private final LinkedSteps tree;
    private final Scope scope;
    private final Map<String, List<Showing>> entries = new HashMap<>();
    private final Map<String, Integer> used = new HashMap<>();
    private final List<PathStep> path = new ArrayList<>();
    private final Set<LinkedSteps.Arrow> taken = new LinkedHashSet<>();
    private Optional<Step.Conclude> end = Optional.empty();
    private Optional<Problem> problem = Optional.empty();
    private Exact time = Exact.ZERO;

    public ExampleRun(LinkedSteps tree, Scope scope, StepTimes times, Example example) {
        this.example = example;
        this.tree = tree;
        this.scope = scope;
        example.shows().forEach(showing -> entries.computeIfAbsent(showing.step().text(), s -> new ArrayList<>())
                .add(showing));
        if (tree.begin().isPresent()) {
            run(times);
        }
        if (problem.isEmpty()) {
            problem = judgeEnd();
        }
    }

    private void run(StepTimes times) {
        Set<List<Object>> seen = new HashSet<>();
        Position at = Position.start(tree.graph(), scope).orElseThrow();
        while (true) {
            Step step = at.step();
            if (step instanceof Step.Conclude conclude) {
                path.add(new PathStep(step.name().text(), "", step.name().at()));
                end = Optional.of(conclude);
                return;
            }
            if (!seen.add(List.of(at, Map.copyOf(used)))) {
                fail(Failure.NO_END, example.title().at(), step);
                return;
            }
            Optional<Outcome> shown = shown(step);
            if (shown.isEmpty()) {
                path.add(new PathStep(step.name().text(), "", step.name().at()));
                return;
            }
            path.add(new PathStep(step.name().text(), shown.get().key(), shown.get().at()));
            tree.arrows(tree.number(step.name().text()).orElseThrow()).stream().filter(arrow -> arrow.outcome() == shown.get()).forEach(taken::add);
            StepTimes.Time own = times.of(step, shown.get().key());
            time = time.plus(own.worst().orElse(own.expected()));
            Optional<Position> next = at.after(shown.get()).to();
            if (next.isEmpty()) {
                fail(Failure.LEADS_NOWHERE, example.title().at(), step);
                return;
            }
            at = next.get();
        }
    }

    /** What the step shows in this example, else what a sound unit shows; of a step that comes round again the next entry counts. */
    private Optional<Outcome> shown(Step step) {
        List<Showing> said = entries.getOrDefault(step.name().text(), List.of());
        int next = used.getOrDefault(step.name().text(), 0);
        if (next >= said.size()) {
            if (step.outcomes().size() == 1) {
                return Optional.of(step.outcomes().get(0));
            }
            Optional<Outcome> normal = Results.normal(step, scope);
            if (normal.isEmpty()) {
                fail(Failure.NOTHING_SAID, example.title().at(), step);
            }
            return normal;
        }
        used.put(step.name().text(), next + 1);
        Optional<Outcome> outcome = said.get(next).possible().stream().findFirst()
                .flatMap(possible -> Results.outcome(step, possible));
        if (outcome.isEmpty()) {
            fail(Failure.UNKNOWN_RESULT, said.get(next).at(), step);
        }
        return outcome;
    }

    private void fail(Failure failure, SourceRange at, Step step) {
        problem = Optional.of(new Problem(failure, at, Optional.of(step)));
    }

    private Optional<Problem> judgeEnd() {
        if (end.isEmpty()) {
            return Optional.of(new Problem(Failure.NO_END, example.title().at(), Optional.empty()));
        }
        Optional<Name> said = example.endsAt().filter(name -> tree.number(name.text()).isPresent());
        if (said.isPresent() && !said.get().text().equals(end.get().name().text())) {
            return Optional.of(new Problem(Failure.OTHER_END, said.get().at(), Optional.of(end.get())));
        }
        Optional<Showing> left = firstUnused();
        if (left.isPresent()) {
            return Optional.of(new Problem(Failure.NEVER_ASKED, left.get().at(),
                    Optional.of(tree.step(tree.number(left.get().step().text()).orElseThrow()))));
        }
        return example.of().filter(fault -> end.get().finds().stream().noneMatch(f -> f.text().equals(fault.text())))
                .map(fault -> new Problem(Failure.OTHER_FAULT, fault.at(), Optional.of(end.get())));
    }

    private Optional<Showing> firstUnused() {
        Map<String, Integer> counted = new HashMap<>();
        for (Showing showing : example.shows()) {
            String step = showing.step().text();
            int number = counted.merge(step, 1, Integer::sum);
            if (number > used.getOrDefault(step, 0) && tree.number(step).isPresent()) {
                return Optional.of(showing);
            }
        }
        return Optional.empty();
    }

    public Example example() {
        return example;
    }

    /** As far as it got. */
    public List<PathStep> path() {
        return List.copyOf(path);
    }

    /** Where it ended; absent where it got stuck. */
    public Optional<Step.Conclude> end() {
        return end;
    }

    public Optional<Problem> problem() {
        return problem;
    }

    public boolean passes() {
        return problem.isEmpty();
    }

    /** In seconds, by the times that the steps state. */
    public Exact time() {
        return time;
    }

    Set<LinkedSteps.Arrow> taken() {
        return taken;
    }
}
