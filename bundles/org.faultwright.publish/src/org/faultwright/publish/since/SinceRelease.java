/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.analysis.compare.ProcedureComparison;
import org.faultwright.procedure.ContentDigest;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Revision;
import org.faultwright.publish.page.PlainText;

/**
 * What changed in one procedure since an earlier revision of it.
 *
 * @param now          the later revision
 * @param differences  in the order of {@link Difference.Kind}
 * @param sameText     whether the digest of the text and its libraries is still the same
 * @param sameRevision whether both state the same number of a revision
 */
public record SinceRelease(Procedure earlier, Procedure now, List<Difference> differences, boolean sameText, boolean sameRevision) {
    private static final int SHORT_DIGEST = 12;

    public static SinceRelease of(Procedure earlier, Procedure now) {
        Optional<Integer> number = earlier.revision().map(Revision::number);
        return new SinceRelease(earlier, now, ProcedureComparison.of(earlier, now),
                ContentDigest.of(earlier).equals(ContentDigest.of(now)),
                number.isPresent() && number.equals(now.revision().map(Revision::number)));
    }

    /** What it was called, where it is called otherwise now. */
    public Optional<String> renamedFrom() {
        String name = earlier.name().text();
        return name.equals(now.name().text()) ? Optional.empty() : Optional.of(name);
    }

    /** Such as {@code 2 differences (Limits and readings 1, Where outcomes lead 1).} */
    public String inShort() {
        if (differences.isEmpty()) {
            return sameText ? "Unchanged, letter by letter."
                    : "Nothing has changed that the procedure says; comments, layout or unused words have.";
        }
        Map<Difference.Kind, Long> counted = differences.stream()
                .collect(Collectors.groupingBy(Difference::kind, TreeMap::new, Collectors.counting()));
        return (differences.size() == 1 ? "1 difference" : differences.size() + " differences") + " (" + counted.entrySet().stream()
                .map(entry -> entry.getKey().title() + " " + entry.getValue()).collect(Collectors.joining(", ")) + ").";
    }

    /** Whether a reader could take the new text for the old one, because it has changed under the same revision. */
    public boolean hidesAChange() {
        return sameRevision && !differences.isEmpty();
    }

    /** Such as {@code Revision 4, released 2026-02-09 by T. Aldous, digest 0f00ba4b5a11}. */
    public static String record(Procedure procedure) {
        String digest = ContentDigest.of(procedure).substring(0, SHORT_DIGEST);
        return PlainText.line(procedure.revision().map(revision -> "Revision " + revision.number() + ", "
                + revision.status().name().toLowerCase(Locale.ROOT) + revision.dated().map(day -> " " + day).orElse("")
                + revision.by().map(by -> " by " + by).orElse("")).orElse("No revision, draft")) + ", digest " + digest;
    }
}
