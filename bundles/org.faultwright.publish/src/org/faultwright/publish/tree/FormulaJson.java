/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import com.google.gson.JsonArray;
import org.faultwright.quantity.Expression;

/** A formula as a tree of operations over readings, which are called by their step. */
final class FormulaJson {
    private FormulaJson() {
    }

    static Json of(Expression expression) {
        if (expression instanceof Expression.Reading reading) {
            return new Json().put("reading", reading.step());
        }
        if (expression instanceof Expression.Constant constant) {
            return new Json().put("constant", QuantityJson.of(constant.quantity()));
        }
        if (expression instanceof Expression.Negated negated) {
            return operation("negate", negated.of());
        }
        if (expression instanceof Expression.Sum sum) {
            return operation("add", sum.left(), sum.right());
        }
        if (expression instanceof Expression.Difference difference) {
            return operation("subtract", difference.left(), difference.right());
        }
        if (expression instanceof Expression.Product product) {
            return operation("multiply", product.left(), product.right());
        }
        if (expression instanceof Expression.Quotient quotient) {
            return operation("divide", quotient.left(), quotient.right());
        }
        Expression.Call call = (Expression.Call) expression;
        return operation(call.function(), call.arguments().toArray(Expression[]::new));
    }

    private static Json operation(String name, Expression... arguments) {
        JsonArray array = new JsonArray();
        for (Expression argument : arguments) {
            array.add(of(argument).object());
        }
        return new Json().put("operation", name).put("arguments", array);
    }
}
