/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.faultwright.analysis.measurement.Formulas;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.StepGraph;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.measure.DimensionCheck;
import org.faultwright.quantity.measure.Expression;
import org.faultwright.quantity.measure.ExpressionProblem;
import org.faultwright.quantity.measure.Function;

/** Works out what kind of quantity the formulas of a graph give, and what in them cannot be. */
final class FormulaTypes {
    private final Map<String, Step> steps = new HashMap<>();
    private final Map<String, Optional<QuantityKind>> kinds = new HashMap<>();

    FormulaTypes(StepGraph graph) {
        graph.steps().forEach(step -> steps.putIfAbsent(step.name().text(), step));
    }

    /** The formula with what is known of its readings; absent where something in it is unknown. */
    Optional<DimensionCheck> of(Step.Calculate step) {
        Optional<Expression> formula = step.formula().map(Written::value).flatMap(Formulas::computable);
        if (formula.isEmpty()) {
            return Optional.empty();
        }
        Map<String, QuantityKind> readings = new HashMap<>();
        formula.get().readings().forEach(name -> kind(name).ifPresent(kind -> readings.put(name, kind)));
        return readings.keySet().containsAll(formula.get().readings())
                ? Optional.of(formula.get().dimensionOfKinds(readings)) : Optional.empty();
    }

    Optional<ExpressionProblem> problem(Step.Calculate step) {
        return of(step).flatMap(DimensionCheck::problem);
    }

    /** What a step reads; for a computed value any kind of the same dimension stands in. */
    private Optional<QuantityKind> kind(String name) {
        if (!kinds.containsKey(name)) {
            // Until it is known, for a formula that needs itself.
            kinds.put(name, Optional.empty());
            Step step = steps.get(name);
            if (step instanceof Step.Measure measure) {
                kinds.put(name, measure.kind().map(Written::value));
            } else if (step instanceof Step.Calculate calculate) {
                kinds.put(name, of(calculate).flatMap(FormulaTypes::standIn));
            }
        }
        return kinds.get(name);
    }

    private static Optional<QuantityKind> standIn(DimensionCheck check) {
        Optional<Dimension> dimension = check.dimension().filter(known -> check.form() != DimensionCheck.Form.LEVEL);
        if (dimension.isPresent() && dimension.get().equals(Dimension.TEMPERATURE)) {
            return Optional.of(check.form() == DimensionCheck.Form.PLAIN ? QuantityKind.TEMPERATURE_DIFFERENCE
                    : QuantityKind.TEMPERATURE);
        }
        return Arrays.stream(QuantityKind.values()).filter(kind -> dimension.filter(kind.dimension()::equals)
                .isPresent()).findFirst();
    }

    /** One sentence for each place where dc, rms and peak values are added or compared. */
    List<String> mixtures(Step.Calculate step) {
        List<String> mixtures = new ArrayList<>();
        step.formula().map(Written::value).flatMap(Formulas::computable).ifPresent(formula -> electric(formula, mixtures));
        return mixtures;
    }

    private Set<QuantityKind> electric(Expression part, List<String> mixtures) {
        if (part instanceof Expression.Reading reading) {
            return electric(reading);
        } else if (part instanceof Expression.Negation negation) {
            return electric(negation.operand(), mixtures);
        } else if (part instanceof Expression.Sum sum) {
            return together(List.of(sum.left(), sum.right()), "added", mixtures);
        } else if (part instanceof Expression.Difference difference) {
            return together(List.of(difference.left(), difference.right()), "subtracted", mixtures);
        } else if (part instanceof Expression.Product product) {
            return apart(List.of(product.left(), product.right()), mixtures);
        } else if (part instanceof Expression.Quotient quotient) {
            return apart(List.of(quotient.left(), quotient.right()), mixtures);
        } else if (part instanceof Expression.Call call) {
            boolean apart = call.function() == Function.RATIO || call.function() == Function.POWER;
            return apart ? apart(call.arguments(), mixtures) : together(call.arguments(), "compared", mixtures);
        }
        return Set.of();
    }

    private Set<QuantityKind> electric(Expression.Reading reading) {
        return steps.get(reading.name()) instanceof Step.Measure measure
                ? measure.kind().map(Written::value).filter(kind -> kind.isVoltage() || kind.isCurrent()).stream()
                .collect(Collectors.toSet())
                : Set.of();
    }

    private Set<QuantityKind> apart(List<Expression> parts, List<String> mixtures) {
        parts.forEach(part -> electric(part, mixtures));
        return Set.of();
    }

    private Set<QuantityKind> together(List<Expression> parts, String done, List<String> mixtures) {
        Set<QuantityKind> kinds = new TreeSet<>();
        parts.forEach(part -> kinds.addAll(electric(part, mixtures)));
        boolean oneDimension = kinds.stream().map(QuantityKind::dimension).distinct().count() == 1;
        if (kinds.size() > 1 && oneDimension) {
            mixtures.add("Readings of " + kinds.stream().map(QuantityKind::words)
                    .collect(Collectors.joining(" and ")) + " are " + done + ".");
        }
        return kinds;
    }
}
