/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.table;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.faults.ShowingText;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;

/** Changes what one fault shows: entries are replaced where they stand, new ones go between those of the steps around them. */
final class ShownEntries {
    private static final int LONGEST_LINE = 100;

    private final Fault fault;
    private final ClauseText clauses;
    private final List<String> order;

    /** @param order the names of the steps, as the columns stand */
    ShownEntries(Fault fault, ClauseText clauses, List<String> order) {
        this.fault = fault;
        this.clauses = clauses;
        this.order = order;
    }

    /** @param wanted by the name of the step what is to stand behind it; empty to take the entry out */
    List<Fix.Edit> changed(Map<String, String> wanted) {
        List<Showing> leaving = new ArrayList<>();
        List<Fix.Edit> edits = new ArrayList<>();
        Map<String, String> added = new LinkedHashMap<>();
        wanted.forEach((step, words) -> {
            Optional<Showing> there = fault.shows().stream().filter(showing -> showing.step().text().equals(step)).findFirst();
            if (there.isPresent() && words.isEmpty()) {
                fault.shows().stream().filter(showing -> showing.step().text().equals(step)).forEach(leaving::add);
            } else if (there.isPresent()) {
                edits.add(replaced(there.get(), words));
            } else if (!words.isEmpty()) {
                added.put(step, step + " " + words);
            }
        });
        List<Showing> kept = fault.shows().stream().filter(showing -> !leaving.contains(showing)).toList();
        if (kept.isEmpty() && !leaving.isEmpty() && !added.isEmpty()) {
            Showing place = leaving.remove(0);
            edits.add(ClauseText.replaced(place.at(), String.join(", ", added.values())));
            added.clear();
        }
        edits.addAll(ShowingText.without(fault.written(), leaving::contains));
        edits.addAll(kept.isEmpty() ? first(added) : between(kept, added));
        return edits;
    }

    private static Fix.Edit replaced(Showing showing, String words) {
        int from = showing.possible().isEmpty() ? showing.step().at().end() : showing.possible().get(0).words().at().offset();
        SourceRange old = new SourceRange(showing.at().source(), from, showing.at().end() - from);
        return ClauseText.replaced(old, (showing.possible().isEmpty() ? " " : "") + words + ShowingText.remarks(old));
    }

    private List<Fix.Edit> first(Map<String, String> added) {
        if (added.isEmpty()) {
            return List.of();
        }
        String clause = "shows " + added.values().stream().collect(Collectors.joining(", "));
        Optional<Integer> cases = fault.cases().map(Written::at).map(SourceRange::end);
        return cases.map(end -> clauses.behind(fault.at(), end, clause)).or(() -> clauses.first(fault.at(), fault.name().at().end(), clause)).stream().toList();
    }

    private List<Fix.Edit> between(List<Showing> kept, Map<String, String> added) {
        List<Fix.Edit> edits = new ArrayList<>();
        Map<Integer, List<String>> byPlace = new LinkedHashMap<>();
        order.stream().filter(added::containsKey).forEach(step -> byPlace.computeIfAbsent(anchor(kept, step), place -> new ArrayList<>()).add(added.get(step)));
        byPlace.forEach((place, entries) -> edits.add(place < 0 ? clauses.inserted(kept.get(0).at().offset(), String.join(", ", entries) + ", ")
                : behind(kept.get(place).at(), entries)));
        return edits;
    }

    /** The last entry of a step that stands before this one; -1 where none does. */
    private int anchor(List<Showing> kept, String step) {
        for (int i = kept.size() - 1; i >= 0; i--) {
            if (order.indexOf(kept.get(i).step().text()) < order.indexOf(step)) {
                return i;
            }
        }
        return -1;
    }

    private Fix.Edit behind(SourceRange last, List<String> entries) {
        StringBuilder words = new StringBuilder();
        int column = last.source().lineText(last.source().line(last.end())).length();
        for (String entry : entries) {
            boolean breaks = column + entry.length() + 2 > LONGEST_LINE;
            words.append(breaks ? ",\n        " : ", ").append(entry);
            column = (breaks ? 8 : column + 2) + entry.length();
        }
        return clauses.inserted(last.end(), words.toString());
    }
}
