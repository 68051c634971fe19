/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.formatting;

import java.util.List;
import java.util.Set;

/** Puts neighbouring lines of one kind into columns: arrows below arrows, resolutions below resolutions. */
final class ColumnAlignment {
    private static final int WIDEST_GAP = 24;
    private static final List<String> OF_OUTCOMES = List.of("limit", "->");
    private static final List<String> OF_CODES = List.of("means");
    private static final List<String> OF_RANGES = List.of("resolution", "accuracy", "loading", "bandwidth", "true-rms");

    private ColumnAlignment() {
    }

    private static List<String> of(LayoutItem kind) {
        switch (kind) {
            case OUTCOME:
                return OF_OUTCOMES;
            case CODE:
                return OF_CODES;
            case RANGE:
                return OF_RANGES;
            default:
                return List.of();
        }
    }

    /** The column that a word begins in a line of that kind that has the columns given; empty when it begins none. */
    static String key(LayoutItem kind, SpacedToken word, Set<String> before) {
        String key = word.item() == LayoutItem.LIMIT ? "limit"
                : word.is("input") || word.is("burden") ? "loading" : word.keyword();
        return of(kind).contains(key) && !before.contains(key) ? key : "";
    }

    /** What stands between cells: more in the long lines of ranges. */
    static String gap(LayoutItem kind) {
        return kind == LayoutItem.RANGE ? "   " : " ";
    }

    static void align(List<LayoutLine> lines) {
        int from = 0;
        for (int to = 1; to <= lines.size(); to++) {
            if (to == lines.size() || !lines.get(to).lines(lines.get(to - 1))) {
                List<LayoutLine> run = lines.subList(from, to);
                of(run.get(0).kind()).forEach(key -> align(run.stream().filter(line -> line.has(key)).toList(), key));
                from = to;
            }
        }
    }

    private static void align(List<LayoutLine> run, String key) {
        int widest = run.stream().mapToInt(line -> line.start(key)).max().orElse(0);
        int narrowest = run.stream().mapToInt(line -> line.start(key)).min().orElse(0);
        boolean fits = run.stream().allMatch(line -> line.kind() == LayoutItem.RANGE
                || line.length() + widest - line.start(key) <= LayoutLine.LONGEST);
        if (fits && widest - narrowest <= WIDEST_GAP) {
            run.forEach(line -> line.widen(key, widest - line.start(key)));
        }
    }
}
