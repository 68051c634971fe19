/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis;

import java.util.List;
import org.faultwright.procedure.SourceRange;

/** A change of the text that removes a finding. @param title what it does, as an order: "Add the unit V" */
public record Fix(String title, List<Edit> edits) {
    /** @param at what is replaced; of length 0 to insert */
    public record Edit(SourceRange at, String replacement) {
    }

    public static Fix replacing(String title, SourceRange at, String replacement) {
        return new Fix(title, List.of(new Edit(at, replacement)));
    }

    /** The text of the file the edits are in, changed. Edits must not overlap. */
    public String applied() {
        StringBuilder text = new StringBuilder(edits.get(0).at().source().content());
        edits.stream().sorted((a, b) -> Integer.compare(b.at().offset(), a.at().offset()))
                .forEach(edit -> text.replace(edit.at().offset(), edit.at().end(), edit.replacement()));
        return text.toString();
    }
}
