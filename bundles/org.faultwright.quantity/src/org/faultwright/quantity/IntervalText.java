/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity;

/** Prints an interval in words that say for each end whether it belongs to it. */
public final class IntervalText {
    private IntervalText() {
    }

    /**
     * The interval in the unit given: {@code 5.25 V to 5.5 V, upper end excluded}, {@code over 800 mA},
     * {@code at least 3 V}, {@code exactly 4.75 V}, {@code every value}, {@code no value}.
     */
    public static String of(Interval interval, Unit unit) {
        if (interval.isEmpty()) {
            return "no value";
        }
        if (interval.lower().isEmpty() && interval.upper().isEmpty()) {
            return "every value";
        }
        if (interval.upper().isEmpty()) {
            Bound low = interval.lower().get();
            return (low.included() ? "at least " : "over ") + ValueText.of(low.value(), unit);
        }
        Bound high = interval.upper().get();
        return interval.lower().map(low -> between(low, high, unit))
                .orElseGet(() -> (high.included() ? "at most " : "under ") + ValueText.of(high.value(), unit));
    }

    private static String between(Bound low, Bound high, Unit unit) {
        if (low.value().equals(high.value())) {
            return "exactly " + ValueText.of(low.value(), unit);
        }
        String ends = low.included() && high.included() ? ""
                : low.included() ? ", upper end excluded"
                        : high.included() ? ", lower end excluded" : ", both ends excluded";
        return ValueText.of(low.value(), unit) + " to " + ValueText.of(high.value(), unit) + ends;
    }
}
