/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import com.google.gson.JsonArray;
import org.faultwright.quantity.Formula;

/** A formula as a tree of operations over readings, which are called by their step. */
final class FormulaJson {
    private FormulaJson() {
    }

    static Json of(Formula expression) {
        if (expression instanceof Formula.Reading reading) {
            return new Json().put("reading", reading.step());
        }
        if (expression instanceof Formula.Constant constant) {
            return new Json().put("constant", QuantityJson.of(constant.quantity()));
        }
        if (expression instanceof Formula.Negated negated) {
            return operation("negate", negated.of());
        }
        if (expression instanceof Formula.Sum sum) {
            return operation("add", sum.left(), sum.right());
        }
        if (expression instanceof Formula.Difference difference) {
            return operation("subtract", difference.left(), difference.right());
        }
        if (expression instanceof Formula.Product product) {
            return operation("multiply", product.left(), product.right());
        }
        if (expression instanceof Formula.Quotient quotient) {
            return operation("divide", quotient.left(), quotient.right());
        }
        Formula.Call call = (Formula.Call) expression;
        return operation(call.function(), call.arguments().toArray(Formula[]::new));
    }

    private static Json operation(String name, Formula... arguments) {
        JsonArray array = new JsonArray();
        for (Formula argument : arguments) {
            array.add(of(argument).object());
        }
        return new Json().put("operation", name).put("arguments", array);
    }
}
