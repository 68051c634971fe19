/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.walk;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/**
 * A walk at the bench as it was written down, held against the procedure that it was walked by.
 *
 * @param id    of this record alone
 * @param walk  where it stood at last
 * @param spent seconds at each of the procedure's own steps, visit by visit; a routine counts for the step that performs it
 */
public record WalkRecord(String id, Walk walk, Map<Step, List<Integer>> spent, int doubtful) {
    /**
     * A result as it was written down.
     *
     * @param place    such as {@code MakeSafe/SwitchOff}
     * @param seconds  since the result before it, not negative
     * @param doubtful whether the reading lay too near a limit to decide
     */
    public record Entry(String place, String outcome, int seconds, boolean doubtful) {
    }

    /** Absent where the entries are no walk of the procedure: somebody changed them, or the procedure. */
    public static Optional<WalkRecord> of(Procedure procedure, String id, List<Entry> entries) {
        Optional<Walk> walk = Walk.start(procedure);
        Map<Step, List<Integer>> spent = new LinkedHashMap<>();
        int visit = 0;
        int doubtful = 0;
        for (Entry entry : entries) {
            Optional<Walk> here = walk.map(WalkRecord::inside).filter(one -> !one.isEnd() && one.label().equals(entry.place()));
            Optional<Outcome> outcome = here.flatMap(one -> one.step().outcomes().stream().filter(own -> own.key().equals(entry.outcome())).findFirst());
            if (outcome.isEmpty()) {
                return Optional.empty();
            }
            walk = here.map(one -> one.take(outcome.get()));
            doubtful += entry.doubtful() ? 1 : 0;
            visit += entry.seconds();
            if (walk.orElseThrow().evidence().size() > here.get().evidence().size()) {
                Step outermost = walk.get().evidence().get(walk.get().evidence().size() - 1).step();
                spent.computeIfAbsent(outermost, none -> new ArrayList<>()).add(visit);
                visit = 0;
            }
        }
        int counted = doubtful;
        return walk.map(one -> new WalkRecord(id, one, spent, counted));
    }

    private static Walk inside(Walk walk) {
        Walk inner = walk;
        while (inner.canEnter()) {
            inner = inner.entered();
        }
        return inner;
    }

    /** Absent for a walk that was not finished. */
    public Optional<Step.Conclude> conclusion() {
        return !walk.isLost() && walk.step() instanceof Step.Conclude conclude ? Optional.of(conclude) : Optional.empty();
    }
}
