/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.faultwright.quantity.measure.ExpressionTest.call;
import static org.faultwright.quantity.measure.ExpressionTest.constant;
import static org.faultwright.quantity.measure.ExpressionTest.estimate;
import static org.faultwright.quantity.measure.ExpressionTest.minus;
import static org.faultwright.quantity.measure.ExpressionTest.over;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PropagationTest {
    private static final Expression U = new Expression.Reading("U");
    private static final Expression I = new Expression.Reading("I");

    /** JCGM 100:2008, H.2, table H.2: simultaneous readings of V, I in ampere and the phase in radian. */
    private static final List<Double> V = List.of(5.007, 4.994, 5.005, 4.990, 4.999);
    private static final List<Double> A = List.of(19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3);
    private static final List<Double> PHASE = List.of(1.0456, 1.0438, 1.0468, 1.0428, 1.0433);

    private static RepeatedReadings of(List<Double> readings) {
        return RepeatedReadings.of(readings).orElseThrow();
    }

    // Table H.2: means 4.9990 V, 19.6610 mA, 1.04446 rad; u 0.0032 V, 0.0095 mA, 0.00075 rad; r −0.36, 0.86, −0.65.
    @Test
    void should_reproduce_the_means_and_correlations_of_the_guide() {
        assertEquals(4.9990, of(V).mean(), 5e-5);
        assertEquals(19.6610e-3, of(A).mean(), 5e-8);
        assertEquals(1.04446, of(PHASE).mean(), 5e-6);
        assertEquals(0.0032, of(V).ofMean(), 5e-5);
        assertEquals(0.0095e-3, of(A).ofMean(), 5e-8);
        assertEquals(0.00075, of(PHASE).ofMean(), 5e-6);
        assertEquals(-0.36, RepeatedReadings.correlation(V, A).orElseThrow(), 0.005);
        assertEquals(0.86, RepeatedReadings.correlation(V, PHASE).orElseThrow(), 0.005);
        assertEquals(-0.65, RepeatedReadings.correlation(A, PHASE).orElseThrow(), 0.005);
        assertEquals(Optional.empty(), RepeatedReadings.of(List.of(1.0)));
        assertEquals(Optional.empty(), RepeatedReadings.correlation(V, List.of(1.0)));
        assertEquals(Optional.empty(), RepeatedReadings.correlation(List.of(1.0, 1.0), List.of(1.0, 2.0)));
    }

    private static Estimate mean(List<Double> readings) {
        return new Estimate(Exact.of(BigDecimal.valueOf(of(readings).mean())), Exact.of(BigDecimal.valueOf(of(readings).ofMean())));
    }

    // Table H.4: Z = 254.260 ohm with u = 0.236 ohm.
    @Test
    void should_reproduce_the_impedance_of_the_guide() {
        Propagation impedance = Propagation.of(over(U, I), Map.of("U", mean(V), "I", mean(A)),
                List.of(new Correlation("U", "I", RepeatedReadings.correlation(V, A).orElseThrow())));

        assertEquals(254.260, impedance.value(), 0.0005);
        assertEquals(0.236, impedance.uncertainty(), 0.0005);
    }

    // Table H.4: R = 127.732 ohm with u = 0.071, X = 219.847 ohm with u = 0.295; the sensitivities are written out here.
    // The guide cuts its u(X): unrounded data give 0.2956.
    @Test
    void should_reproduce_resistance_and_reactance_of_the_guide() {
        double z = of(V).mean() / of(A).mean();
        double cos = Math.cos(of(PHASE).mean());
        double sin = Math.sin(of(PHASE).mean());
        Map<String, Double> u = Map.of("V", of(V).ofMean(), "I", of(A).ofMean(), "P", of(PHASE).ofMean());
        List<Correlation> pairs = List.of(new Correlation("V", "I", RepeatedReadings.correlation(V, A).orElseThrow()),
                new Correlation("V", "P", RepeatedReadings.correlation(V, PHASE).orElseThrow()),
                new Correlation("I", "P", RepeatedReadings.correlation(A, PHASE).orElseThrow()));

        assertEquals(127.732, z * cos, 0.0005);
        assertEquals(0.071, Propagation.combined(Map.of("V", cos / of(A).mean(), "I", -z * cos / of(A).mean(), "P", -z * sin), u, pairs), 0.0005);
        assertEquals(219.847, z * sin, 0.0005);
        assertEquals(0.295, Propagation.combined(Map.of("V", sin / of(A).mean(), "I", -z * sin / of(A).mean(), "P", z * cos), u, pairs), 0.001);
    }

    static Stream<Expression> expressions() {
        return Stream.of(new Expression.Product(U, I), over(U, I), minus(U, constant("3 V")), call(Function.PARALLEL, U, I),
                call(Function.POWER, U, I), call(Function.RMS, U, I), call(Function.SQRT, call(Function.SUM_OF_SQUARES, U, I)),
                call(Function.DB, U, I), call(Function.DB_OF_POWERS, U, I), call(Function.MAX, U, I), call(Function.MIN, U, I),
                call(Function.ABS, new Expression.Negation(U)), new Expression.Sum(over(U, I), over(I, U)));
    }

    /** First order and simulation are two roads to one number (JCGM 101:2008, clause 8); the seed keeps the test still. */
    @ParameterizedTest
    @MethodSource("expressions")
    void should_agree_with_a_simulation(Expression expression) {
        Map<String, Estimate> readings = Map.of("U", estimate("24", "0.12"), "I", estimate("2", "0.01"));

        Propagation first = Propagation.of(expression, readings);
        Simulation drawn = Simulation.of(expression, readings, 101, 40_000);

        assertEquals(first.value(), drawn.mean(), 0.05 * first.uncertainty());
        assertEquals(first.uncertainty(), drawn.standard(), 0.02 * first.uncertainty());
        assertEquals(4 * 0.98 * first.uncertainty(), drawn.high() - drawn.low(), 0.08 * first.uncertainty());
    }

    /** Sensitivities against divided differences of the exact value, which is another road again. */
    @ParameterizedTest
    @MethodSource("expressions")
    void should_have_the_slopes_of_the_exact_value(Expression expression) {
        Map<String, Double> sensitivities = Propagation.of(expression, Map.of("U", estimate("24", "1"), "I", estimate("2", "1"))).sensitivities();
        for (Map.Entry<String, Double> entry : sensitivities.entrySet()) {
            Exact step = Exact.of("1e-5");
            double slope = at(expression, entry.getKey(), step).minus(at(expression, entry.getKey(), step.negated()))
                    .dividedBy(step.times(2)).doubleValue();
            assertEquals(slope, entry.getValue(), 1e-6 * Math.max(1, Math.abs(slope)));
        }
    }

    private static Exact at(Expression expression, String moved, Exact step) {
        return expression.value(Map.of("U", Exact.of(24).plus(moved.equals("U") ? step : Exact.ZERO),
                "I", Exact.of(2).plus(moved.equals("I") ? step : Exact.ZERO))).result().orElseThrow();
    }

    /** Whatever is drawn from within the intervals lies within the interval computed. */
    @ParameterizedTest
    @MethodSource("expressions")
    void should_enclose_every_value_drawn(Expression expression) {
        Map<String, Interval> within = Map.of("U", MeasurementSamples.closed("23", "25"), "I", MeasurementSamples.closed("1", "3"));
        Interval enclosure = expression.interval(within).result().orElseThrow();
        for (int u = 0; u <= 20; u++) {
            for (int i = 0; i <= 20; i++) {
                Exact value = expression.value(Map.of("U", Exact.of(23).plus(Exact.ratio(u, 10)), "I", Exact.ONE.plus(Exact.ratio(i, 10))))
                        .result().orElseThrow();
                assertTrue(enclosure.contains(value), value + " not in " + enclosure);
            }
        }
    }

    @Test
    void should_tell_what_cannot_be_propagated() {
        Map<String, Estimate> readings = Map.of("U", estimate("1", "0.1"), "I", estimate("0", "0.1"));
        assertTrue(Propagation.of(over(U, I), readings).problem().isPresent());
        assertTrue(Propagation.of(new Expression.Reading("X"), readings).problem().isPresent());
        assertTrue(Propagation.of(U, Map.of("U", estimate("1", "-0.1"))).problem().isPresent());
        assertTrue(Propagation.of(call(Function.SQRT, call(Function.SUM_OF_SQUARES, I)), readings).problem().isPresent());
        assertTrue(Propagation.of(U, readings, List.of(new Correlation("U", "I", 1.5))).problem().isPresent());
        assertTrue(Propagation.of(U, readings, List.of(new Correlation("U", "I", Double.NaN))).problem().isPresent());
        assertTrue(Simulation.of(U, readings, 1, 5).problem().isPresent());
        assertTrue(Simulation.of(over(U, I), readings, 1, 50).problem().isPresent());
    }
}
