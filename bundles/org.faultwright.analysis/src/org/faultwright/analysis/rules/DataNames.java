/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.rules;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.faultwright.analysis.paths.InlinedStep;
import org.faultwright.procedure.Scope;
import org.faultwright.procedure.Written;

/** The words by which a question speaks of data, and those of the note read with it. It compares words alone and understands none of them. */
final class DataNames {
    /** Words that name no data, or all of them. */
    private static final Set<String> EMPTY = Set.of("customer", "customers", "user", "users", "owner", "owners", "the", "and", "all", "own", "his", "her", "their",
            "with", "from", "for", "what", "stored", "that", "this", "are", "has", "have");
    private static final Set<String> EVERYTHING = Set.of("data", "all", "everything", "anything", "content", "contents", "memory", "stored", "this", "these", "that");
    private static final int SHORTEST = 3;
    /** Below that, words of one beginning are two things. */
    private static final int STEM = 4;

    private final List<String> asked;
    private final List<String> told;

    private DataNames(List<String> asked, List<String> told) {
        this.asked = asked;
        this.told = told;
    }

    static DataNames of(InlinedStep question, Scope scope) {
        return new DataNames(words(Stream.concat(Stream.of(question.step().title()), question.step().frame().hint().stream().map(Written::value))),
                words(question.notes().stream().flatMap(name -> scope.note(name).stream())
                        .flatMap(note -> Stream.of(note.hazard(), note.consequence(), note.avoid()))));
    }

    /** Whether the question itself names what is erased. */
    boolean names(String erased) {
        return shares(asked, erased);
    }

    /** Whether the question may mean it: it names it, or all there is, or its note does. */
    boolean mayMean(String erased) {
        return names(erased) || asked.stream().anyMatch(EVERYTHING::contains) || shares(told, erased);
    }

    private static boolean shares(List<String> words, String erased) {
        return words(Stream.of(erased)).stream().filter(word -> !EMPTY.contains(word)).anyMatch(word -> words.stream().anyMatch(other -> isSame(word, other)));
    }

    private static boolean isSame(String one, String other) {
        return one.equals(other) || Math.min(one.length(), other.length()) >= STEM && (one.startsWith(other) || other.startsWith(one));
    }

    private static List<String> words(Stream<String> texts) {
        return texts.flatMap(text -> Arrays.stream(text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+"))).filter(word -> word.length() >= SHORTEST).toList();
    }
}
