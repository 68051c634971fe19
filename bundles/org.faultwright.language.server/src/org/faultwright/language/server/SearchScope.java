/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.Locale;
import java.util.Set;

/** Among what somebody looks. */
public enum SearchScope {
    EVERYTHING("Everything", Set.of()),
    TITLES("Titles and complaints", Set.of("procedure", "library", "complaint", "equipment")),
    STEPS("Steps", Set.of("step")),
    FAULTS("Faults", Set.of("fault")),
    CODES("Codes", Set.of("code", "indicator")),
    PARTS("Parts and their numbers", Set.of("part", "part number")),
    POINTS("Points", Set.of("point")),
    INSTRUMENTS("Instruments", Set.of("instrument")),
    NOTES("Safety notes", Set.of("note")),
    COMMENTS("Comments", Set.of("comment"));

    private final String words;
    private final Set<String> kinds;

    SearchScope(String words, Set<String> kinds) {
        this.words = words;
        this.kinds = kinds;
    }

    /** As it is offered for choice. */
    public String words() {
        return words;
    }

    /** @param kind of a {@link FoundPlace} */
    boolean takes(String kind) {
        return this == EVERYTHING || kinds.contains(kind);
    }

    /** In the middle of a sentence. */
    public String inSentence() {
        return words.toLowerCase(Locale.ROOT);
    }
}
