/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.MathContext;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Formula;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limits, quantities and expressions as they are written. Intervals in square brackets where an end belongs to them. */
class LimitsTest {
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"24 V +/- 5 %|[22.8,25.2]", "24 V ± 5 %|[22.8,25.2]", "24V+/-5%|[22.8,25.2]",
            "12 V +10 % -5 %|[11.4,13.2]", "12 V + 10 % - 5 %|[11.4,13.2]", "12 V -5 % +10 %|[11.4,13.2]", "12 V +1 V|[12,13]",
            "100 ohm +/- 0.5 ohm|[99.5,100.5]", "-12 V +/- 5 %|[-12.6,-11.4]", "−12 V +/- 0.6 V|[-12.6,-11.4]",
            "4.75 V .. 5.25 V|[4.75,5.25]", "over 4.75 V .. 5.25 V|(4.75,5.25]", "4.75 V .. under 5.25 V|[4.75,5.25)",
            "over 4.75 V .. under 5.25 V|(4.75,5.25)", "-5 V .. 5 V|[-5,5]", "3..5|[3,5]", "3.5..5.25|[3.5,5.25]",
            "at most 35 Mohm|..35000000]", "under 15 mA|..0.015)", "at least 3.0 V|[3..", "over 800 mA|(0.8..",
            "4k7 +/- 1 %|[4653,4747]", "R47 .. 4R7|[0.47,4.7]", "3V3 +/- 3 %|[3.201,3.399]", "1e3 ohm .. 2e3 ohm|[1000,2000]"})
    void should_read_limits_with_their_ends(String written, String interval) {
        Limit limit = limit(written);

        assertEquals(written, limit.spelling());
        assertEquals(interval, shown(limit.interval()));
    }

    private static Limit limit(String written) {
        Step.Measure measure = Reading.step(Step.Measure.class, "measure M { ratio expects " + written + " source \"Sheet 2\" below -> X }");
        assertEquals(written, measure.expects().get().limit().at().text());
        return measure.expects().get().limit().value();
    }

    private static String shown(Interval interval) {
        return interval.lower().map(bound -> (bound.included() ? "[" : "(") + value(bound)).orElse("")
                + (interval.lower().isPresent() && interval.upper().isPresent() ? "," : "..")
                + interval.upper().map(bound -> value(bound) + (bound.included() ? "]" : ")")).orElse("");
    }

    private static String value(Bound bound) {
        return bound.value().toDecimal(new MathContext(12)).stripTrailingZeros().toPlainString();
    }

    /** Table of Pt100 resistances in IEC 60751, rounded to two places there; the four values are quoted from memory. */
    @ParameterizedTest
    @CsvSource({"100,138.51", "0,100.00", "-50,80.31", "400,247.09"})
    void should_turn_a_temperature_on_a_sensor_into_what_the_sensor_gives(String celsius, String ohm) {
        Step.Measure measure = Reading.step(Step.Measure.class,
                "measure M { resistance expects at most " + celsius + " degC on Pt100 within -> X }");
        Quantity upper = measure.expects().get().limit().value().quantities().get(0);

        assertEquals(celsius + " degC on Pt100", upper.spelling());
        assertEquals(ohm, upper.base().toDecimal(2).toPlainString());
    }

    @Test
    void should_read_expressions_with_the_usual_precedence() {
        assertEquals("(A - (B / 2))", shown("A - B / 2"));
        assertEquals("((A - B) / 2)", shown("(A - B) / 2"));
        assertEquals("((A - B) - C)", shown("A - B - C"));
        assertEquals("((A / B) * C)", shown("A ÷ B × C"));
        assertEquals("(-A + 24 V)", shown("-A + 24 V"));
        assertEquals("(A - 5 V)", shown("A -5 V"));
        assertEquals("parallel(A, 4.7 kohm)", shown("parallel(A, 4.7 kohm)"));
        assertEquals("difference(A, B)", shown("difference(A, B)"));
        assertEquals("max(abs(A), (B * 2), 3 %)", shown("max(abs(A), B * 2, 3 %)"));
    }

    private static String shown(String written) {
        return shown(Reading.step(Step.Calculate.class, "calculate D { value " + written + " within -> X }").formula().get().value());
    }

    private static String shown(Formula expression) {
        if (expression instanceof Formula.Reading reading) {
            return reading.step();
        }
        if (expression instanceof Formula.Constant constant) {
            return constant.quantity().spelling();
        }
        if (expression instanceof Formula.Negated negated) {
            return "-" + shown(negated.of());
        }
        if (expression instanceof Formula.Sum sum) {
            return "(" + shown(sum.left()) + " + " + shown(sum.right()) + ")";
        }
        if (expression instanceof Formula.Difference difference) {
            return "(" + shown(difference.left()) + " - " + shown(difference.right()) + ")";
        }
        if (expression instanceof Formula.Product product) {
            return "(" + shown(product.left()) + " * " + shown(product.right()) + ")";
        }
        if (expression instanceof Formula.Quotient quotient) {
            return "(" + shown(quotient.left()) + " / " + shown(quotient.right()) + ")";
        }
        Formula.Call call = (Formula.Call) expression;
        return call.function() + "(" + String.join(", ", call.arguments().stream().map(LimitsTest::shown).toList()) + ")";
    }
}
