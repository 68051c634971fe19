/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

/**
 * What a rule is, in short; listings, help and preferences are built from this.
 *
 * @param id      stable, lower case with hyphens, such as {@code hole-between-bands}
 * @param group   the heading it is listed under
 * @param summary one sentence: what it finds
 */
public record RuleHeader(String id, Severity severity, Group group, String summary) {
    /** Headings of the rule index. */
    public enum Group {
        NAMES("Names"), QUANTITIES("Quantities and limits"), INSTRUMENTS("Instruments and uncertainty"),
        PATHS("Paths"), STATE("State of the set-up"), SAFETY("Safety"), FAULTS("Faults and steps"),
        EXAMPLES("Examples"), RECORD("Record keeping");

        private final String title;

        Group(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }
    }
}
