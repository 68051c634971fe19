/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.paths;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;

/**
 * Where a step leads to the step written below it without saying so. Only what a sound unit shows runs on: the end of a {@code do} that names no
 * outcome, {@code within} of a value with a limit, the normal or only exit of a routine. It never runs on into a conclusion, out of a routine, or from a step that verifies a repair: where those lead must stand in the text. Nothing runs on where
 * no step says yet where it leads: those steps are still to be put in order; nor does a step with several outcomes that names none, unless
 * {@code otherwise} says where the others lead.
 */
public final class RunningOn {
    private static final Set<String> AROUND_WITHIN = Set.of(Step.BELOW, Step.ABOVE, Step.OUTSIDE, Step.DOUBTFUL, Step.ANY_OUTSIDE);

    /** A step, its outcome that is not written, and the step below. */
    public record Arrow(Step step, Outcome outcome, Step below) {
    }

    private RunningOn() {
    }

    // ---- what is meant

    /**
     * The steps of a procedure or routine, each with its arrow to the next one where it does not say it.
     *
     * @param otherwise whether the text says where outcomes lead that it does not name
     */
    static List<Step> in(List<Step> steps, List<Name> exits, Scope scope, boolean otherwise) {
        if (steps.stream().allMatch(step -> step.outcomes().isEmpty())) {
            return steps;
        }
        Map<String, Integer> names = new HashMap<>();
        exits.forEach(exit -> names.merge(exit.text(), 1, Integer::sum));
        steps.forEach(step -> names.merge(step.name().text(), 1, Integer::sum));
        List<Step> all = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            Optional<Step> below = i + 1 < steps.size() ? Optional.of(steps.get(i + 1)) : Optional.empty();
            all.add(below.filter(next -> !(next instanceof Step.Conclude) && !next.name().text().isEmpty() && names.get(next.name().text()) == 1)
                    .map(next -> leading(step, next.name().text(), scope, otherwise)).orElse(step));
        }
        return all;
    }

    private static Step leading(Step step, String below, Scope scope, boolean otherwise) {
        int end = step.at().end() - 1;
        String text = step.at().source().content();
        if (step.frame().verifies().isPresent() || end < step.at().offset() || end >= text.length() || text.charAt(end) != '}') {
            return step;
        }
        Optional<String> unsaid = unsaid(step, scope).filter(outcome -> otherwise || !step.outcomes().isEmpty() || !hasSeveral(step, scope));
        if (unsaid.isEmpty()) {
            return step;
        }
        SourceRange place = new SourceRange(step.at().source(), end, 0);
        Outcome arrow = new Outcome(new Outcome.Word(new Name(unsaid.get(), place)), Optional.of(new Name(below, place)), Optional.empty(), List.of(), place);
        List<Outcome> outcomes = new ArrayList<>(step.outcomes());
        int first = 0;
        while (first < outcomes.size() && comesBefore(step, outcomes.get(first).key(), unsaid.get(), scope)) {
            first++;
        }
        outcomes.add(first, arrow);
        return step.renamed(step.name(), List.copyOf(outcomes));
    }

    private static boolean comesBefore(Step step, String key, String unsaid, Scope scope) {
        List<String> exits = scope.performedBy(step).map(Routine::exits).orElse(List.of()).stream().map(Name::text).toList();
        return key.equals(Step.BELOW) || exits.contains(key) && exits.indexOf(key) < exits.indexOf(unsaid);
    }

    private static boolean hasSeveral(Step step, Scope scope) {
        return step instanceof Step.Measure || step instanceof Step.Calculate || scope.performedBy(step).filter(routine -> routine.exits().size() > 1).isPresent();
    }

    /** The outcome that a step means without naming it. */
    private static Optional<String> unsaid(Step step, Scope scope) {
        if (step instanceof Step.Do) {
            return step.outcomes().isEmpty() ? Optional.of(Step.DONE) : Optional.empty();
        }
        if (step instanceof Step.Measure measure && !measure.rows().isEmpty()) {
            boolean onlyRows = measure.outcomes().stream().allMatch(outcome -> outcome.head() instanceof Outcome.Word
                    && (AROUND_WITHIN.contains(outcome.key()) || outcome.key().startsWith("at ")));
            return onlyRows ? Optional.of(Step.ALL_WITHIN) : Optional.empty();
        }
        boolean expects = step instanceof Step.Measure measure ? measure.expects().isPresent()
                : step instanceof Step.Calculate calculate && calculate.expects().isPresent();
        if (expects) {
            boolean onlyAround = step.outcomes().stream().allMatch(outcome -> outcome.head() instanceof Outcome.Word && !outcome.normal()
                    && AROUND_WITHIN.contains(outcome.key()));
            return onlyAround ? Optional.of(Step.WITHIN) : Optional.empty();
        }
        List<String> said = step.outcomes().stream().map(Outcome::key).toList();
        return scope.performedBy(step).filter(routine -> !verifies(routine, scope, new HashSet<>()))
                .flatMap(routine -> routine.exits().size() == 1 ? Optional.of(routine.exits().get(0)) : routine.normalExit()).map(Name::text)
                .filter(exit -> !said.contains(exit) && !said.contains("anything else") && step.outcomes().stream().noneMatch(Outcome::normal));
    }

    /** Whether a routine tells whether a repair has helped, itself or by one that it performs. */
    private static boolean verifies(Routine routine, Scope scope, Set<String> seen) {
        return seen.add(routine.name().text()) && routine.steps().stream().anyMatch(step -> step.frame().verifies().isPresent()
                || scope.performedBy(step).filter(inner -> verifies(inner, scope, seen)).isPresent());
    }

    // ---- what is told of it

    /** The arrows of a procedure or routine that lead to the step below without being written. */
    public static List<Arrow> arrows(StepGraph graph) {
        List<Step> steps = graph.writtenSteps();
        List<Arrow> found = new ArrayList<>();
        for (Step step : steps) {
            for (Outcome outcome : step.outcomes()) {
                if (outcome.isUnderstood()) {
                    outcome.target().flatMap(graph::step).filter(below -> !(below instanceof Step.Conclude) && steps.contains(below))
                            .ifPresent(below -> found.add(new Arrow(step, outcome, below)));
                }
            }
        }
        return found;
    }
}
