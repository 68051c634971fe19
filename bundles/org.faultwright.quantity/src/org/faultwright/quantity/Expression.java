/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.List;

/** A value computed from earlier readings. */
public sealed interface Expression {
    /** The reading of an earlier step, by that step's name. */
    record Reading(String step) implements Expression {
    }

    /** A quantity written out. */
    record Constant(Quantity quantity) implements Expression {
    }

    record Negated(Expression of) implements Expression {
    }

    record Sum(Expression left, Expression right) implements Expression {
    }

    record Difference(Expression left, Expression right) implements Expression {
    }

    record Product(Expression left, Expression right) implements Expression {
    }

    record Quotient(Expression left, Expression right) implements Expression {
    }

    /** A named function such as {@code parallel(A, B)}; the name may be unknown, which a rule reports. */
    record Call(String function, List<Expression> arguments) implements Expression {
    }
}
