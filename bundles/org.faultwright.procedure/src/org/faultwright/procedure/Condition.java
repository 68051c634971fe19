/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Optional;

/**
 * A state of the set-up with a few values, such as the supply off or on.
 *
 * @param live    the values under which the circuit is energised
 * @param charged the values under which stored charge may be present
 * @param becomes values that other conditions force, such as charge present whenever the supply is on
 * @param proved  where its charge is proved absent, where stated
 * @param mayChangeLive whether changing it on a live circuit is ordinary use, as with a paper lid
 * @param starts  the value a unit arrives with; the first one when not stated
 * @param ends    the value it must be left with; absent means any
 */
public record Condition(Name name, String title, List<Name> values, List<Name> live, List<Name> charged,
        List<Becomes> becomes, Optional<Proof> proved, boolean mayChangeLive, Optional<Name> starts, Optional<Name> ends, SourceRange at) implements Declaration {
    /** The condition takes this value whenever the other one is so set. */
    public record Becomes(Name value, Setting when, SourceRange at) {
    }

    public boolean has(Name value) {
        return isAmong(values, value);
    }

    /** Whether the circuit carries current at that value. */
    public boolean isLive(Name value) {
        return isAmong(live, value);
    }

    /** Whether that value says that nothing is charged any more; false for a condition that tells of no charge. */
    public boolean isWithoutCharge(Name value) {
        return !charged.isEmpty() && has(value) && !isAmong(charged, value);
    }

    private static boolean isAmong(List<Name> values, Name value) {
        return values.stream().anyMatch(own -> own.text().equals(value.text()));
    }
}
