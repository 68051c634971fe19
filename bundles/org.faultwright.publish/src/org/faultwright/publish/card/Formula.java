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
        return expression instanceof Expression.Call call && call.function().equals("abs") && call.arguments().size() == 1
                ? words(call.arguments().get(0), plan) + ", without its sign" : words(expression, plan);
    }

    private static String words(Expression expression, Plan plan) {
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
            return words(sum.left(), plan) + " + " + words(sum.right(), plan);
        }
        if (expression instanceof Expression.Difference difference) {
            return words(difference.left(), plan) + " \u2212 " + inner(difference.right(), plan);
        }
        if (expression instanceof Expression.Product product) {
            return inner(product.left(), plan) + " \u00D7 " + inner(product.right(), plan);
        }
        if (expression instanceof Expression.Quotient quotient) {
            return inner(quotient.left(), plan) + " \u00F7 " + inner(quotient.right(), plan);
        }
        Expression.Call call = (Expression.Call) expression;
        return call.function() + "(" + call.arguments().stream().map(argument -> words(argument, plan))
                .collect(Collectors.joining(", ")) + ")";
    }

    /** In brackets unless it is a single thing. */
    private static String inner(Expression expression, Plan plan) {
        boolean single = expression instanceof Expression.Reading || expression instanceof Expression.Constant
                || expression instanceof Expression.Call;
        return single ? words(expression, plan) : "(" + words(expression, plan) + ")";
    }
}
