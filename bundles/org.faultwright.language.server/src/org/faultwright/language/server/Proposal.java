/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import org.faultwright.procedure.ThingKind;

/**
 * Something that could be written at the cursor.
 *
 * @param label   what the list shows
 * @param detail  a few more words
 * @param kind    what it is or begins; {@link ThingKind#WORDS} for other words of the language
 * @param keyword the word of the language that such a thing begins with; of a step, which kind it is; empty for what begins with none
 * @param insert  the text, with blanks as {@code ${1:words}} in reading order
 * @param from    where the words it replaces begin
 * @param to      where they end
 */
public record Proposal(String label, String detail, ThingKind kind, String keyword, String insert, int from, int to) {
    /** The text with its blanks filled by the words that stand in them. */
    public String plainInsert() {
        return insert.replaceAll("\\$\\{\\d+:([^}]*)}", "$1");
    }
}
