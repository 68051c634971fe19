/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.List;
import java.util.stream.Collectors;
import org.faultwright.procedure.Declaration;

/** Names in a row, for a sentence. */
public final class Listing {
    private Listing() {
    }

    /** Such as {@code A}, {@code A and B} or {@code A, B and C}. */
    public static String and(List<String> words) {
        return joined(words, " and ");
    }

    /** Such as {@code A, B or C}. */
    static String or(List<String> words) {
        return joined(words, " or ");
    }

    /** The names of what is declared, as {@link #and}. */
    static String names(List<? extends Declaration> declared) {
        return and(declared.stream().map(one -> one.name().text()).toList());
    }

    /** The first of them, and how many more there are. */
    static String some(List<String> words, int most) {
        return words.size() <= most ? and(words)
                : words.stream().limit(most).collect(Collectors.joining(", ")) + " and " + (words.size() - most) + " more";
    }

    private static String joined(List<String> words, String last) {
        int end = words.size() - 1;
        return end < 1 ? String.join("", words) : String.join(", ", words.subList(0, end)) + last + words.get(end);
    }
}
