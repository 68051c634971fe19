/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Goes through an expression from its leaves up. */
final class ExpressionWalk {
    private ExpressionWalk() {
    }

    /** Works it out in whatever the algebra computes with. */
    static <T> T fold(Expression expression, Algebra<T> algebra) {
        if (expression instanceof Expression.Reading reading) {
            return algebra.reading(reading);
        }
        if (expression instanceof Expression.Constant constant) {
            return algebra.constant(constant);
        }
        if (expression instanceof Expression.Sum sum) {
            return algebra.sum(expression, fold(sum.left(), algebra), fold(sum.right(), algebra));
        }
        if (expression instanceof Expression.Difference difference) {
            return algebra.difference(expression, fold(difference.left(), algebra), fold(difference.right(), algebra));
        }
        if (expression instanceof Expression.Product product) {
            return algebra.product(expression, fold(product.left(), algebra), fold(product.right(), algebra));
        }
        if (expression instanceof Expression.Quotient quotient) {
            return algebra.quotient(expression, fold(quotient.left(), algebra), fold(quotient.right(), algebra));
        }
        if (expression instanceof Expression.Negation negation) {
            return algebra.negation(expression, fold(negation.operand(), algebra));
        }
        Expression.Call call = (Expression.Call) expression;
        return algebra.call(call, call.arguments().stream().map(argument -> fold(argument, algebra)).toList());
    }

    static Set<String> readings(Expression expression) {
        Set<String> names = new TreeSet<>();
        collect(expression, names);
        return names;
    }

    private static void collect(Expression expression, Set<String> names) {
        if (expression instanceof Expression.Reading reading) {
            names.add(reading.name());
        }
        parts(expression).forEach(part -> collect(part, names));
    }

    private static Stream<Expression> parts(Expression expression) {
        if (expression instanceof Expression.Sum pair) {
            return Stream.of(pair.left(), pair.right());
        }
        if (expression instanceof Expression.Difference pair) {
            return Stream.of(pair.left(), pair.right());
        }
        if (expression instanceof Expression.Product pair) {
            return Stream.of(pair.left(), pair.right());
        }
        if (expression instanceof Expression.Quotient pair) {
            return Stream.of(pair.left(), pair.right());
        }
        if (expression instanceof Expression.Negation negation) {
            return Stream.of(negation.operand());
        }
        return expression instanceof Expression.Call call ? call.arguments().stream() : Stream.empty();
    }
}
