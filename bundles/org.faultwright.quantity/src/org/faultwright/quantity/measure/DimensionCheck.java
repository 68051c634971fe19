/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

import org.faultwright.quantity.Dimension;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.QuantityKind;
import org.faultwright.quantity.Unit;

/**
 * Whether the parts of an expression go together.
 *
 * @param dimension of the result; absent when there is a problem
 * @param form      what kind of number the result is
 * @param problem   the first one met
 */
public record DimensionCheck(Optional<Dimension> dimension, Form form, Optional<ExpressionProblem> problem) {
    /** What may be done with a number beside what its dimension allows. */
    public enum Form {
        /** Anything that can be added and multiplied. */
        PLAIN,
        /** A temperature on a scale with a zero of its own: two of them can be subtracted, not added. */
        TEMPERATURE,
        /** A constant in kelvin, which can be a temperature or a difference. */
        KELVIN,
        /** A sound level: two of them can be subtracted, which gives decibels, and not added. */
        SOUND_LEVEL,
        /** A level in decibel: levels add, and are compared with limits in dB only. */
        LEVEL
    }

    static DimensionCheck ofKinds(Expression expression, Map<String, QuantityKind> readings) {
        Map<String, ExpressionType> types = new HashMap<>();
        readings.forEach((name, kind) -> types.put(name, new ExpressionType(kind.dimension(),
                kind == QuantityKind.TEMPERATURE ? Form.TEMPERATURE : kind == QuantityKind.SOUND_LEVEL ? Form.SOUND_LEVEL : Form.PLAIN)));
        return check(expression, types);
    }

    private static DimensionCheck check(Expression expression, Map<String, ExpressionType> readings) {
        DimensionAlgebra algebra = new DimensionAlgebra(readings);
        ExpressionType result = ExpressionWalk.fold(expression, algebra);
        return new DimensionCheck(algebra.problem().isPresent() ? Optional.empty() : Optional.of(result.dimension()),
                result.form(), algebra.problem());
    }

    record ExpressionType(Dimension dimension, Form form) {
        static final ExpressionType NUMBER = new ExpressionType(Dimension.NONE, Form.PLAIN);

        /** The dimension to half its power; absent where an exponent is odd. */
        Optional<Dimension> root() {
            int[] exponents = { dimension.length(), dimension.mass(), dimension.time(), dimension.current(),
                    dimension.temperature(), dimension.amount(), dimension.light() };
            return IntStream.of(exponents).allMatch(exponent -> exponent % 2 == 0)
                    ? Optional.of(new Dimension(exponents[0] / 2, exponents[1] / 2, exponents[2] / 2, exponents[3] / 2,
                            exponents[4] / 2, exponents[5] / 2, exponents[6] / 2))
                    : Optional.empty();
        }

        static ExpressionType of(Unit unit) {
            Form form = unit.isLogarithmic() ? Form.LEVEL : !unit.offset().equals(Exact.ZERO) ? Form.TEMPERATURE
                    : unit.dimension().equals(Dimension.SOUND_LEVEL) ? Form.SOUND_LEVEL
                    : unit.dimension().equals(Dimension.TEMPERATURE) ? Form.KELVIN : Form.PLAIN;
            return new ExpressionType(unit.dimension(), form);
        }
    }
}
