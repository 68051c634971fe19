/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

/**
 * Something that could be written at the cursor.
 *
 * @param label  what the list shows
 * @param detail a few more words
 * @param kind   which picture goes with it: a keyword of the language, {@code unit} or {@code word}
 * @param insert the text, with blanks as {@code ${1:words}} in reading order
 * @param from   where the words it replaces begin
 * @param to     where they end
 */
public record Proposal(String label, String detail, String kind, String insert, int from, int to) {
    /** The text with its blanks filled by the words that stand in them. */
    public String plainInsert() {
        return insert.replaceAll("\\$\\{\\d+:([^}]*)}", "$1");
    }
}
