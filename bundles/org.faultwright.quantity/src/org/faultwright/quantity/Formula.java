/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

import java.util.List;

/** A value computed from earlier readings. */
public sealed interface Formula {
    /** The reading of an earlier step, by that step's name. */
    record Reading(String step) implements Formula {
    }

    /** A quantity written out. */
    record Constant(Quantity quantity) implements Formula {
    }

    record Negated(Formula of) implements Formula {
    }

    record Sum(Formula left, Formula right) implements Formula {
    }

    record Difference(Formula left, Formula right) implements Formula {
    }

    record Product(Formula left, Formula right) implements Formula {
    }

    record Quotient(Formula left, Formula right) implements Formula {
    }

    /** A named function such as {@code parallel(A, B)}; the name may be unknown, which a rule reports. */
    record Call(String function, List<Formula> arguments) implements Formula {
    }
}
