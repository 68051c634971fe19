/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.server;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What somebody types to find something: words or parts of words, all of them wanted, in any order; what stands in quotation marks is one.
 * Capitals and accents do not matter, as in the index of published cards.
 */
public final class WantedWords {
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"?|[^\\s\"]+");
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    private final List<String> words;

    private WantedWords(List<String> words) {
        this.words = words;
    }

    public static WantedWords of(String typed) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(typed);
        while (word.find()) {
            String plain = plain(word.group(1) == null ? word.group() : word.group(1)).strip().replaceAll("\\s+", " ");
            if (!plain.isEmpty() && !words.contains(plain)) {
                words.add(plain);
            }
        }
        return new WantedWords(List.copyOf(words));
    }

    /** One word as it stands, such as a name. */
    public static WantedWords exactly(String word) {
        return new WantedWords(List.of(plain(word)));
    }

    public boolean isEmpty() {
        return words.isEmpty();
    }

    /** Whether every word stands somewhere in these. */
    public boolean allIn(String text) {
        return allInPlain(plain(text));
    }

    boolean allInPlain(String plain) {
        return words.stream().allMatch(plain::contains);
    }

    /** Whether a heading holds some of the words and what stands below it the others. */
    boolean isCompletedBy(String heading, String plain) {
        return !allInPlain(heading) && words.stream().allMatch(word -> heading.contains(word) || plain.contains(word));
    }

    /** How many of the words stand in a text that is plain already. */
    int countIn(String plain) {
        int count = 0;
        for (String word : words) {
            count += plain.contains(word) ? 1 : 0;
        }
        return count;
    }

    /** Where the first of the words that stand in a text begins and how long it is, in UTF-16 units; nothing at 0 where none does. */
    public int[] firstIn(String text) {
        int[] origin = new int[text.length() * 4 + 1];
        StringBuilder plain = new StringBuilder();
        for (int at = 0; at < text.length(); at++) {
            for (char c : plain(text.substring(at, at + 1)).toCharArray()) {
                origin = plain.length() + 1 < origin.length ? origin : Arrays.copyOf(origin, origin.length * 2);
                origin[plain.length()] = at;
                plain.append(c);
            }
        }
        origin[plain.length()] = text.length();
        int first = -1;
        int length = 0;
        for (String word : words) {
            int at = plain.indexOf(word);
            if (at >= 0 && (first < 0 || at < first)) {
                first = at;
                length = word.length();
            }
        }
        return first < 0 ? new int[] {0, 0} : new int[] {origin[first], origin[first + length] - origin[first]};
    }

    /** Without capitals and accents, with plain spaces; what has its own sign for a unit as the letter that it is. */
    static String plain(String text) {
        String lower = null;
        for (int at = 0; at < text.length(); at++) {
            char c = text.charAt(at);
            if (c >= 128) {
                lower = MARKS.matcher(Normalizer.normalize(text, Normalizer.Form.NFKD)).replaceAll("");
                break;
            }
        }
        return (lower == null ? text : lower).toLowerCase(Locale.ROOT).replace('\t', ' ').replace('\u00a0', ' ');
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WantedWords wanted && wanted.words.equals(words);
    }

    @Override
    public int hashCode() {
        return words.hashCode();
    }

    @Override
    public String toString() {
        return String.join(" ", words);
    }
}
