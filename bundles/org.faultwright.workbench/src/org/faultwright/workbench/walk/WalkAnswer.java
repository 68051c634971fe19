/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.List;
import java.util.Optional;
import org.faultwright.analysis.examples.WalkedExample;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.procedure.Results;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;

/**
 * What the writer said at one place of a walk.
 *
 * @param place    such as {@code MakeSafe/SwitchOff}
 * @param result   the outcome's key; absent where a routine was begun
 * @param readings that led to it; empty where it was chosen without a number
 */
record WalkAnswer(String place, Optional<String> result, List<Reading> readings) {
    /**
     * A reading.
     *
     * @param typed as it was typed; empty for a value that was computed
     * @param words with its unit, as a text says it
     * @param base  in the coherent SI unit; absent for what a meter shows above its range
     */
    record Reading(String typed, String words, Unit unit, Optional<Exact> base) {
        static Reading above(Unit unit) {
            return new Reading(Results.OVERLOAD, Results.OVERLOAD, unit, Optional.empty());
        }

        static Reading computed(ReadingEntry entry, Exact base) {
            return new Reading("", WalkWords.shown(base, entry), entry.unit(), Optional.of(base));
        }

        WalkedExample.Reading forExample() {
            return new WalkedExample.Reading(words, base);
        }
    }

    static WalkAnswer begun(String place) {
        return new WalkAnswer(place, Optional.empty(), List.of());
    }

    static WalkAnswer chosen(String place, String result) {
        return new WalkAnswer(place, Optional.of(result), List.of());
    }

    static WalkAnswer read(String place, String result, List<Reading> readings) {
        return new WalkAnswer(place, Optional.of(result), readings);
    }
}
