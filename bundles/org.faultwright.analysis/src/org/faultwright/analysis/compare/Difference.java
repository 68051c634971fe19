/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.Optional;
import org.faultwright.procedure.SourceRange;

/**
 * One thing that two revisions of a procedure say differently.
 *
 * @param what    such as {@code HeadSupply: limit}
 * @param was     the words of the earlier revision; {@link #ABSENT} for what is new
 * @param now     the words of the later one; {@link #ABSENT} for what is gone
 * @param meaning what the change comes to, such as {@code wider: 4.6 V to 5.4 V, was 4.75 V to 5.25 V}; empty where the words say it
 * @param loss    how much protection goes with it
 * @param at      where it stands in the later revision; of what is gone, where the thing is declared that it belonged to; absent where
 *                that is gone too
 */
public record Difference(Kind kind, String what, String was, String now, String meaning, Loss loss, Optional<SourceRange> at) {
    public static final String ABSENT = "\u2013";

    /** What a difference is about, in the order in which it matters to whoever releases. */
    public enum Kind {
        PROTECTION("Protection removed, weakened or reworded"), LIMITS("Limits and readings"), SAFETY("Safety and set-up"),
        OUTCOMES("Where outcomes lead"), STEPS("Steps"), FAULTS("Faults"), BENCH("Instruments, points and parts"),
        EXAMPLES("Examples"), RECORD("Title and record");

        private final String title;

        Kind(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }

    /** What happened to protection, the gravest first. */
    public enum Loss {
        REMOVED, WEAKENED, REWORDED, NONE
    }

    /** One that takes no protection away. */
    Difference(Kind kind, String what, String was, String now, String meaning, Optional<SourceRange> at) {
        this(kind, what, was, now, meaning, Loss.NONE, at);
    }

    /** On one line: {@code HeadSupply: limit: 5 V +/- 5 % → 5 V +/- 8 % (wider: …)}. */
    @Override
    public String toString() {
        return what + ": " + was + " \u2192 " + now + (meaning.isEmpty() ? "" : " (" + meaning + ")");
    }
}
