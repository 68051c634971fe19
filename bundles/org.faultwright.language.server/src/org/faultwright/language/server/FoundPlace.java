/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.ThingKind;

/**
 * A place in a text where something was found.
 *
 * @param kind         what it belongs to, or is
 * @param declaredHere whether that is declared by these words; told of uses alone
 * @param name         of the declaration or step that it stands in; empty where it stands in none
 * @param at           the words themselves
 */
public record FoundPlace(ThingKind kind, boolean declaredHere, String name, SourceRange at) {
    /** What it is, such as: step, point, declared here. */
    public String what() {
        return declaredHere ? kind.word() + ", declared here" : kind.word();
    }

    /** The line, without white space round it. */
    public String line() {
        return at.source().lineText(at.line()).strip();
    }
}
