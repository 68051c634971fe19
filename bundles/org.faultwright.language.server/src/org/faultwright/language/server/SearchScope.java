/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.faultwright.procedure.ThingKind;

/** Among what somebody looks. */
public enum SearchScope {
    EVERYTHING("Everything", EnumSet.noneOf(ThingKind.class)),
    TITLES("Titles and complaints", EnumSet.of(ThingKind.PROCEDURE, ThingKind.LIBRARY, ThingKind.COMPLAINT, ThingKind.EQUIPMENT)),
    STEPS("Steps", EnumSet.of(ThingKind.STEP)),
    FAULTS("Faults", EnumSet.of(ThingKind.FAULT)),
    CODES("Codes", EnumSet.of(ThingKind.CODE, ThingKind.INDICATOR)),
    PARTS("Parts and their numbers", EnumSet.of(ThingKind.PART, ThingKind.PART_NUMBER)),
    POINTS("Points", EnumSet.of(ThingKind.POINT)),
    INSTRUMENTS("Instruments", EnumSet.of(ThingKind.INSTRUMENT)),
    NOTES("Safety notes", EnumSet.of(ThingKind.NOTE)),
    COMMENTS("Comments", EnumSet.of(ThingKind.COMMENT));

    private final String words;
    private final Set<ThingKind> kinds;

    SearchScope(String words, Set<ThingKind> kinds) {
        this.words = words;
        this.kinds = kinds;
    }

    /** As it is offered for choice. */
    public String words() {
        return words;
    }

    /** @param kind of a {@link FoundPlace} */
    boolean takes(ThingKind kind) {
        return this == EVERYTHING || kinds.contains(kind);
    }

    /** In the middle of a sentence. */
    public String inSentence() {
        return words.toLowerCase(Locale.ROOT);
    }
}
