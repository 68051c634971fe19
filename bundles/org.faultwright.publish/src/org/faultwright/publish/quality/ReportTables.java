/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.quality;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.analysis.quality.QaSummary;
import org.faultwright.publish.page.Tag;

/** Words and tables that the parts of the report share. */
final class ReportTables {
    /** Of a list in a sentence, at most so many are named. */
    private static final int MOST_NAMED = 16;

    private static final Set<String> NARROW = Set.of("Line", "Severity", "Times", "Digest");

    private ReportTables() {
    }

    /** A table with a heading for each column. @return its body; a column whose name begins with What is wide */
    static Tag table(Tag section, String style, List<String> columns) {
        Tag table = section.add("table", "list" + (style.isEmpty() ? "" : " " + style));
        Tag head = table.add("thead").add("tr");
        for (String column : columns) {
            boolean wide = column.equals("Fault") || column.equals("Procedure") || column.startsWith("What");
            boolean last = column.equals("Decision");
            head.add("th", wide ? "wide" : last ? "last" : NARROW.contains(column) ? "narrow" : "").set("scope", "col").text(column);
        }
        return table.add("tbody");
    }

    /** A row with its first cell as heading. */
    static Tag row(Tag rows, String heading, String... cells) {
        Tag row = rows.add("tr");
        row.add("th").set("scope", "row").text(heading);
        for (String cell : cells) {
            row.say("td", "", cell);
        }
        return row;
    }

    static String counted(Map<String, Integer> counts) {
        return counts.entrySet().stream().map(entry -> entry.getKey() + " " + entry.getValue() + "\u00D7")
                .collect(Collectors.joining(", "));
    }

    static String listed(List<String> names) {
        return names.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
                + (names.size() > MOST_NAMED ? " and " + (names.size() - MOST_NAMED) + " more" : "");
    }

    /** Such as {@code all 12} or {@code 9 of 12}. */
    static String share(QaSummary.Share share) {
        return share.all() == 0 ? "none" : share.some() == share.all() ? "all " + share.all() : share.toString();
    }
}
