/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.Locale;

/**
 * A name as written, either where something is declared or where it is referred to. A reference may
 * name nothing at all: a rule reports that.
 */
public record Name(String text, SourceRange at) {
    /** Whether it stands nowhere in the text and follows from the rest of it: then it has a place, of no length. */
    public boolean isUnderstood() {
        return at.length() == 0 && !text.isEmpty();
    }

    /** HeadSupply is spoken as "Head supply"; runs of capitals stay together. */
    public String spoken() {
        String apart = text.replace('_', ' ').replaceAll("(?<=[\\p{Ll}\\p{N}])(?=\\p{Lu})", " ").strip();
        StringBuilder words = new StringBuilder();
        for (String word : apart.split("\\s+")) {
            boolean shout = word.length() > 1 && word.equals(word.toUpperCase(Locale.ROOT));
            words.append(words.isEmpty() ? "" : " ").append(words.isEmpty() || shout ? word : word.toLowerCase(Locale.ROOT));
        }
        return words.toString();
    }

    @Override
    public String toString() {
        return text;
    }
}
