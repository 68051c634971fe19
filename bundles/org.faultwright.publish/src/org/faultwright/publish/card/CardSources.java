/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.LinkedHashMap;
import java.util.Map;
import org.faultwright.procedure.Source;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Tag;

/** The documents that limits and codes come from, in a browser: a number at the step that leads to its words at the end. */
final class CardSources {
    private final Map<String, Integer> numbers = new LinkedHashMap<>();

    /** Adds the number of a source. */
    void cite(Tag into, Source source) {
        int number = numbers.computeIfAbsent(Wording.source(source), words -> numbers.size() + 1);
        into.space().link("source-" + number, "cited", "To source " + number).text("[" + number + "]");
    }

    void list(Tag into) {
        if (numbers.isEmpty()) {
            return;
        }
        into.say("h2", "", "Sources");
        numbers.forEach((words, number) -> into.add("p", "sourced").id("source-" + number).text("[" + number + "] " + words));
    }
}
