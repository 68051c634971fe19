/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.stream.Collectors;
import org.faultwright.publish.Wording;
import org.faultwright.publish.plan.CardPlan;
import org.faultwright.quantity.Formula;

/** A formula in words and signs, with each reading called by the number of its step. */
final class PrintedFormula {
    private PrintedFormula() {
    }

    static String of(Formula expression, CardPlan plan) {
        return expression instanceof Formula.Call call && call.function().equals("abs") && call.arguments().size() == 1
                ? words(call.arguments().get(0), plan) + ", without its sign" : words(expression, plan);
    }

    private static String words(Formula expression, CardPlan plan) {
        if (expression instanceof Formula.Reading reading) {
            return "reading " + plan.procedure().steps().stream()
                    .filter(step -> step.name().text().equals(reading.step())).findFirst().map(plan::label)
                    .orElse(reading.step());
        }
        if (expression instanceof Formula.Constant constant) {
            return Wording.printed(constant.quantity());
        }
        if (expression instanceof Formula.Negated negated) {
            return "\u2212" + inner(negated.of(), plan);
        }
        if (expression instanceof Formula.Sum sum) {
            return words(sum.left(), plan) + " + " + words(sum.right(), plan);
        }
        if (expression instanceof Formula.Difference difference) {
            return words(difference.left(), plan) + " \u2212 " + inner(difference.right(), plan);
        }
        if (expression instanceof Formula.Product product) {
            return inner(product.left(), plan) + " \u00D7 " + inner(product.right(), plan);
        }
        if (expression instanceof Formula.Quotient quotient) {
            return inner(quotient.left(), plan) + " \u00F7 " + inner(quotient.right(), plan);
        }
        Formula.Call call = (Formula.Call) expression;
        return call.function() + "(" + call.arguments().stream().map(argument -> words(argument, plan))
                .collect(Collectors.joining(", ")) + ")";
    }

    /** In brackets unless it is a single thing. */
    private static String inner(Formula expression, CardPlan plan) {
        boolean single = expression instanceof Formula.Reading || expression instanceof Formula.Constant
                || expression instanceof Formula.Call;
        return single ? words(expression, plan) : "(" + words(expression, plan) + ")";
    }
}
