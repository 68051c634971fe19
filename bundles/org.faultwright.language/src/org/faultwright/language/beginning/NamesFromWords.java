/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.beginning;

import java.util.HashSet;
import java.util.Set;
import org.faultwright.analysis.CoinedName;
import org.faultwright.language.reference.LanguageReference;

/** Makes names, outcomes and titles of the language from the words in a table. */
final class NamesFromWords {
    private final Set<String> taken = new HashSet<>();

    /** A name that none before it had: {@code Head too cold} becomes {@code HeadTooCold}. */
    String name(String words, String otherwise) {
        String joined = CoinedName.of(words, true);
        String name = joined.isEmpty() || Character.isDigit(joined.charAt(0)) ? otherwise + joined : joined;
        String free = isFree(name) ? name : name + "1";
        for (int i = 2; !taken.add(free); i++) {
            free = name + i;
        }
        return free;
    }

    /** A word for an answer: {@code Very dark} becomes {@code veryDark}. */
    static String outcome(String words) {
        String joined = CoinedName.of(words, false);
        String word = joined.isEmpty() || Character.isDigit(joined.charAt(0)) ? "is" + joined : joined;
        return isFree(word) ? word : word + "1";
    }

    /** A text in quotation marks, on one line. */
    static String quoted(String words) {
        String plain = words.replaceAll("[\\p{Cntrl}\\s\\p{Cs}\\uFFFD]+", " ").strip().replace('\\', '/').replace('"', '\'');
        return '"' + plain + '"';
    }

    /** Whether the language does not use the word itself. */
    static boolean isFree(String word) {
        return !LanguageReference.words().contains(word) && !word.matches("R\\d+");
    }
}
