/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.measurement;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BinaryOperator;
import org.faultwright.quantity.measure.Expression;
import org.faultwright.quantity.measure.Function;

/** Makes of a formula as written one that can be computed. */
public final class Formulas {
    private Formulas() {
    }

    /** The formula; absent when it calls a function that there is not, which a rule reports. */
    public static Optional<Expression> computable(org.faultwright.quantity.Formula written) {
        if (written instanceof org.faultwright.quantity.Formula.Reading reading) {
            return Optional.of(new Expression.Reading(reading.step()));
        } else if (written instanceof org.faultwright.quantity.Formula.Constant constant) {
            return Optional.of(new Expression.Constant(constant.quantity()));
        } else if (written instanceof org.faultwright.quantity.Formula.Negated negated) {
            return computable(negated.of()).map(Expression.Negation::new);
        } else if (written instanceof org.faultwright.quantity.Formula.Sum sum) {
            return both(sum.left(), sum.right(), Expression.Sum::new);
        } else if (written instanceof org.faultwright.quantity.Formula.Difference difference) {
            return both(difference.left(), difference.right(), Expression.Difference::new);
        } else if (written instanceof org.faultwright.quantity.Formula.Product product) {
            return both(product.left(), product.right(), Expression.Product::new);
        } else if (written instanceof org.faultwright.quantity.Formula.Quotient quotient) {
            return both(quotient.left(), quotient.right(), Expression.Quotient::new);
        }
        return call((org.faultwright.quantity.Formula.Call) written);
    }

    private static Optional<Expression> both(org.faultwright.quantity.Formula left,
            org.faultwright.quantity.Formula right, BinaryOperator<Expression> join) {
        return computable(left).flatMap(a -> computable(right).map(b -> join.apply(a, b)));
    }

    private static Optional<Expression> call(org.faultwright.quantity.Formula.Call written) {
        List<Expression> arguments = new ArrayList<>();
        for (org.faultwright.quantity.Formula argument : written.arguments()) {
            Optional<Expression> read = computable(argument);
            if (read.isEmpty()) {
                return Optional.empty();
            }
            arguments.add(read.get());
        }
        return Function.inWords(written.function()).map(function -> new Expression.Call(function, List.copyOf(arguments)));
    }
}
