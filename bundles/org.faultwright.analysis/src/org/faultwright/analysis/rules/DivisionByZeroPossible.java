/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.Findings;
import org.faultwright.analysis.Reach;
import org.faultwright.analysis.Rule;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.RuleHeader.Group;
import org.faultwright.analysis.Severity;
import org.faultwright.analysis.Subject;
import org.faultwright.analysis.measurement.ArrivingReadings;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.analysis.paths.ProcedurePaths;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.measure.Expression;
import org.faultwright.quantity.measure.Function;

/** A formula divides by something that can be zero when the step is reached. */
public final class DivisionByZeroPossible implements Rule {
    private static final RuleHeader HEADER = new RuleHeader("division-by-zero-possible", Severity.WARNING, Group.QUANTITIES,
            "A formula divides by a reading that can be zero.");

    @Override
    public RuleHeader header() {
        return HEADER;
    }

    @Override
    public Reach reach() {
        return Reach.MEANING;
    }

    @Override
    public void check(Subject subject, Findings findings) {
        for (StepGraph graph : subject.graphs()) {
            for (Step step : graph.steps()) {
                if (step instanceof Step.Calculate calculate && isReached(calculate, graph, subject)) {
                    calculate.formula().ifPresent(compute -> Formulas.computable(compute.value())
                            .ifPresent(formula -> check(calculate, formula, graph, findings)));
                }
            }
        }
    }

    /** In a routine it may be; a step that nothing leads to divides nothing, and unreachable-step says so. */
    private static boolean isReached(Step.Calculate step, StepGraph graph, Subject subject) {
        return !(graph instanceof Procedure) || ProcedurePaths.of(subject).map(paths -> paths.map().place(step.name())
                .map(place -> place.step() == step && paths.reaches(place)).orElse(false)).orElse(true);
    }

    private static void check(Step.Calculate step, Expression formula, StepGraph graph, Findings findings) {
        Map<String, Interval> values = new HashMap<>();
        formula.readings().forEach(name -> values.put(name, ArrivingReadings.at(step, name, graph)));
        divisor(formula, values).ifPresent(divisor -> findings.report(step.formula().get().at(), step.name() + " divides by "
                + divisor + ", which can be zero when it is reached.",
                "Let an earlier step lead elsewhere when that reading is at or near zero."));
    }

    /** The first divisor in reading order that can be zero. */
    private static Optional<Expression> divisor(Expression part, Map<String, Interval> values) {
        for (Expression inner : parts(part)) {
            Optional<Expression> found = divisor(inner, values);
            if (found.isPresent()) {
                return found;
            }
        }
        Optional<Expression> divisor = Optional.empty();
        if (part instanceof Expression.Quotient quotient) {
            divisor = Optional.of(quotient.right());
        } else if (part instanceof Expression.Call call && call.arguments().size() == 2
                && (call.function() == Function.RATIO || call.function() == Function.DB
                        || call.function() == Function.DB_OF_POWERS)) {
            divisor = Optional.of(call.arguments().get(1));
        }
        return divisor.filter(by -> canBeZero(by, values));
    }

    private static boolean canBeZero(Expression divisor, Map<String, Interval> values) {
        return divisor.interval(values).result().map(interval -> interval.contains(Exact.ZERO)).orElse(false);
    }

    private static List<Expression> parts(Expression part) {
        if (part instanceof Expression.Negation negation) {
            return List.of(negation.operand());
        } else if (part instanceof Expression.Sum sum) {
            return List.of(sum.left(), sum.right());
        } else if (part instanceof Expression.Difference difference) {
            return List.of(difference.left(), difference.right());
        } else if (part instanceof Expression.Product product) {
            return List.of(product.left(), product.right());
        } else if (part instanceof Expression.Quotient quotient) {
            return List.of(quotient.left(), quotient.right());
        }
        return part instanceof Expression.Call call ? call.arguments() : List.of();
    }
}
