/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import static org.faultwright.quantity.measure.MeasurementSamples.atLeast;
import static org.faultwright.quantity.measure.MeasurementSamples.closed;
import static org.faultwright.quantity.measure.MeasurementSamples.quantity;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.QuantityKind;
import org.junit.jupiter.api.Test;

class ExpressionTest {
    private static final Expression U = new Expression.Reading("U");
    private static final Expression I = new Expression.Reading("I");
    private static final Expression T1 = new Expression.Reading("T1");
    private static final Expression T2 = new Expression.Reading("T2");
    private static final Map<String, QuantityKind> KINDS = Map.of("U", QuantityKind.DC_VOLTAGE, "I", QuantityKind.DC_CURRENT,
            "T1", QuantityKind.TEMPERATURE, "T2", QuantityKind.TEMPERATURE, "D", QuantityKind.TEMPERATURE_DIFFERENCE);

    static Expression call(Function function, Expression... arguments) {
        return new Expression.Call(function, List.of(arguments));
    }

    static Expression constant(String text) {
        return new Expression.Constant(quantity(text));
    }

    static Expression minus(Expression a, Expression b) {
        return new Expression.Difference(a, b);
    }

    static Expression over(Expression a, Expression b) {
        return new Expression.Quotient(a, b);
    }

    private static Exact value(Expression expression, Map<String, String> readings) {
        Map<String, Exact> exact = new HashMap<>();
        readings.forEach((name, number) -> exact.put(name, Exact.of(number)));
        return expression.value(exact).result().orElseThrow();
    }

    private static void dimension(Dimension expected, DimensionCheck.Form form, Expression expression) {
        DimensionCheck check = expression.dimensionOfKinds(KINDS);
        assertEquals(Optional.empty(), check.problem());
        assertEquals(Optional.of(expected), check.dimension());
        assertEquals(form, check.form());
    }

    private static void mismatch(Expression place, Expression whole) {
        ExpressionProblem problem = whole.dimensionOfKinds(KINDS).problem().orElseThrow();
        assertEquals(place, problem.place());
        assertTrue(problem.sentence().endsWith("."), problem.sentence());
    }

    @Test
    void should_name_functions_by_words_of_letters_alone() {
        for (Function function : Function.values()) {
            assertTrue(function.words().matches("[A-Za-z]+"), function.words());
            assertEquals(Optional.of(function), Function.inWords(function.words()));
        }
        assertEquals(Optional.empty(), Function.inWords("log"));
    }

    @Test
    void should_derive_dimensions() {
        dimension(Dimension.POWER, DimensionCheck.Form.PLAIN, new Expression.Product(U, I));
        dimension(Dimension.POWER, DimensionCheck.Form.PLAIN, call(Function.POWER, U, I));
        dimension(Dimension.RESISTANCE, DimensionCheck.Form.PLAIN, call(Function.RATIO, U, I));
        dimension(Dimension.RESISTANCE, DimensionCheck.Form.PLAIN, call(Function.PARALLEL, over(U, I), constant("10 kohm")));
        dimension(Dimension.VOLTAGE, DimensionCheck.Form.PLAIN, call(Function.SQRT, call(Function.SUM_OF_SQUARES, U, constant("1 mV"))));
        dimension(Dimension.VOLTAGE, DimensionCheck.Form.PLAIN, call(Function.RMS, U, U));
        dimension(Dimension.NONE, DimensionCheck.Form.LEVEL, call(Function.DB, U, constant("1 V")));
        dimension(Dimension.TEMPERATURE, DimensionCheck.Form.PLAIN, minus(T1, T2));
        dimension(Dimension.TEMPERATURE, DimensionCheck.Form.TEMPERATURE, new Expression.Sum(T1, constant("10 K")));
        dimension(Dimension.TEMPERATURE, DimensionCheck.Form.TEMPERATURE, call(Function.MAX, T1, T2, constant("20 degC")));
        assertEquals(Set.of("U", "I"), call(Function.POWER, U, new Expression.Negation(I)).readings());
    }

