/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import org.faultwright.procedure.SourceRange;

/**
 * A place in a text where something was found.
 *
 * @param kind what it belongs to: "fault", "step", "part number", "comment" and so on
 * @param name of the declaration or step that it stands in; empty where it stands in none
 * @param at   the words themselves
 */
public record FoundPlace(String kind, String name, SourceRange at) {
    /** The line, without white space round it. */
    public String line() {
        return at.source().lineText(at.line()).strip();
    }
}
