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

    /** Which names of where outcomes lead mean the same, though they are written otherwise. */
    public interface Targets {
        Targets AS_WRITTEN = (before, now) -> false;

        boolean alike(Name before, Name now);
    }

    /** What only a person reads: no path, no limit and no set-up depends on it. */
    private static final Set<String> WORDS = Set.of("title", "report", "hint", "source", "pictures");

    /** What is left aside of a record, by the name of its part. */
    private interface Aside {
        Aside NOTHING = (record, part) -> false;
        // the title of an example is its name
        Aside OF_WORDS = (record, part) -> WORDS.contains(part) && !(record instanceof Example);
        Aside OF_LIMITS = (record, part) -> OF_WORDS.of(record, part)
                || part.equals("limit") && (record instanceof Step.Expectation || record instanceof Step.Row);
        Aside OF_TARGETS = (record, part) -> OF_WORDS.of(record, part) || part.equals("target") && record instanceof Outcome;

        boolean of(Record record, String part);
    }

    private final Places places;
    private final Aside aside;
    private final Targets targets;

    private SameMeaning(Places places, Aside aside, Targets targets) {
        this.places = places;
        this.aside = aside;
        this.targets = targets;
    }

    /** Whether two parts say the same, title, hint, report, source and pictures aside, wherever it stands. */
    public static boolean wordsAside(Object before, Object now) {
        return wordsAside(before, now, Targets.AS_WRITTEN);
    }

    /** The same, and outcomes that lead to what is said to be alike. */
    public static boolean wordsAside(Object before, Object now, Targets targets) {
        return new SameMeaning((one, other) -> true, Aside.OF_WORDS, targets).same(before, now);
    }

    /** The same, the limits aside that readings are held against, though not that there are any. */
    public static boolean limitsAside(Object before, Object now, Targets targets) {
        return new SameMeaning((one, other) -> true, Aside.OF_LIMITS, targets).same(before, now);
    }

    /** The same as words aside, and where outcomes lead aside. */
    public static boolean targetsAside(Object before, Object now) {
        return new SameMeaning((one, other) -> true, Aside.OF_TARGETS, Targets.AS_WRITTEN).same(before, now);
    }

    /** Whether two parts are the same, with each place where it has to be. */
    public static boolean with(Places places, Object before, Object now) {
        return new SameMeaning(places, Aside.NOTHING, Targets.AS_WRITTEN).same(before, now);
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
            Object one = shape.part(before, i);
            Object other = shape.part(now, i);
            if (!aside.of(before, shape.name(i)) && !same(one, other) && !leadAlike(before, one, other)) {
                return false;
            }
        }
        return true;
    }

    /** The names of an outcome and of its bound are where they lead. */
    private boolean leadAlike(Record of, Object before, Object now) {
        Object one = of instanceof Outcome && before instanceof Optional<?> target ? target.orElse(null) : before;
        Object other = of instanceof Outcome && now instanceof Optional<?> target ? target.orElse(null) : now;
        return (of instanceof Outcome || of instanceof Outcome.Repeat) && one instanceof Name was && other instanceof Name is && targets.alike(was, is);
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
