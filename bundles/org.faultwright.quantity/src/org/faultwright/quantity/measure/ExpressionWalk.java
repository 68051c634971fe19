/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Goes through an expression from its leaves up. */
final class ExpressionWalk {
    /** Far beyond what anybody reads, far from what a thread's stack holds. */
    static final int DEEPEST = 200;

    private ExpressionWalk() {
    }

    /** Works it out in whatever the algebra computes with; a problem for one nested deeper than {@link #DEEPEST}. */
    static <T> T fold(Expression expression, Algebra<T> algebra) {
        if (isTooDeep(expression)) {
            algebra.problem(expression, "The formula is nested more than " + DEEPEST + " deep; split it over several steps.");
            return algebra.number(0);
        }
        return walk(expression, algebra);
    }

    private static <T> T walk(Expression expression, Algebra<T> algebra) {
        if (expression instanceof Expression.Reading reading) {
            return algebra.reading(reading);
        }
        if (expression instanceof Expression.Constant constant) {
            return algebra.constant(constant);
        }
        if (expression instanceof Expression.Sum sum) {
            return algebra.sum(expression, walk(sum.left(), algebra), walk(sum.right(), algebra));
        }
        if (expression instanceof Expression.Difference difference) {
            return algebra.difference(expression, walk(difference.left(), algebra), walk(difference.right(), algebra));
        }
        if (expression instanceof Expression.Product product) {
            return algebra.product(expression, walk(product.left(), algebra), walk(product.right(), algebra));
        }
        if (expression instanceof Expression.Quotient quotient) {
            return algebra.quotient(expression, walk(quotient.left(), algebra), walk(quotient.right(), algebra));
        }
        if (expression instanceof Expression.Negation negation) {
            return algebra.negation(expression, walk(negation.operand(), algebra));
        }
        Expression.Call call = (Expression.Call) expression;
        return algebra.call(call, call.arguments().stream().map(argument -> walk(argument, algebra)).toList());
    }

    static Set<String> readings(Expression expression) {
        Set<String> names = new TreeSet<>();
        Deque<Expression> left = new ArrayDeque<>(List.of(expression));
        while (!left.isEmpty()) {
            Expression next = left.pop();
            if (next instanceof Expression.Reading reading) {
                names.add(reading.name());
            }
            parts(next).forEach(left::push);
        }
        return names;
    }

    /** Counted level by level, as the recursion that this guards cannot count for itself. */
    private static boolean isTooDeep(Expression expression) {
        List<Expression> level = List.of(expression);
        for (int depth = 0; depth < DEEPEST && !level.isEmpty(); depth++) {
            level = level.stream().flatMap(ExpressionWalk::parts).toList();
        }
        return !level.isEmpty();
    }

    private static Stream<Expression> parts(Expression expression) {
        return expression.parts().stream();
    }
}
