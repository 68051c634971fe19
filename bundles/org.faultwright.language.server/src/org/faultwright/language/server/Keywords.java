/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.procedure.Step;
import org.faultwright.procedure.ThingKind;

/** The words of the language, for colouring and to keep them from being names. */
public final class Keywords {
    /** Words that begin a part of a text. */
    public static final Set<String> BEGINNINGS = Stream.concat(Step.KEYWORDS.stream(),
            Arrays.stream(ThingKind.values()).map(ThingKind::keyword).filter(word -> !word.isEmpty())).collect(Collectors.toUnmodifiableSet());

    /** All of them. */
    public static final Set<String> ALL = GrammarWords.all();

    /** Words that cannot be names of their own but read as words of the language where they stand. */
    public static final Set<String> SIGNAL_WORDS = Set.of("danger", "warning", "caution", "notice");

    private Keywords() {
    }
}
