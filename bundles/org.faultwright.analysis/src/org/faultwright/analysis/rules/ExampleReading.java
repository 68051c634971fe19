/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.math.MathContext;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** Picks one reading out of an interval, for a message. */
final class ExampleReading {
    private ExampleReading() {
    }

    /** The middle, with as few digits as lie inside; beyond an end by a tenth of it where the other is open. */
    static String in(Interval values, Unit unit) {
        Exact middle = middle(values, unit);
        for (int digits = 2; digits < 12; digits++) {
            Exact rounded = unit.toBase(Exact.of(unit.fromBase(middle).toDecimal(new MathContext(digits))));
            if (values.contains(rounded)) {
                return ValueText.of(rounded, unit);
            }
        }
        return ValueText.of(middle, unit);
    }

    private static Exact middle(Interval values, Unit unit) {
        if (values.lower().isPresent() && values.upper().isPresent()) {
            return values.lower().get().value().plus(values.upper().get().value()).dividedBy(Exact.of(2));
        }
        Exact end = values.lower().or(values::upper).map(Bound::value).orElse(Exact.ZERO);
        Exact beyond = unit.fromBase(end).absolute().dividedBy(Exact.of(10)).times(unit.factor())
                .max(unit.factor().dividedBy(Exact.of(10)));
        return values.lower().isPresent() ? end.plus(beyond) : end.minus(beyond);
    }
}
