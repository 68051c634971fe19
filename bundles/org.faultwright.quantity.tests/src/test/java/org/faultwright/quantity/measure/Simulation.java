/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Propagation of distributions by drawing at random (JCGM 101:2008, clause 7). The same seed gives the
 * same result on every machine.
 *
 * @param mean     of the values drawn, in the coherent SI unit
 * @param standard their standard deviation
 * @param low      the lower end of the interval that holds 95 % of them, as many under it as over
 * @param high     its upper end
 * @param problem  the first one met; the numbers are 0 then
 */
record Simulation(double mean, double standard, double low, double high, Optional<ExpressionProblem> problem) {
    /** JCGM 101:2008, 7.2.2, expects a million to give two significant digits of a 95 % interval. */
    static final int MOST_TRIALS = 10_000_000;

    /** With readings that are normally distributed (JCGM 101:2008, 6.4.7). @param trials from 40 to {@link #MOST_TRIALS} */
    static Simulation of(Expression expression, Map<String, Estimate> readings, long seed, int trials) {
        return of(expression, readings, Random::nextGaussian, seed, trials);
    }

    /** With readings that lie anywhere within their bounds alike (JCGM 101:2008, 6.4.2). */
    static Simulation rectangular(Expression expression, Map<String, Estimate> readings, long seed, int trials) {
        return of(expression, readings, random -> Math.sqrt(3) * (2 * random.nextDouble() - 1), seed, trials);
    }

    private static Simulation of(Expression expression, Map<String, Estimate> readings, ToDoubleFunction<Random> shape, long seed, int trials) {
        if (trials < 40 || trials > MOST_TRIALS) {
            return failed(new ExpressionProblem(expression, "A simulation takes 40 to " + MOST_TRIALS + " trials."));
        }
        Propagation first = Propagation.of(expression, readings);
        if (first.problem().isPresent()) {
            return failed(first.problem().get());
        }
        Random random = new Random(seed);
        List<Source> sources = expression.readings().stream().map(name -> Source.of(name, readings.get(name))).toList();
        Map<String, Double> values = new HashMap<>();
        DualAlgebra algebra = new DualAlgebra(List.of(), values);
        double[] drawn = new double[trials];
        for (int trial = 0; trial < trials && algebra.problem().isEmpty(); trial++) {
            sources.forEach(source -> values.put(source.name, source.value + source.uncertainty * shape.applyAsDouble(random)));
            drawn[trial] = ExpressionWalk.fold(expression, algebra).value();
        }
        return algebra.problem().map(Simulation::failed).orElseGet(() -> summary(drawn));
    }

    private record Source(String name, double value, double uncertainty) {
        static Source of(String name, Estimate estimate) {
            return new Source(name, estimate.value().doubleValue(), estimate.uncertainty().doubleValue());
        }
    }

    private static Simulation summary(double[] drawn) {
        double mean = Arrays.stream(drawn).average().orElseThrow();
        double squares = Arrays.stream(drawn).map(value -> (value - mean) * (value - mean)).sum();
        Arrays.sort(drawn);
        int tail = drawn.length / 40;
        return new Simulation(mean, Math.sqrt(squares / (drawn.length - 1)), drawn[tail], drawn[drawn.length - 1 - tail],
                Optional.empty());
    }

    private static Simulation failed(ExpressionProblem problem) {
        return new Simulation(0, 0, 0, 0, Optional.of(problem));
    }
}
