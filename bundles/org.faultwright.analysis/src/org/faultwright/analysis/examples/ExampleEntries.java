/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.examples;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.PathStep;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;

/** The entries of an example in the order in which its steps are come to. */
public final class ExampleEntries {
    private static final int LINE = 100;

    private ExampleEntries() {
    }

    /**
     * Where no comment stands among the entries they are written anew in the order of the path; otherwise only what is
     * added and left out is touched.
     *
     * @param added   by the name of the step
     * @param leaving entries that are no longer asked for
     */
    public static List<Fix.Edit> rewritten(Example example, List<PathStep> path, Map<String, String> added, List<Showing> leaving) {
        List<Showing> shows = example.written();
        if (shows.isEmpty()) {
            return ShowingText.adding(example, String.join(", ", added.values())).stream().toList();
        }
        if (added.isEmpty() && leaving.containsAll(shows)) {
            return ShowingText.without(example, leaving::contains);
        }
        SourceRange first = shows.get(0).at();
        SourceRange span = new SourceRange(first.source(), first.offset(),
                shows.get(shows.size() - 1).at().end() - first.offset());
        if (span.text().contains("//") || span.text().contains("/*")) {
            List<Fix.Edit> edits = new ArrayList<>(ShowingText.without(shows, leaving::contains));
            if (!added.isEmpty()) {
                edits.add(new Fix.Edit(new SourceRange(first.source(), first.offset(), 0),
                        String.join(", ", added.values()) + (leaving.containsAll(shows) ? "" : ", ")));
            }
            return edits;
        }
        return List.of(new Fix.Edit(span, wrapped(inOrder(shows, path, added, leaving))));
    }

    private static List<String> inOrder(List<Showing> shows, List<PathStep> path, Map<String, String> added,
            List<Showing> leaving) {
        List<Showing> open = new ArrayList<>(shows);
        open.removeAll(leaving);
        List<String> entries = new ArrayList<>();
        Set<String> said = new HashSet<>();
        for (PathStep step : path) {
            Optional<Showing> next = open.stream().filter(showing -> showing.step().text().equals(step.step())).findFirst();
            if (next.isPresent()) {
                open.remove(next.get());
                entries.add(next.get().at().text());
            } else if (added.containsKey(step.step()) && said.add(step.step())) {
                entries.add(added.get(step.step()));
            }
        }
        open.forEach(showing -> entries.add(showing.at().text()));
        return entries;
    }

    static String wrapped(List<String> entries) {
        StringBuilder text = new StringBuilder();
        int column = 0;
        for (String entry : entries) {
            if (text.length() > 0) {
                boolean breaks = column + entry.length() > LINE;
                text.append(breaks ? ",\n        " : ", ");
                column = breaks ? 0 : column + 2;
            }
            text.append(entry);
            column += entry.length();
        }
        return text.toString();
    }
}
