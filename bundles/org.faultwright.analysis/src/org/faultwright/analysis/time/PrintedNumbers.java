/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.time;

import java.math.RoundingMode;
import org.faultwright.quantity.Exact;

/** How times and shares are printed. */
public final class PrintedNumbers {
    private static final Exact SIXTY = Exact.of(60);
    private static final Exact HUNDRED = Exact.of(100);

    private PrintedNumbers() {
    }

    /** A time in seconds as minutes with at most one decimal, such as {@code 7.5 min}. */
    public static String minutes(Exact seconds) {
        return plain(seconds.dividedBy(SIXTY), 1) + " min";
    }

    /** A share from 0 to 1 as a whole percentage, such as {@code 41 %}; never 0 % or 100 % for what is neither. */
    public static String percent(Exact share) {
        String rounded = plain(share.times(HUNDRED), 0);
        if (rounded.equals("0") && share.signum() > 0) {
            return "under 1 %";
        }
        return rounded.equals("100") && share.compareTo(Exact.ONE) < 0 ? "over 99 %" : rounded + " %";
    }

    private static String plain(Exact value, int places) {
        return value.toDecimal(places, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    }
}
