/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

/**
 * One thing that differs from an earlier tree.
 *
 * @param what such as {@code HeadSupply, limit}
 * @param was  its earlier words; {@link #ABSENT} for what is new
 * @param now  its words of today; {@link #ABSENT} for what is gone
 */
public record Change(Area area, String what, String was, String now) {
    public static final String ABSENT = "\u2013";

    /** What a change is about, in the order in which it matters to whoever releases. */
    public enum Area {
        LIMITS("Limits and readings"), SAFETY("Safety and set-up"), WAYS("Ways on"), STEPS("Steps"), FAULTS("Faults"),
        BENCH("Instruments and points"), EXAMPLES("Examples"), RECORD("Title and record");

        private final String title;

        Area(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }
}
