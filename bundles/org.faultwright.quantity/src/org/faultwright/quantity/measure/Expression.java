/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Quantity;
import org.faultwright.quantity.QuantityKind;

/** A value derived from readings, such as the power from a voltage and a current. Readings are in coherent SI units. */
public sealed interface Expression {
    /** An earlier reading, by its name. */
    record Reading(String name) implements Expression {
        @Override
        public String toString() {
            return name;
        }
    }

    record Constant(Quantity quantity) implements Expression {
        @Override
        public String toString() {
            return quantity.spelling();
        }
    }

    record Sum(Expression left, Expression right) implements Expression {
        @Override
        public String toString() {
            return "(" + left + " + " + right + ")";
        }
    }

    record Difference(Expression left, Expression right) implements Expression {
        @Override
        public String toString() {
            return "(" + left + " - " + right + ")";
        }
    }

    record Product(Expression left, Expression right) implements Expression {
        @Override
        public String toString() {
            return left + " * " + right;
        }
    }

    record Quotient(Expression left, Expression right) implements Expression {
        @Override
        public String toString() {
            return left + " / " + (right instanceof Product || right instanceof Quotient ? "(" + right + ")" : right);
        }
    }

    record Negation(Expression operand) implements Expression {
        @Override
        public String toString() {
            return "-" + operand;
        }
    }

    record Call(Function function, List<Expression> arguments) implements Expression {
        @Override
        public String toString() {
            return function.words() + arguments.stream().map(Expression::plain).collect(Collectors.joining(", ", "(", ")"));
        }
    }

    /** As written, without brackets around the whole. */
    default String plain() {
        String text = toString();
        return this instanceof Sum || this instanceof Difference ? text.substring(1, text.length() - 1) : text;
    }

    /** What it is made of directly, in reading order; none for a reading or a constant. */
    default List<Expression> parts() {
        if (this instanceof Sum pair) {
            return List.of(pair.left(), pair.right());
        } else if (this instanceof Difference pair) {
            return List.of(pair.left(), pair.right());
        } else if (this instanceof Product pair) {
            return List.of(pair.left(), pair.right());
        } else if (this instanceof Quotient pair) {
            return List.of(pair.left(), pair.right());
        } else if (this instanceof Negation negation) {
            return List.of(negation.operand());
        }
        return this instanceof Call call ? call.arguments() : List.of();
    }

    /** The same operation on other parts, as many as {@link #parts()} has. */
    default Expression with(List<Expression> parts) {
        if (this instanceof Sum) {
            return new Sum(parts.get(0), parts.get(1));
        } else if (this instanceof Difference) {
            return new Difference(parts.get(0), parts.get(1));
        } else if (this instanceof Product) {
            return new Product(parts.get(0), parts.get(1));
        } else if (this instanceof Quotient) {
            return new Quotient(parts.get(0), parts.get(1));
        } else if (this instanceof Negation) {
            return new Negation(parts.get(0));
        }
        return this instanceof Call call ? new Call(call.function(), parts) : this;
    }

    /** The names of the readings in it. */
    default Set<String> readings() {
        return ExpressionWalk.readings(this);
    }

    /** The dimension of the result; a temperature difference is told from a temperature. */
    default DimensionCheck dimensionOfKinds(Map<String, QuantityKind> readings) {
        return DimensionCheck.ofKinds(this, readings);
    }

    /** The value at those readings; exact but for roots (20 digits) and decibels (15 digits). */
    default Evaluation<Exact> value(Map<String, Exact> readings) {
        return ValueAlgebra.evaluate(this, readings);
    }

    /**
     * Every value it can take while the readings keep within their intervals. Exact where each reading
     * occurs once; where one occurs twice the result may be wider than need be, never narrower.
     */
    default Evaluation<Interval> interval(Map<String, Interval> readings) {
        return IntervalAlgebra.evaluate(this, readings);
    }
}
