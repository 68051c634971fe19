/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a table can be of, and what its columns hold. */
public enum TableKind {
    CODES("A table of codes", part("code", true, "error", "error code", "fault code", "blinks", "display"),
            part("meaning", true, "description", "text", "cause", "what it means")),
    FAULTS("A fault table", part("fault", true, "cause", "what is broken", "defect"), part("cases", false, "count", "number", "how often"),
            part("remedy", false, "repair", "what puts it right", "action")),
    STEPS("A list of steps", part("step", true, "what to do", "test", "check", "action", "description"), part("kind", false, "type"),
            part("time", false, "minutes", "takes", "duration"), part("expects", false, "limit", "nominal", "expected", "value", "should be"),
            part("at", false, "where", "point", "place", "test point")),
    RANGES("An instrument's ranges", part("quantity", true, "function", "kind", "what"), part("up to", true, "range", "full scale", "to"),
            part("from", false, "lowest"), part("resolution", false, "digit", "step"), part("accuracy", true, "error", "uncertainty"),
            part("input", false, "input resistance", "load"));

    /**
     * What a column can hold.
     *
     * @param name     the heading that says so
     * @param isNeeded whether nothing can be read without it
     * @param also     other headings that mean it
     */
    public record Part(String name, boolean isNeeded, List<String> also) {
    }

    private final String title;
    private final List<Part> parts;

    TableKind(String title, Part... parts) {
        this.title = title;
        this.parts = List.of(parts);
    }

    private static Part part(String name, boolean isNeeded, String... also) {
        return new Part(name, isNeeded, List.of(also));
    }

    public String title() {
        return title;
    }

    public List<Part> parts() {
        return parts;
    }

    /** Which column holds which part, as its headings say; the name of the part first, then what else it is called. */
    public Map<String, Integer> columns(HeadedTable table) {
        Map<String, Integer> columns = new LinkedHashMap<>();
        parts.forEach(part -> Optional.of(table.column(part.name())).filter(at -> at >= 0).ifPresent(at -> columns.put(part.name(), at)));
        for (Part part : parts) {
            if (!columns.containsKey(part.name())) {
                part.also().stream().map(table::column).filter(at -> at >= 0 && !columns.containsValue(at)).findFirst()
                        .ifPresent(at -> columns.put(part.name(), at));
            }
        }
        return columns;
    }

    /**
     * The columns as their headings say, some of them chosen.
     *
     * @param chosen by the name of a part, the heading of its column
     * @throws UnusableTable where there is no such part or column
     */
    public Map<String, Integer> columns(HeadedTable table, Map<String, String> chosen) throws UnusableTable {
        Map<String, Integer> columns = columns(table);
        for (Map.Entry<String, String> one : chosen.entrySet()) {
            String part = one.getKey().strip().toLowerCase(Locale.ROOT);
            if (parts.stream().noneMatch(known -> known.name().equals(part))) {
                throw new UnusableTable("Nothing in such a table is called \"" + one.getKey() + "\"; a column can hold "
                        + String.join(", ", parts.stream().map(known -> '"' + known.name() + '"').toList()) + ".");
            }
            int at = needed(table, one.getValue().strip());
            columns.values().removeIf(other -> other == at);
            columns.put(part, at);
        }
        return columns;
    }

    private static int needed(HeadedTable table, String heading) throws UnusableTable {
        int column = table.column(heading);
        if (column < 0) {
            throw new UnusableTable("The table has no column \"" + heading + "\"; its headings are " + headings(table) + ".");
        }
        return column;
    }

    /** @throws UnusableTable where a column is missing that nothing can be read without */
    void check(HeadedTable table, Map<String, Integer> columns) throws UnusableTable {
        for (Part part : parts) {
            if (part.isNeeded() && !columns.containsKey(part.name())) {
                throw new UnusableTable("The table has no column \"" + part.name() + "\"; its headings are " + headings(table) + ".");
            }
        }
    }

    private static String headings(HeadedTable table) {
        return String.join(", ", table.headings().stream().map(one -> '"' + one + '"').toList());
    }
}
