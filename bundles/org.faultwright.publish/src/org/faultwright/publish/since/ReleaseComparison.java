/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.faultwright.analysis.compare.MatchedProcedures;
import org.faultwright.procedure.Procedure;
import org.faultwright.publish.page.PlainText;

/**
 * Two releases held against each other. What several procedures tell alike, such as a change of a library, is told once.
 *
 * @param compared each procedure that both have
 * @param told     what changed, by the procedures that it is said of, those most procedures share first
 * @param fresh    titles of those without an earlier text
 * @param gone     titles, equipment and revisions of those that are not there any more
 */
public record ReleaseComparison(List<SinceRelease> compared, Map<String, List<ToldDifference>> told, List<String> fresh, List<String> gone) {
    private static final int MOST_NAMED = 3;

    public static ReleaseComparison of(List<Procedure> then, List<Procedure> now) {
        MatchedProcedures same = MatchedProcedures.of(then, now);
        boolean one = then.size() == 1 && now.size() == 1;
        List<SinceRelease> compared = now.stream().flatMap(procedure -> (one ? Optional.of(then.get(0)) : same.earlier(procedure)).stream()
                .map(was -> SinceRelease.of(was, procedure))).toList();
        return new ReleaseComparison(compared, together(compared), one ? List.of() : now.stream().filter(procedure -> same.earlier(procedure).isEmpty()).map(ReleaseComparison::title).toList(),
                one ? List.of() : same.gone().stream().map(ReleaseComparison::whole).toList());
    }

    private static Map<String, List<ToldDifference>> together(List<SinceRelease> compared) {
        Map<ToldDifference, Set<String>> bySaying = new LinkedHashMap<>();
        compared.forEach(since -> ToldDifference.of(since, step -> Optional.empty()).forEach(told ->
                bySaying.computeIfAbsent(told, first -> new LinkedHashSet<>()).add(title(since.now()))));
        Map<Set<String>, List<ToldDifference>> byProcedures = new LinkedHashMap<>();
        bySaying.entrySet().stream().sorted((one, other) -> other.getValue().size() - one.getValue().size())
                .forEach(entry -> byProcedures.computeIfAbsent(entry.getValue(), first -> new ArrayList<>()).add(entry.getKey()));
        Map<String, List<ToldDifference>> named = new LinkedHashMap<>();
        byProcedures.forEach((titles, told) -> {
            told.sort((one, other) -> one.kind() == other.kind() ? one.loss().compareTo(other.loss()) : one.kind().compareTo(other.kind()));
            named.merge(names(titles, compared.size()), told, (some, more) -> {
                some.addAll(more);
                return some;
            });
        });
        return named;
    }

    private static String names(Set<String> titles, int all) {
        return titles.size() == all && all > 1 ? "All " + all + " procedures" : titles.size() <= MOST_NAMED ? String.join("; ", titles)
                : titles.size() + " procedures: " + String.join("; ", titles);
    }

    /** Whether nothing differs, came or went. */
    public boolean isSame() {
        return told.isEmpty() && fresh.isEmpty() && gone.isEmpty();
    }

    /** Whether these are two procedures rather than two revisions of one. */
    public boolean isOfTwoProcedures() {
        return compared.size() == 1 && MatchedProcedures.of(List.of(compared.get(0).earlier()), List.of(compared.get(0).now())).earlier(compared.get(0).now()).isEmpty();
    }

    public static String title(Procedure procedure) {
        return PlainText.line(procedure.title().isBlank() ? procedure.name().text() : procedure.title());
    }

    private static String whole(Procedure procedure) {
        return title(procedure) + procedure.equipment().map(unit -> ", " + PlainText.line(unit.title())).orElse("")
                + procedure.revision().map(revision -> ", revision " + revision.number() + ", " + revision.status().name().toLowerCase(Locale.ROOT)).orElse("");
    }
}
