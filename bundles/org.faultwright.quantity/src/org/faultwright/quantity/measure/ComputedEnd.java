/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.faultwright.quantity.Exact;

/**
 * The uncertainty of a computed value at the readings chosen for one end of its limits: the law of propagation to
 * the first order (JCGM 100:2008, 5.1.2). Readings taken with one range of one instrument may share errors, and its
 * data do not say how much: the larger of r = 0 and r = 1 counts for them (5.2.2), so that u is not understated.
 *
 * @param limit         the end of the limit
 * @param inputs        the readings
 * @param result        of the formula at these readings
 * @param sensitivities ∂f/∂xᵢ for each reading
 * @param independent   u for readings that share nothing
 * @param standard      u as it counts
 */
public record ComputedEnd(Exact limit, List<ReadingInput> inputs, double result, Map<String, Double> sensitivities,
        double independent, double standard) {

    /** @return the end, or a sentence on what forbids it */
    static Found of(Exact limit, Expression formula, List<ReadingInput> inputs) {
        Map<String, Estimate> estimates = new LinkedHashMap<>();
        inputs.forEach(input -> estimates.put(input.name(), new Estimate(input.value(),
                input.variance().squareRoot(RoundingMode.CEILING))));
        Propagation found = Propagation.of(formula, estimates);
        if (found.problem().isPresent()) {
            return new Found(Optional.empty(), Optional.of(found.problem().get().sentence()));
        }
        double variance = found.uncertainty() * found.uncertainty() + shared(inputs, found.sensitivities());
        double standard = Math.sqrt(variance);
        boolean finite = Double.isFinite(found.value()) && Double.isFinite(standard);
        return finite ? new Found(Optional.of(new ComputedEnd(limit, inputs, found.value(), found.sensitivities(),
                found.uncertainty(), standard)), Optional.empty())
                : new Found(Optional.empty(), Optional.of("The numbers of " + formula
                        + " are too large to compute an uncertainty; check the units of its readings."));
    }

    record Found(Optional<ComputedEnd> end, Optional<String> problem) {
    }

    /** What full correlation adds to u², for each group of readings that share a range and gain by it. */
    private static double shared(List<ReadingInput> inputs, Map<String, Double> slopes) {
        double added = 0;
        for (List<ReadingInput> group : groups(inputs)) {
            double sum = 0;
            double squares = 0;
            for (ReadingInput input : group) {
                double share = slopes.get(input.name()) * Math.sqrt(input.instrumentVariance().doubleValue());
                sum += share;
                squares += share * share;
            }
            // (Σ cᵢuᵢ)² − Σ (cᵢuᵢ)² is the sum of the mixed terms of equation (16)
            added += Math.max(0, sum * sum - squares);
        }
        return added;
    }

    /** The readings that share a range, two or more of them in each group. */
    static List<List<ReadingInput>> groups(List<ReadingInput> inputs) {
        List<List<ReadingInput>> groups = new ArrayList<>();
        for (ReadingInput input : inputs) {
            groups.stream().filter(group -> group.get(0).sharesRange(input)).findFirst()
                    .ifPresentOrElse(group -> group.add(input), () -> groups.add(new ArrayList<>(List.of(input))));
        }
        return groups.stream().filter(group -> group.size() > 1).collect(Collectors.toList());
    }

    /** |∂f/∂xᵢ|·u(xᵢ), in the coherent SI unit of the result. */
    public double contribution(ReadingInput input) {
        return Math.abs(sensitivities.get(input.name())) * Math.sqrt(input.variance().doubleValue());
    }

    /** The reading's part of the variance of independent readings, from 0 to 1; 0 where there is none. */
    public double share(ReadingInput input) {
        return independent == 0 ? 0 : Math.pow(contribution(input) / independent, 2);
    }

    /** The shortest decimal that stands for the number: all its digits, and quick to compute with. */
    static Exact exact(double value) {
        return Exact.of(BigDecimal.valueOf(value));
    }

    LimitUncertainty uncertainty() {
        Exact u = exact(standard);
        return new LimitUncertainty(limit, Exact.ZERO, u.squared(), u.times(LimitUncertainty.COVERAGE_FACTOR), Exact.ZERO);
    }
}
