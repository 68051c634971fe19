/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.walk;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.analysis.measurement.ReadingEntry;
import org.faultwright.analysis.trace.Suspects;
import org.faultwright.analysis.walk.TimeAhead;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.quantity.Exact;

/** A procedure with what is asked of it at every step of a walk, each worked out once. Only for one thread at a time. */
final class StudiedProcedure {
    private final Procedure procedure;
    private final Suspects suspects;
    private final TimeAhead ahead;
    private final Map<Step, Optional<ReadingEntry>> entries = new HashMap<>();

    StudiedProcedure(Procedure procedure) {
        this.procedure = procedure;
        this.suspects = Suspects.of(procedure);
        this.ahead = TimeAhead.of(procedure);
    }

    Procedure procedure() {
        return procedure;
    }

    Suspects suspects() {
        return suspects;
    }

    TimeAhead ahead() {
        return ahead;
    }

    Optional<ReadingEntry> entry(Step step) {
        return entries.computeIfAbsent(step, one -> ReadingEntry.of(procedure, one));
    }

    /** How each row of a table is entered, absent where no number can be asked for; no rows for any other step. */
    List<Optional<ReadingEntry.Row>> rows(Step step) {
        return step instanceof Step.Measure measure && !measure.rows().isEmpty()
                ? measure.readings().stream().map(row -> ReadingEntry.ofRow(procedure, row)).toList() : List.of();
    }

    /** The outcome that readings lead to now. */
    Optional<Outcome> outcome(Step step, List<WalkAnswer.Reading> readings) {
        List<Optional<Exact>> values = readings.stream().map(WalkAnswer.Reading::base).toList();
        if (!rows(step).isEmpty()) {
            return rows(step).size() == values.size() && rows(step).stream().allMatch(Optional::isPresent)
                    ? ReadingEntry.judgeTable(procedure, (Step.Measure) step, values) : Optional.empty();
        }
        return values.size() != 1 ? Optional.empty() : entry(step).filter(entry -> fits(entry, readings.get(0)))
                .flatMap(entry -> values.get(0).map(base -> entry.judge(step, base).outcome()).orElseGet(entry::overload));
    }

    private static boolean fits(ReadingEntry entry, WalkAnswer.Reading reading) {
        return entry.unit().dimension().equals(reading.unit().dimension());
    }
}
