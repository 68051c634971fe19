/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.math.RoundingMode;
import java.util.Optional;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Quantity;

/** Times as an author writes them. */
public final class TimeText {
    private TimeText() {
    }

    /** In seconds; absent where the quantity is no time. */
    public static Optional<Exact> seconds(Quantity quantity) {
        return StepTimes.seconds(quantity);
    }

    /** As {@code takes} would state it: {@code 40 s} or {@code 7.5 min}. */
    public static String written(Exact seconds) {
        return seconds.compareTo(Exact.of(60)) < 0 && seconds.equals(seconds.floor()) ? seconds + " s" : PrintedNumbers.minutes(seconds);
    }

    /** The next whole minute, such as {@code 23 min}. */
    public static String upToMinutes(Exact seconds) {
        return seconds.dividedBy(Exact.of(60)).toDecimal(0, RoundingMode.CEILING).toPlainString() + " min";
    }
}
