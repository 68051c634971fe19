/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.language.reference;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.faultwright.analysis.NearNames;

/** The reference of the language: the pages that the help shows, and the same entry by entry. */
public final class LanguageReference {
    private static final List<String> PAGES = List.of("files", "bench", "steps", "clauses", "quantities", "faults");

    private LanguageReference() {
    }

    /**
     * One page.
     *
     * @param id       its file beside this class, without the ending
     * @param title    its first heading
     * @param markdown the whole page
     */
    public record Page(String id, String title, String markdown) {
        /** Its entries in their order. */
        public List<ReferenceEntry> entries() {
            return Arrays.stream(markdown.split("(?m)^## ")).skip(1).map(ReferenceEntry::read).toList();
        }
    }

    /** Every page in reading order. */
    public static List<Page> pages() {
        return Loaded.PAGES_READ;
    }

    /** Every entry of every page. */
    public static List<ReferenceEntry> entries() {
        return Loaded.ENTRIES;
    }

    /**
     * What there is about a word: the entry that it is the head of, otherwise every entry whose form has it, otherwise
     * every entry with it in the heading, such as {@code limits}.
     */
    public static List<ReferenceEntry> about(String word) {
        return Stream.<Predicate<ReferenceEntry>>of(entry -> entry.isHeadedBy(word), entry -> entry.words().contains(word),
                entry -> entry.isAbout(word)).map(wanted -> entries().stream().filter(wanted).toList())
                .filter(found -> !found.isEmpty()).findFirst().orElse(List.of());
    }

    /** Every word that some form in the reference has. */
    public static Set<String> words() {
        Set<String> words = new TreeSet<>();
        entries().forEach(entry -> words.addAll(entry.words()));
        return words;
    }

    /** Words near one that the reference does not have, nearest first. */
    public static List<String> near(String word) {
        return NearNames.of(word, List.copyOf(words()));
    }

    private static final class Loaded {
        static final List<Page> PAGES_READ = PAGES.stream().map(Loaded::page).toList();
        static final List<ReferenceEntry> ENTRIES = PAGES_READ.stream().map(Page::entries).flatMap(List::stream).toList();

        private static Page page(String id) {
            try (InputStream page = LanguageReference.class.getResourceAsStream(id + ".md")) {
                if (page == null) {
                    throw new IllegalStateException("the page " + id + ".md of the reference is missing from the class path");
                }
                String markdown = new String(page.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n");
                String title = Stream.of(markdown.split("\n")).findFirst().orElse(id).replaceFirst("^# ", "");
                return new Page(id, title, markdown);
            } catch (IOException unreadable) {
                throw new UncheckedIOException("the page " + id + ".md of the reference cannot be read", unreadable);
            }
        }
    }
}
