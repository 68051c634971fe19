/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.quantity.measure;

import java.util.Optional;

import org.faultwright.quantity.Exact;

/** How a reading near a limit is judged (JCGM 106:2012, clause 8; ISO 14253-1). */
public sealed interface DecisionRule {
    /** A reading within the limits is accepted, whatever its uncertainty (JCGM 106:2012, 8.2). */
    record Simple() implements DecisionRule {
        @Override
        public String words() {
            return "simple";
        }
    }

    /** Accepted where the reading lies within the limits by U or more, rejected where beyond them by more than U (ISO 14253-1). */
    record Guarded() implements DecisionRule {
        @Override
        public String words() {
            return "guarded";
        }
    }

    /**
     * A guard band just wide enough that the probability of a wrong acceptance is at most the one given
     * (JCGM 106:2012, clause 9).
     *
     * @param spread          how the units that come to the bench lie; without it the guarded rule is used
     * @param mostFalseAccept from 0 to 1; ANSI/NCSL Z540.3, 5.3 b) asks for at most 0.02
     */
    record ByRisk(Optional<UnitSpread> spread, Exact mostFalseAccept) implements DecisionRule {
        public ByRisk(Optional<UnitSpread> spread) {
            this(spread, Exact.of("0.02"));
        }

        @Override
        public String words() {
            return "by risk";
        }
    }

    /** As written in a library: {@code simple}, {@code guarded} or {@code by risk}. */
    String words();
}
