/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.parsing;

import java.util.Map;
import java.util.Optional;

/** Signs that people write in place of the language's own. */
public final class LanguageSigns {
    private static final String STRAIGHT = "Quotation marks are written straight here: \" before and behind the text.";
    private static final String ARROW = "An arrow is written -> here.";

    private static final Map<String, String> ADVICE = Map.ofEntries(Map.entry("\u2192", ARROW), Map.entry("=", ARROW),
            Map.entry("\u201C", STRAIGHT), Map.entry("\u201D", STRAIGHT), Map.entry("\u201E", STRAIGHT),
            Map.entry("'", STRAIGHT), Map.entry("\u2018", STRAIGHT), Map.entry("\u2019", STRAIGHT),
            Map.entry(";", "Nothing ends with ; here; delete it."), Map.entry(":", "Nothing needs : here; delete it."),
            Map.entry("<", "Write under or at most instead of <."), Map.entry(">", "Write over or at least instead of >."),
            Map.entry("\u2264", "Write at most instead of \u2264."), Map.entry("\u2265", "Write at least instead of \u2265."),
            Map.entry("\u2013", "Write .. between two ends of a range, and - for minus."),
            Map.entry("\u2026", "Write .. between the two ends of a range."), Map.entry("#", "A comment begins with // here."));

    private LanguageSigns() {
    }

    /** What to write instead of a sign that is none of the language's. */
    public static Optional<String> advice(String sign) {
        return Optional.ofNullable(ADVICE.get(sign));
    }
}
