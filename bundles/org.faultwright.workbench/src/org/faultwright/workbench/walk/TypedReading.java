/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.Optional;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.procedure.Results;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Unit;
import org.faultwright.quantity.ValueText;

/** What stands in a box for a reading: nothing yet, a reading, or words that are none. */
sealed interface TypedReading {
    record Nothing() implements TypedReading {
    }

    record Value(WalkAnswer.Reading reading) implements TypedReading {
    }

    /** @param sentence what is wrong and what to do */
    record Wrong(String sentence) implements TypedReading {
    }

    /** @param entry how the reading is entered */
    static TypedReading of(String text, ReadingEntry entry) {
        return of(text, entry.unit(), entry.isDifference() ? Exact.ZERO : entry.unit().offset());
    }

    static TypedReading of(String text, ReadingEntry.Row row) {
        return of(text, row.unit(), row.unit().offset());
    }

    private static TypedReading of(String text, Unit unit, Exact offset) {
        if (text.isBlank()) {
            return new Nothing();
        }
        if (text.strip().equalsIgnoreCase(Results.OVERLOAD)) {
            return new Value(WalkAnswer.Reading.above(unit));
        }
        return ReadingEntry.typed(text).<TypedReading>map(value -> new Value(new WalkAnswer.Reading(text.strip(),
                ValueText.of(unit.toBase(value), unit), unit, Optional.of(value.times(unit.factor()).plus(offset)))))
                .orElseGet(() -> new Wrong("\u201c" + text.strip() + "\u201d is no number: type digits with a comma or a point."));
    }
}
