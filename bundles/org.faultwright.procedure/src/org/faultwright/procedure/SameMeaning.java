/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.procedure;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Compares parts of two documents without regard to where exactly they stand. */
public final class SameMeaning {
    /** Where the words of one place are in the other text. */
    public interface Places {
        /** Whether the second place is the first one moved. */
        boolean same(SourceRange before, SourceRange now);
    }

    /** What only a person reads: no path, no limit and no set-up depends on it. */
    private static final Set<String> WORDS = Set.of("title", "report", "hint", "source", "pictures");

    private final Places places;
    private final boolean wordsCount;

    private SameMeaning(Places places, boolean wordsCount) {
        this.places = places;
        this.wordsCount = wordsCount;
    }

    /** Whether two parts say the same, title, hint, report, source and pictures aside, wherever it stands. */
    public static boolean wordsAside(Object before, Object now) {
        return new SameMeaning((one, other) -> true, false).same(before, now);
    }

    /** Whether two parts are the same, with each place where it has to be. */
    public static boolean with(Places places, Object before, Object now) {
        return new SameMeaning(places, true).same(before, now);
    }

    private boolean same(Object before, Object now) {
        if (before instanceof SourceRange one && now instanceof SourceRange other) {
            return places.same(one, other);
        }
        if (before instanceof Record one && now instanceof Record other) {
            RecordShape shape = RecordShape.of(one.getClass());
            return shape.mayHoldPlaces() ? one.getClass() == other.getClass() && same(one, other, shape) : one.equals(other);
        }
        if (before instanceof Optional<?> one && now instanceof Optional<?> other) {
            return one.isPresent() == other.isPresent() && (one.isEmpty() || same(one.get(), other.get()));
        }
        if (before instanceof List<?> one && now instanceof List<?> other) {
            return same(one, other);
        }
        return Objects.equals(before, now);
    }

    private boolean same(Record before, Record now, RecordShape shape) {
        for (int i = 0; i < shape.size(); i++) {
            // the title of an example is its name
            boolean passed = !wordsCount && WORDS.contains(shape.name(i)) && !(shape.part(before, i) instanceof Name);
            if (!passed && !same(shape.part(before, i), shape.part(now, i))) {
                return false;
            }
        }
        return true;
    }

    private boolean same(List<?> before, List<?> now) {
        if (before.size() != now.size()) {
            return false;
        }
        for (int i = 0; i < before.size(); i++) {
            if (!same(before.get(i), now.get(i))) {
                return false;
            }
        }
        return true;
    }
}
