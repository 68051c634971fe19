/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import org.faultwright.quantity.Exact;

/** What a reading says about a limit. */
enum Verdict {
    ACCEPT, DOUBTFUL, REJECT;

    static Verdict of(Exact reading, DecisionZones zones) {
        return zones.accept().contains(reading) ? ACCEPT : zones.reject().stream().anyMatch(zone -> zone.contains(reading)) ? REJECT : DOUBTFUL;
    }
}