    @Test
    void should_point_at_the_part_that_does_not_fit() {
        Expression sum = new Expression.Sum(U, I);
        mismatch(sum, over(sum, I));
        mismatch(new Expression.Reading("X"), new Expression.Sum(U, new Expression.Reading("X")));
        mismatch(new Expression.Sum(T1, T2), new Expression.Sum(T1, T2));
        mismatch(new Expression.Sum(T1, constant("10 degC")), new Expression.Sum(T1, constant("10 degC")));
        mismatch(call(Function.RATIO, T1, T2), call(Function.RATIO, T1, T2));
        mismatch(call(Function.SQRT, U), call(Function.SQRT, U));
        mismatch(call(Function.POWER, U, U), call(Function.POWER, U, U));
        mismatch(call(Function.DB, call(Function.POWER, U, I), constant("1 W")), call(Function.DB, call(Function.POWER, U, I), constant("1 W")));
        mismatch(call(Function.DB_OF_POWERS, U, U), call(Function.DB_OF_POWERS, U, U));
        mismatch(constant("3 dBm"), new Expression.Sum(constant("3 dBm"), constant("1 W")));
        mismatch(constant("3 foo"), new Expression.Product(U, constant("3 foo")));
        mismatch(call(Function.ABS, U, U), call(Function.ABS, U, U));
        mismatch(call(Function.MIN), call(Function.MIN));
        mismatch(new Expression.Sum(call(Function.DB, U, U), constant("3")), new Expression.Sum(call(Function.DB, U, U), constant("3")));
        mismatch(call(Function.MAX, T1, minus(T1, T2)), call(Function.MAX, T1, minus(T1, T2)));
    }

    @Test
    void should_compute_exactly() {
        assertEquals(Exact.of("0.3"), value(new Expression.Product(U, constant("3")), Map.of("U", "0.1")));
        assertEquals(Exact.of("0.48"), value(call(Function.POWER, U, I), Map.of("U", "24", "I", "0.02")));
        assertEquals(Exact.of(6), value(call(Function.PARALLEL, constant("10 ohm"), constant("15 ohm")), Map.of()));
        assertEquals(Exact.of(5), value(call(Function.SQRT, call(Function.SUM_OF_SQUARES, constant("3 V"), constant("-4 V"))), Map.of()));
        assertEquals(Exact.of(2), value(call(Function.MIN, constant("5 V"), constant("2 V"), constant("3 V")), Map.of()));
        assertEquals(Exact.of(3), value(call(Function.ABS, minus(constant("2 V"), constant("5 V"))), Map.of()));
        assertEquals(Exact.of(10), value(minus(T1, T2), Map.of("T1", "303.15", "T2", "293.15")));
        assertEquals(Exact.of(20), value(call(Function.DB, U, constant("1 V")), Map.of("U", "10")));
        assertEquals(Exact.of(10), value(call(Function.DB_OF_POWERS, U, constant("1 W")), Map.of("U", "10")));
        // 325 V peak of a sine is 229.81 V rms; rms of 325.27 and 0 is 230 V (325.27/√2).
        assertEquals(230, value(call(Function.RMS, constant("325.269 V"), constant("0 V")), Map.of()).doubleValue(), 0.001);
    }

    @Test
    void should_say_where_a_value_is_undefined() {
        Expression quotient = over(U, I);
        assertEquals(quotient, quotient.value(Map.of("U", Exact.ONE, "I", Exact.ZERO)).problem().orElseThrow().place());
        assertTrue(call(Function.SQRT, constant("-1 V")).value(Map.of()).problem().isPresent());
        assertTrue(call(Function.DB, U, U).value(Map.of("U", Exact.ZERO)).problem().isPresent());
        assertTrue(U.value(Map.of()).problem().isPresent());
        assertTrue(call(Function.PARALLEL, constant("0 ohm"), constant("1 ohm")).value(Map.of()).problem().isPresent());
    }

    @Test
    void should_refuse_a_formula_that_nobody_can_read() {
        Expression deep = U;
        for (int i = 0; i < 100_000; i++) {
            deep = i % 2 == 0 ? new Expression.Negation(deep) : new Expression.Sum(constant("1 V"), deep);
        }
        Map<String, Estimate> readings = Map.of("U", estimate("1", "0.1"));

        assertEquals(Set.of("U"), deep.readings());
        assertTrue(deep.value(Map.of("U", Exact.ONE)).problem().orElseThrow().sentence().contains("nested"));
        assertTrue(deep.interval(Map.of("U", closed("1", "2"))).problem().isPresent());
        assertTrue(deep.dimensionOfKinds(KINDS).problem().isPresent());
        assertTrue(Propagation.of(deep, readings).problem().isPresent());
        assertTrue(Simulation.of(deep, readings, 1, 50).problem().isPresent());
    }

