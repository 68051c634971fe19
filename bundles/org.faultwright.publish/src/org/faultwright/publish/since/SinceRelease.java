/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.faultwright.publish.Publication;
import org.faultwright.publish.tree.TreeJson;

/**
 * What changed in one procedure since its tree was published earlier.
 *
 * @param changes      in the order of {@link Change.Area}
 * @param sameText     whether the digest of the text and its libraries is still the same
 * @param sameRevision whether both state the same number of a revision
 */
public record SinceRelease(EarlierTree earlier, List<Change> changes, boolean sameText, boolean sameRevision) {
    public static SinceRelease of(EarlierTree earlier, Publication publication) {
        return new SinceRelease(earlier, TreeComparison.of(earlier.tree(), TreeJson.tree(publication)),
                earlier.digest().equals(publication.digest()),
                earlier.revisionNumber().isPresent() && earlier.revisionNumber().equals(publication.procedure()
                        .revision().map(revision -> String.valueOf(revision.number()))));
    }

    /** Such as {@code 2 changes (Limits and readings 1, Ways on 1).} */
    public String inShort() {
        if (changes.isEmpty()) {
            return sameText ? "Unchanged, letter by letter."
                    : "Nothing that a card or tree says has changed; comments, layout or unused words have.";
        }
        Map<Change.Area, Long> counted = changes.stream()
                .collect(Collectors.groupingBy(Change::area, TreeMap::new, Collectors.counting()));
        return (changes.size() == 1 ? "1 change" : changes.size() + " changes") + " (" + counted.entrySet().stream()
                .map(entry -> entry.getKey().title() + " " + entry.getValue()).collect(Collectors.joining(", ")) + ").";
    }

    /** Whether a reader could take the new text for the old one, because it has changed under the same revision. */
    public boolean hidesAChange() {
        return sameRevision && !changes.isEmpty();
    }
}
