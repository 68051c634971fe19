/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayDeque;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.measure.Expression;

/**
 * What a decision computes, down to the readings: a decision in its formula is replaced by its own formula.
 *
 * @param formula  absent when there is a problem
 * @param readings the measurements in it
 * @param problem  one sentence
 */
public record ComputedFormula(Optional<Expression> formula, Map<String, Step.Measure> readings, Optional<String> problem) {
    /** More than any bench computes with; decisions that build on decisions can double at each. */
    private static final int MOST_PARTS = 500;

    /** @param graph in which the step stands */
    public static ComputedFormula of(Step.Calculate step, StepGraph graph) {
        return new Unfolding(graph).all(step);
    }

    /** Replaces names by formulas until measurements are left. */
    private static final class Unfolding {
        private final StepGraph graph;
        private final Map<String, Step.Measure> readings = new TreeMap<>();
        private final Set<String> open = new HashSet<>();
        private Optional<String> problem = Optional.empty();
        private int parts;

        Unfolding(StepGraph graph) {
            this.graph = graph;
        }

        ComputedFormula all(Step.Calculate step) {
            Optional<Expression> formula = formula(step);
            return problem.isPresent() || formula.isEmpty() ? new ComputedFormula(Optional.empty(), Map.of(), problem)
                    : new ComputedFormula(formula, readings, Optional.empty());
        }

        private Optional<Expression> formula(Step.Calculate step) {
            Optional<Expression> written = step.formula().map(Written::value).flatMap(Formulas::computable);
            if (written.isEmpty()) {
                return fail("The formula of " + step.name() + " cannot be computed.");
            }
            if (!open.add(step.name().text())) {
                return fail("The formula of " + step.name() + " needs itself.");
            }
            Optional<Expression> unfolded = unfold(written.get(), 0);
            open.remove(step.name().text());
            return unfolded;
        }

        private Optional<Expression> fail(String sentence) {
            problem = problem.or(() -> Optional.of(sentence));
            return Optional.empty();
        }

        private Optional<Expression> unfold(Expression part, int depth) {
            if (problem.isPresent()) {
                return Optional.empty();
            }
            if (++parts > MOST_PARTS || depth > 150) {
                return fail("The formula has more than " + MOST_PARTS + " parts or is nested too deep to study.");
            }
            if (part instanceof Expression.Reading reading) {
                return reading(reading);
            }
            ArrayDeque<Expression> inner = new ArrayDeque<>();
            for (Expression one : part.parts()) {
                Optional<Expression> unfolded = unfold(one, depth + 1);
                if (unfolded.isEmpty()) {
                    return Optional.empty();
                }
                inner.add(unfolded.get());
            }
            return Optional.of(part.with(List.copyOf(inner)));
        }

        private Optional<Expression> reading(Expression.Reading reading) {
            Optional<Step> step = graph.steps().stream().filter(one -> one.name().text().equals(reading.name())).findFirst();
            if (step.isPresent() && step.get() instanceof Step.Calculate calculate) {
                return formula(calculate);
            }
            if (step.isEmpty() || !(step.get() instanceof Step.Measure measure)) {
                return fail("There is no reading named " + reading.name() + ".");
            }
            Name name = measure.name();
            if (measure.kind().isEmpty()) {
                return fail(name + " does not say what it reads.");
            }
            readings.put(name.text(), measure);
            return Optional.of(reading);
        }
    }
}
