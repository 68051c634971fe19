/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.faultwright.analysis.Fix;
import org.faultwright.analysis.Remarks;
import org.faultwright.procedure.Example;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Showing;
import org.faultwright.procedure.SourceRange;

/** Adds entries to a list of what steps show and takes them out again, commas and all; remarks among them stay. */
public final class ShowingText {
    private static final String SHOWS = "shows";

    private ShowingText() {
    }

    /** Behind the last entry of an example, or as its first; absent where its text is broken. */
    public static Optional<Fix.Edit> adding(Example example, String entry) {
        if (!example.written().isEmpty()) {
            return Optional.of(behind(example.written(), entry));
        }
        if (example.variation()) {
            int behind = example.of().map(Name::at).orElse(example.title().at()).end();
            return Optional.of(new Fix.Edit(new SourceRange(example.at().source(), behind, 0), " " + entry));
        }
        int brace = example.at().text().indexOf('{', Math.max(0, example.title().at().end() - example.at().offset()));
        return brace < 0 ? Optional.empty() : Optional.of(new Fix.Edit(
                new SourceRange(example.at().source(), example.at().offset() + brace + 1, 0), "\n    " + entry));
    }

    /** Behind the last of these entries. */
    static Fix.Edit behind(List<Showing> entries, String entry) {
        SourceRange last = entries.get(entries.size() - 1).at();
        return new Fix.Edit(new SourceRange(last.source(), last.end(), 0), ", " + entry);
    }

    /** Takes entries out of an example. A variation that has no title and says nothing without them goes as a whole. */
    public static List<Fix.Edit> without(Example example, Predicate<Showing> leaving) {
        List<Showing> written = example.written();
        boolean nothingLeft = example.variation() && !example.isTitled() && !written.isEmpty() && written.stream().allMatch(leaving)
                && example.of().isEmpty() && example.writtenEnd().isEmpty() && example.within().isEmpty();
        return nothingLeft ? List.of(without(example)) : without(written, leaving);
    }

    /** Takes a variation out with the blanks and the line end before it; remarks in it stay. */
    public static Fix.Edit without(Example variation) {
        SourceRange at = variation.at();
        String text = at.source().content();
        int from = withoutBlanksBefore(text, at.offset());
        String behind = text.substring(at.end()).replaceFirst("^[ \t]+", "");
        boolean ownLine = from > 0 && isLineEnd(text.charAt(from - 1)) && !behind.isEmpty() && isLineEnd(behind.charAt(0));
        if (ownLine) {
            from -= from > 1 && text.charAt(from - 2) == '\r' ? 2 : 1;
        } else {
            from = at.offset();
        }
        return new Fix.Edit(new SourceRange(at.source(), from, at.end() - from), remarks(text, from, at.end()));
    }

    /** Takes entries out, each with the comma that parts it from a neighbour, or with its word {@code shows}. */
    public static List<Fix.Edit> without(List<Showing> entries, Predicate<Showing> leaving) {
        List<Fix.Edit> edits = new ArrayList<>();
        clauses(entries).forEach(clause -> edits.addAll(withoutInClause(clause, leaving)));
        return edits;
    }

    /** The entries that stand in one list each: in a fault the word {@code shows} may come again. */
    private static List<List<Showing>> clauses(List<Showing> entries) {
        List<List<Showing>> clauses = new ArrayList<>();
        for (int i = 0; i < entries.size(); i++) {
            if (i == 0 || between(entries.get(i - 1).at(), entries.get(i).at()).contains(SHOWS)) {
                clauses.add(new ArrayList<>());
            }
            clauses.get(clauses.size() - 1).add(entries.get(i));
        }
        return clauses;
    }

    private static String between(SourceRange one, SourceRange next) {
        return Remarks.blanked(one.source().content().substring(one.end(), Math.max(one.end(), next.offset())));
    }

    private static List<Fix.Edit> withoutInClause(List<Showing> clause, Predicate<Showing> leaving) {
        List<Fix.Edit> edits = new ArrayList<>();
        int kept = -1;
        for (int i = 0; i < clause.size(); i++) {
            if (!leaving.test(clause.get(i))) {
                kept = i;
                continue;
            }
            int first = i;
            while (i + 1 < clause.size() && leaving.test(clause.get(i + 1))) {
                i++;
            }
            int from = clause.get(first).at().offset();
            int to = clause.get(i).at().end();
            String text = clause.get(i).at().source().content();
            if (i + 1 < clause.size()) {
                to = behindComma(text, to, clause.get(i + 1).at().offset());
                from = to < text.length() && isLineEnd(text.charAt(to)) ? withoutBlanksBefore(text, from) : from;
            } else {
                from = kept >= 0 ? clause.get(kept).at().end() : keyword(clause.get(first).at());
                from = kept < 0 && to < text.length() && isLineEnd(text.charAt(to)) ? withoutBlanksBefore(text, from) : from;
            }
            edits.add(new Fix.Edit(new SourceRange(clause.get(first).at().source(), from, to - from), remarks(text, from, to)));
        }
        return edits;
    }

    /** The remarks that stay of entries that are replaced or taken out. */
    public static String remarks(SourceRange stretch) {
        return remarks(stretch.source().content(), stretch.offset(), stretch.end());
    }

    private static String remarks(String text, int from, int to) {
        String kept = Remarks.in(text.substring(from, to)).stream().map(remark -> " " + remark + (remark.startsWith("//") ? "\n        " : ""))
                .collect(Collectors.joining());
        return to < text.length() && isLineEnd(text.charAt(to)) ? kept.stripTrailing() : kept;
    }

    /** Behind the comma and the blanks that follow, but on the same line. */
    private static int behindComma(String text, int from, int next) {
        int comma = from + Remarks.blanked(text.substring(from, Math.max(from, next))).indexOf(',');
        comma = comma < from ? -1 : comma;
        int to = comma < 0 || comma >= next ? next : comma + 1;
        while (to < next && (text.charAt(to) == ' ' || text.charAt(to) == '\t')) {
            to++;
        }
        return to;
    }

    private static boolean isLineEnd(char c) {
        return c == '\n' || c == '\r';
    }

    private static int withoutBlanksBefore(String text, int offset) {
        int from = offset;
        while (from > 0 && (text.charAt(from - 1) == ' ' || text.charAt(from - 1) == '\t')) {
            from--;
        }
        return from;
    }

    /** Where the word before a list begins, if one stands there. */
    private static int keyword(SourceRange first) {
        String before = Remarks.blanked(first.source().content().substring(0, first.offset())).stripTrailing();
        return before.endsWith(SHOWS) ? before.length() - SHOWS.length() : first.offset();
    }
}
