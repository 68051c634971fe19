/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

/** What a word can begin. */
enum LayoutItem {
    /** It goes on with what stands before it. */
    NONE,
    /** A declaration, step, fault, example or a line of the head. */
    DECLARATION,
    /** A line within braces. */
    LINE,
    /** A result with its arrow. */
    OUTCOME,
    /** A range of an instrument. */
    RANGE,
    /** A code of an indicator. */
    CODE,
    /** The limits of a band that has a label; the line began with the label. */
    LIMIT;

    boolean beginsLine() {
        return this != NONE && this != LIMIT;
    }
}
