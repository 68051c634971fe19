/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

/**
 * A declaration or step that holds words which cannot be read.
 *
 * @param kind       what it is; {@link ThingKind#WORDS} where the word it begins with cannot be read either
 * @param word       what it is called, such as {@code check}
 * @param name       its name; empty where it cannot be made out
 * @param at         the whole of it
 * @param headBroken whether its first line is among what cannot be read, so that its name may not be what it seems
 */
public record DamagedBlock(ThingKind kind, String word, String name, SourceRange at, boolean headBroken) {
    /** What to call it: the check SeeIt. */
    public String words() {
        return kind == ThingKind.WORDS ? "what begins here" : "the " + word + (name.isEmpty() ? "" : " " + name);
    }
}
