/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.tree;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.quantity.Bound;
import org.faultwright.quantity.Exact;
import org.faultwright.quantity.Interval;
import org.faultwright.quantity.Unit;

/** How a reading is entered, and which values lead to which outcome: whoever walks the tree needs no units and no rules of its own. */
final class EntryJson {
    private EntryJson() {
    }

    static Json of(ReadingEntry entry) {
        Json json = unit(entry.unit()).put("factor", entry.unit().factor().toFraction());
        if (entry.offset().signum() != 0) {
            json.put("offset", entry.offset().toFraction());
        }
        if (entry.isMagnitude()) {
            json.put("magnitude", true);
        }
        return json.putAll("bands", entry.bands(), band -> ends(band.values(), entry::fromBase).put("outcome", band.outcome().key()))
                .putAll("doubtful", entry.doubtful(), zone -> ends(zone, entry::fromBase))
                .putText("overload", entry.overload().map(outcome -> outcome.key()));
    }

    static Json of(ReadingEntry.Row row) {
        return unit(row.unit()).put("accepts", ends(row.accepts(), row::fromBase))
                .putAll("doubtful", row.doubtful(), zone -> ends(zone, row::fromBase));
    }

    private static Json unit(Unit unit) {
        return new Json().put("unit", unit.ucum()).putText("symbol", Optional.of(unit.symbol()));
    }

    private static Json ends(Interval values, UnaryOperator<Exact> entered) {
        Json json = new Json();
        values.lower().ifPresent(end -> json.put("lower", end(end, entered.apply(end.value()))));
        values.upper().ifPresent(end -> json.put("upper", end(end, entered.apply(end.value()))));
        return json;
    }

    private static Json end(Bound end, Exact value) {
        return new Json().put("value", value.toFraction()).put("included", end.included());
    }
}
