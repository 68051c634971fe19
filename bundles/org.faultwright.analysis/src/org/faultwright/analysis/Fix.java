/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;
import java.util.regex.Pattern;
import org.faultwright.procedure.SourceRange;

/** A change of the text that removes a finding. @param title what it does, as an order: "Add the unit V" */
public record Fix(String title, List<Edit> edits) {
    private static final Pattern ONLY_LF = Pattern.compile("(?<!\r)\n");

    /** @param at what is replaced; of length 0 to insert */
    public record Edit(SourceRange at, String replacement) {
    }

    public static Fix replacing(String title, SourceRange at, String replacement) {
        return new Fix(title, List.of(new Edit(at, replacement)));
    }

    /** The text of the file the edits are in, changed; where all its lines end in CR LF, so do the new ones. Edits must not overlap. */
    public String applied() {
        String before = edits.get(0).at().source().content();
        StringBuilder text = new StringBuilder(before);
        edits.stream().sorted((a, b) -> Integer.compare(b.at().offset(), a.at().offset()))
                .forEach(edit -> text.replace(edit.at().offset(), edit.at().end(), edit.replacement()));
        return inLinesAs(before, text.toString());
    }

    /** A text with its lines ended as those of another; as it is where that one ends them in more than one way. */
    public static String inLinesAs(String other, String text) {
        boolean windows = other.contains("\r\n") && !ONLY_LF.matcher(other).find();
        return windows ? ONLY_LF.matcher(text).replaceAll("\r\n") : text;
    }
}
