/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.faultwright.analysis.NearNames;
import org.faultwright.procedure.Step;

/** The words of the language that begin something, for proposals where one is misspelt. */
public final class LanguageWords {
    /** That can begin a text. */
    public static final List<String> BEGINNINGS = List.of("procedure", "library");

    /** That can begin something between declarations. */
    public static final List<String> DECLARATIONS = Stream.concat(Stream.of("uses", "equipment", "revision", "complaints", "tools", "closes", "otherwise", "decision", "ambient",
            "begin", "condition", "setup", "instrument", "point", "part", "indicator", "note", "routine", "fault", "example"),
            Step.KEYWORDS.stream()).toList();

    /** That can begin a line within braces. */
    public static final List<String> LINES = List.of("needs", "unit", "sets", "notes", "handles", "takes", "wait", "adjust", "picture", "tools", "hazards",
            "confirms", "verifies", "source", "hint", "expects", "uncertainty", "units", "erases", "repairs", "value", "finds",
            "live", "tries", "tests", "refers", "report", "cases", "shows", "remedy", "covers", "hazard", "consequence", "avoid", "exits", "begin", "rated",
            "valid", "calibrated", "resolution", "accuracy", "input", "burden", "bandwidth", "anything");

    private static final int SHORTEST = 3;

    private LanguageWords() {
    }

    /** The word that was probably meant; absent where the word written is one of them or like none. */
    public static Optional<String> near(List<String> known, String written) {
        return written.length() < SHORTEST || known.contains(written) ? Optional.empty()
                : NearNames.of(written, known).stream().findFirst();
    }
}