    // Published worked example of a metric tolerance stack: 40 ± .10 − 25 ± .05 − 2 ± .03 − 10 ± .05 mm is 3.00,
    // worst case ± .23, root sum of squares ± .126.
    @Test
    void should_reproduce_a_tolerance_stack() {
        Expression stack = minus(minus(minus(new Expression.Reading("a"), new Expression.Reading("b")),
                new Expression.Reading("c")), new Expression.Reading("d"));
        Evaluation<Interval> worst = stack.interval(Map.of("a", closed("39.9", "40.1"), "b", closed("24.95", "25.05"),
                "c", closed("1.97", "2.03"), "d", closed("9.95", "10.05")));
        Propagation likely = Propagation.of(stack, Map.of("a", estimate("40", "0.1"), "b", estimate("25", "0.05"),
                "c", estimate("2", "0.03"), "d", estimate("10", "0.05")));

        assertEquals(Optional.of(closed("2.77", "3.23")), worst.result());
        assertEquals(3, likely.value(), 1e-12);
        assertEquals(0.126, likely.uncertainty(), 0.0005);
    }

    static Estimate estimate(String value, String uncertainty) {
        return new Estimate(Exact.of(value), Exact.of(uncertainty));
    }

    @Test
    void should_know_which_ends_of_an_interval_are_reached() {
        Interval half = Interval.from(Bound.excluding(Exact.ONE), Bound.including(Exact.of(2)));
        check("over 1 to 2, times -3", Interval.from(Bound.including(Exact.of(-6)), Bound.excluding(Exact.of(-3))),
                new Expression.Product(U, constant("-3")), half);
        check("1/x", Interval.from(Bound.including(Exact.ratio(1, 2)), Bound.excluding(Exact.ONE)), over(constant("1"), U), half);
        check("1/x near 0", atLeast("0.5"), over(constant("1"), U), Interval.from(Bound.excluding(Exact.ZERO), Bound.including(Exact.of(2))));
        check("1/x without end", Interval.from(Bound.excluding(Exact.ZERO), Bound.including(Exact.ratio(1, 4))), over(constant("1"), U), atLeast("4"));
        check("1/x negative", Interval.from(Bound.including(Exact.of(-1)), Bound.including(Exact.ratio(-1, 2))), over(constant("1"), U), closed("-2", "-1"));
        check("abs", closed("0", "3"), call(Function.ABS, U), closed("-3", "2"));
        check("abs of negatives", closed("2", "3"), call(Function.ABS, U), closed("-3", "-2"));
        check("square", closed("0", "9"), call(Function.SUM_OF_SQUARES, U), closed("-3", "2"));
        check("max", closed("1.5", "2"), call(Function.MAX, U, constant("1.5")), closed("1", "2"));
        check("min", Interval.from(Bound.excluding(Exact.ONE), Bound.including(Exact.of("1.5"))), call(Function.MIN, U, constant("1.5")), half);
        check("zero times everything", closed("0", "0"), new Expression.Product(constant("0"), U), Interval.EVERYTHING);
        check("everything", Interval.EVERYTHING, new Expression.Product(constant("2"), U), Interval.EVERYTHING);
    }

    private static void check(String what, Interval expected, Expression expression, Interval u) {
        assertEquals(Optional.of(expected), expression.interval(Map.of("U", u)).result(), what);
    }

    @Test
    void should_see_a_divisor_that_can_be_zero() {
        Expression quotient = over(U, minus(I, constant("1 A")));
        assertEquals(quotient, quotient.interval(Map.of("U", closed("1", "2"), "I", closed("0", "3"))).problem().orElseThrow().place());
        assertTrue(call(Function.SQRT, U).interval(Map.of("U", closed("-1", "2"))).problem().isPresent());
        assertTrue(call(Function.DB, U, U).interval(Map.of("U", closed("0", "2"))).problem().isPresent());
        assertTrue(U.interval(Map.of("U", closed("2", "1"))).problem().isPresent());
    }
}
