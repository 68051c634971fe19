/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.LinkedHashMap;
import java.util.Map;
import org.faultwright.procedure.Source;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;

/** The documents that limits and codes come from: a number at the step, the words once at the end. */
final class Citations {
    private final Map<String, Integer> numbers = new LinkedHashMap<>();

    /** Adds the number of a source. */
    void cite(Fo into, Source source) {
        int number = numbers.computeIfAbsent(Wording.source(source), words -> numbers.size() + 1);
        into.add("inline", "font-size", "7pt", "baseline-shift", "2.4pt", "line-height", "0pt")
                .verbatim("\u00A0[" + number + "]");
    }

    void list(Fo into) {
        if (!numbers.isEmpty()) {
            Paint.heading(into, "Sources");
            numbers.forEach((words, number) -> into.add("block", "start-indent", "6mm", "text-indent", "-6mm", "keep-together.within-column", "always")
                    .verbatim("[" + number + "]\u00A0").text(words));
        }
    }
}
