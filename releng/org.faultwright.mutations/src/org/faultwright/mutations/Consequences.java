/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.mutations;

import java.util.HashSet;
import java.util.Set;

/** Rules that report the same cause from other sides; a defect rightly shows in several of them. */
final class Consequences {
    /** What a changed way or result does to faults, examples and order. */
    static final Set<String> OF_WALKS = Set.of("example-fails", "example-time-exceeded", "example-names-unknown-outcome",
            "fault-misses-conclusion", "fault-signature-outcome-unknown", "fault-never-concluded", "ambiguity-group",
            "remedy-not-done", "step-tells-nothing", "outcome-already-known", "outcome-no-fault-explains", "better-order",
            "outcome-untried", "nothing-found-wrongly", "tested-until-passed");
    /** What a changed condition does. */
    static final Set<String> OF_STATES = Set.of("left-open", "need-not-established", "live-measurement",
            "charge-not-proved-absent", "live-work", "live-reason-idle", "live-tool-unfit", "proof-not-measured", "proof-band-open",
            "charge-never-returns", "protection-not-tested", "protection-limit-loose", "proof-meter-untried", "read-without-supply", "contradictory-needs", "already-set", "unreachable-outcome", "ending-not-said");
    /** What a changed way does to the shape of the procedure. */
    static final Set<String> OF_WAYS = Set.of("unreachable-step", "unreachable-outcome", "path-without-end", "unbounded-loop",
            "loop-changes-nothing", "no-conclusion", "empty-outcomes", "single-valued", "unused-exit", "unused-reading",
            "repair-not-verified", "complaint-not-confirmed", "erase-without-backup-check", "failed-test-passed", "note-after-need", "note-never-read");
    static final Set<String> OF_NAMES = Set.of("unknown-name", "unused-declaration");
    static final Set<String> OF_READINGS = Set.of("instrument-cannot-decide", "loading-eats-tolerance", "doubtful-unhandled",
            "finer-than-resolution", "range-exceeded", "tolerance-beyond-nominal", "expected-outside-bands",
            "outcomes-incomplete", "hole-between-bands", "overlapping-bands", "division-by-zero-possible", "outcome-impossible",
            "beyond-the-point", "reading-impossible", "calculated-otherwise");

    private Consequences() {
    }

    @SafeVarargs
    static Set<String> all(Set<String>... sets) {
        Set<String> all = new HashSet<>();
        for (Set<String> set : sets) {
            all.addAll(set);
        }
        return all;
    }
}
