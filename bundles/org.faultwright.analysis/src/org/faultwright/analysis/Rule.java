/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

/**
 * One thing that is looked for. A rule is a class of its own with a page of the same id under
 * {@code rules/pages} and a line in {@code RuleSet}; it keeps no state between calls.
 */
public interface Rule {
    RuleHeader header();

    /** Looks at the subject and reports; never throws for anything an author can write. */
    void check(Subject subject, Findings findings);

    /** How far it looks for what it says of one place. Who says too little misses what has changed elsewhere. */
    default Reach reach() {
        return Reach.EVERYTHING;
    }

    /** Whether it studies every fault or searches for an order, so that an editor waits for a pause in writing. */
    default boolean takesLong() {
        return false;
    }
}
