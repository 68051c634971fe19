/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.faultwright.procedure.SourceRange;
import org.faultwright.procedure.Written;
import org.faultwright.quantity.Limit;
import org.faultwright.quantity.Quantity;

/** Finds the place of words inside a part whose records keep no place of their own. */
final class SourceLocator {
    private final SourceRange within;
    private final String text;
    private int from;

    /** @param within where the words stand; they are asked for in reading order */
    SourceLocator(SourceRange within) {
        this.within = within;
        this.text = within.text();
    }

    /** The place of one of the quantities of a limit; absent when it cannot be told. */
    static Optional<SourceRange> of(Written<Limit> limit, int index) {
        SourceLocator words = new SourceLocator(limit.at());
        List<Quantity> ends = limit.value().quantities();
        Optional<SourceRange> place = Optional.empty();
        for (int i = 0; i <= index; i++) {
            place = words.next(ends.get(i).spelling());
        }
        return place;
    }

    /** Only what stands behind the next one of these words is searched from here on. */
    SourceLocator after(String keyword) {
        next(keyword);
        return this;
    }

    /** The next place of these words, however they are spaced; absent when they do not stand there. */
    Optional<SourceRange> next(String words) {
        if (words.isBlank()) {
            return Optional.empty();
        }
        String spaced = Arrays.stream(words.strip().split("\\s+")).map(Pattern::quote).collect(Collectors.joining("\\s*"));
        Matcher found = Pattern.compile("(?<![\\p{L}\\p{N}_.])" + spaced + "(?![\\p{L}\\p{N}_]|\\.[0-9])").matcher(text);
        if (!found.find(from)) {
            return Optional.empty();
        }
        from = found.end();
        return Optional.of(new SourceRange(within.source(), within.offset() + found.start(), found.end() - found.start()));
    }
}
