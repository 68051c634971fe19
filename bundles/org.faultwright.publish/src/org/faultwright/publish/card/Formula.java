/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.stream.Collectors;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.Plan;
import org.faultwright.quantity.Expression;

/** A formula in words and signs, with each reading called by the number of its step. */
final class Formula {
    private Formula() {
    }

    static String of(Expression expression, Plan plan) {
        if (expression instanceof Expression.Reading reading) {
            return "reading " + plan.procedure().steps().stream()
                    .filter(step -> step.name().text().equals(reading.step())).findFirst().map(plan::label)
                    .orElse(reading.step());
        }
        if (expression instanceof Expression.Constant constant) {
            return Wording.printed(constant.quantity());
        }
        if (expression instanceof Expression.Negated negated) {
            return "\u2212" + inner(negated.of(), plan);
        }
        if (expression instanceof Expression.Sum sum) {
            return of(sum.left(), plan) + " + " + of(sum.right(), plan);
        }
        if (expression instanceof Expression.Difference difference) {
            return of(difference.left(), plan) + " \u2212 " + inner(difference.right(), plan);
        }
        if (expression instanceof Expression.Product product) {
            return inner(product.left(), plan) + " \u00D7 " + inner(product.right(), plan);
        }
        if (expression instanceof Expression.Quotient quotient) {
            return inner(quotient.left(), plan) + " \u00F7 " + inner(quotient.right(), plan);
        }
        Expression.Call call = (Expression.Call) expression;
        if (call.function().equals("abs") && call.arguments().size() == 1) {
            return inner(call.arguments().get(0), plan) + " without its sign";
        }
        return call.function() + "(" + call.arguments().stream().map(argument -> of(argument, plan))
                .collect(Collectors.joining(", ")) + ")";
    }

    /** In brackets unless it is a single thing. */
    private static String inner(Expression expression, Plan plan) {
        boolean single = expression instanceof Expression.Reading || expression instanceof Expression.Constant
                || expression instanceof Expression.Call;
        return single ? of(expression, plan) : "(" + of(expression, plan) + ")";
    }
}
