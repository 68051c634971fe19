/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.card;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.faultwright.procedure.Source;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.Fo;

/** The documents that limits and codes come from: a number at the step, the words once at the end, what is of one document together. */
final class Citations {
    private static final String BEFORE_PLACE = ", ";

    private final Map<String, Integer> numbers = new LinkedHashMap<>();
    private final Map<String, List<Cited>> documents = new LinkedHashMap<>();

    /** @param place within the document, such as {@code page 9}; empty where the text names none @param words all of it */
    private record Cited(int number, String place, String words) {
    }

    /** Adds the number of a source. */
    void cite(Fo into, Source source) {
        int number = numbers.computeIfAbsent(Wording.source(source), words -> {
            int next = numbers.size() + 1;
            // what stands behind the last comma is the place, as in "leaflet, page 9"
            int comma = source.document().lastIndexOf(BEFORE_PLACE);
            Source whole = comma < 0 ? source : new Source(source.document().substring(0, comma), source.dated(), source.at());
            documents.computeIfAbsent(Wording.source(whole), first -> new ArrayList<>())
                    .add(new Cited(next, comma < 0 ? "" : source.document().substring(comma + BEFORE_PLACE.length()), words));
            return next;
        });
        into.add("inline", "font-size", "7pt", "baseline-shift", "2.4pt", "line-height", "0pt")
                .verbatim("\u00A0[" + number + "]");
    }

    void list(Fo into) {
        if (!numbers.isEmpty()) {
            Paint.heading(into, "Sources");
            documents.forEach((document, cited) -> {
                if (cited.size() > 1 && cited.stream().noneMatch(one -> one.place().isEmpty())) {
                    together(line(into), document, cited);
                } else {
                    cited.forEach(one -> line(into).verbatim("[" + one.number() + "]\u00A0").text(one.words()));
                }
            });
        }
    }

    private static void together(Fo line, String document, List<Cited> cited) {
        line.text(document + ": ");
        for (int i = 0; i < cited.size(); i++) {
            line.verbatim("[" + cited.get(i).number() + "]\u00A0").whole(cited.get(i).place()).verbatim(i + 1 < cited.size() ? ", " : "");
        }
    }

    private static Fo line(Fo into) {
        return into.add("block", "start-indent", "6mm", "text-indent", "-6mm", "keep-together.within-column", "always");
    }
}
