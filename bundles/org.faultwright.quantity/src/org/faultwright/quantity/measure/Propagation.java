/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The law of propagation of uncertainty to the first order: u²(y) = Σ (∂f/∂xᵢ)²·u²(xᵢ), and for correlated
 * readings 2·Σ ∂f/∂xᵢ·∂f/∂xⱼ·u(xᵢ)·u(xⱼ)·r(xᵢ, xⱼ) added (JCGM 100:2008, 5.1.2 and 5.2.2).
 *
 * @param value         of the expression at the readings, in the coherent SI unit
 * @param uncertainty   the combined standard uncertainty u(y)
 * @param sensitivities ∂f/∂xᵢ for each reading
 * @param problem       the first one met; the numbers are 0 then
 */
public record Propagation(double value, double uncertainty, Map<String, Double> sensitivities,
        Optional<ExpressionProblem> problem) {

    /** For readings that do not depend on one another. */
    public static Propagation of(Expression expression, Map<String, Estimate> readings) {
        return of(expression, readings, List.of());
    }

    public static Propagation of(Expression expression, Map<String, Estimate> readings, List<Correlation> correlations) {
        Optional<String> wrong = wrong(readings, correlations);
        if (wrong.isPresent()) {
            return failed(new ExpressionProblem(expression, wrong.get()));
        }
        List<String> names = List.copyOf(expression.readings());
        Map<String, Double> values = new HashMap<>();
        readings.forEach((name, estimate) -> values.put(name, estimate.value().doubleValue()));
        DualAlgebra algebra = new DualAlgebra(names, values);
        DualAlgebra.Dual result = ExpressionWalk.fold(expression, algebra);
        if (algebra.problem().isPresent()) {
            return failed(algebra.problem().get());
        }
        Map<String, Double> sensitivities = new LinkedHashMap<>();
        for (int i = 0; i < names.size(); i++) {
            sensitivities.put(names.get(i), result.slopes()[i]);
        }
        Map<String, Double> uncertainties = new HashMap<>();
        names.forEach(name -> uncertainties.put(name, readings.get(name).uncertainty().doubleValue()));
        return new Propagation(result.value(), combined(sensitivities, uncertainties, correlations), sensitivities,
                Optional.empty());
    }

    /** u(y) from sensitivities and standard uncertainties by name; correlations of names that are not among them do not count. */
    public static double combined(Map<String, Double> sensitivities, Map<String, Double> uncertainties,
            List<Correlation> correlations) {
        double variance = 0;
        for (Map.Entry<String, Double> entry : sensitivities.entrySet()) {
            double share = entry.getValue() * uncertainties.get(entry.getKey());
            variance += share * share;
        }
        for (Correlation pair : correlations) {
            if (sensitivities.containsKey(pair.one()) && sensitivities.containsKey(pair.other())) {
                variance += 2 * sensitivities.get(pair.one()) * uncertainties.get(pair.one())
                        * sensitivities.get(pair.other()) * uncertainties.get(pair.other()) * pair.coefficient();
            }
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private static Optional<String> wrong(Map<String, Estimate> readings, List<Correlation> correlations) {
        return readings.entrySet().stream().filter(entry -> entry.getValue().uncertainty().signum() < 0).findFirst()
                .map(entry -> "The uncertainty of " + entry.getKey() + " is negative; write it as the amount added or taken away.")
                .or(() -> correlations.stream().filter(pair -> !(Math.abs(pair.coefficient()) <= 1)
                        || pair.one().equals(pair.other())).findFirst()
                        .map(pair -> "The correlation of " + pair.one() + " and " + pair.other()
                                + " is not one of two readings from -1 to 1."));
    }

    private static Propagation failed(ExpressionProblem problem) {
        return new Propagation(0, 0, Map.of(), Optional.of(problem));
    }
}
