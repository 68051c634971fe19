/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import org.faultwright.quantity.MeterRange;

/** How a range of an instrument is called in a message. */
final class RangeText {
    private RangeText() {
    }

    static String of(MeterRange range) {
        return range.kind().words() + " up to " + range.upTo();
    }
}
