/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.workbench.help;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.eclipse.core.runtime.ILog;
import org.faultwright.analysis.RuleHeader;
import org.faultwright.analysis.checking.RuleIndex;
import org.faultwright.analysis.checking.RulePages;
import org.faultwright.language.reference.LanguageReference;
import org.faultwright.language.server.WantedWords;

/** The pages of the help: our own under {@code help}, the reference of the language, then one for each rule. */
public final class HelpTopics {
    public static final String FIRST = "first-steps";

    /** @param id the page's file name without its ending, or a rule's id */
    record Topic(String id, String title) {
    }

    private static final List<Topic> OWN = List.of(new Topic(FIRST, "First steps"),
            new Topic("tutorial", "A first procedure, step by step"), new Topic("how-do-i-say", "How do I say \u2026"),
            new Topic("new-procedure", "A new procedure, by questions"),
            new Topic("writing", "Keys and order of work"), new Topic("find", "Finding over all procedures"),
            new Topic("files", "When a file changes outside"), new Topic("settings", "Settings"),
            new Topic("measurements", "Measurements and limits"), new Topic("findings", "Findings and paths"),
            new Topic("faults", "Faults, order and examples"), new Topic("fault-table", "The fault table"), new Topic("chart", "The chart of the steps"),
            new Topic("compare", "Comparing two revisions"),
            new Topic("cards", "Cards, trees and reports"),
            new Topic("walk", "Walking a procedure in the window"), new Topic("bench-page", "Walking a procedure at the bench"),
            new Topic("quality", "The quality report"), new Topic("command-line", "Without a window"),
            new Topic("flawed-bench", "A bench full of mistakes"));

    private static final List<Topic> REFERENCE = LanguageReference.pages().stream()
            .map(page -> new Topic("reference-" + page.id(), page.title())).toList();

    private static final Map<String, String> TITLES = RuleIndex.headers().stream()
            .collect(Collectors.toUnmodifiableMap(RuleHeader::id, RuleHeader::summary));
    private static final Map<String, String> READ = new ConcurrentHashMap<>();

    private HelpTopics() {
    }

    static List<Topic> own() {
        return OWN;
    }

    /** The pages of the reference. */
    static List<Topic> reference() {
        return REFERENCE;
    }

    /** The rules under their headings. */
    static Map<RuleHeader.Group, List<RuleHeader>> rules() {
        return RuleIndex.byGroup();
    }

    /** What a rule looks for, in words; its id is for machines. */
    static String ruleTitle(String id) {
        return TITLES.getOrDefault(id, id);
    }

    /** The pages that hold every word, in the order of the contents; those whose title does come first. Reads them all the first time. */
    static List<Topic> holding(WantedWords wanted) {
        List<Topic> all = new ArrayList<>(OWN);
        all.addAll(REFERENCE);
        RuleIndex.headers().forEach(header -> all.add(new Topic(header.id(), header.summary())));
        Map<Boolean, List<Topic>> found = all.stream().filter(topic -> wanted.allIn(topic.title() + "\n" + page(topic.id()).orElse("")))
                .collect(Collectors.partitioningBy(topic -> wanted.allIn(topic.title())));
        return Stream.concat(found.get(true).stream(), found.get(false).stream()).toList();
    }

    /** Every topic there is. */
    static List<String> ids() {
        List<String> ids = new ArrayList<>(OWN.stream().map(Topic::id).toList());
        REFERENCE.forEach(topic -> ids.add(topic.id()));
        RuleIndex.headers().forEach(header -> ids.add(header.id()));
        return ids;
    }

    /** A page as Markdown, with the titles of rules where the sources have their ids; absent when there is none of that id. */
    static Optional<String> page(String id) {
        if (!READ.containsKey(id)) {
            source(id).map(HelpTopics::inWords).ifPresent(page -> READ.put(id, page));
        }
        return Optional.ofNullable(READ.get(id));
    }

    private static String inWords(String markdown) {
        String words = markdown;
        for (RuleHeader header : RuleIndex.headers()) {
            words = words.replace("page of " + header.id() + ".", "page \"" + header.summary() + "\".").replace("`" + header.id() + "`", "**" + header.summary() + "**").replaceAll("(?m)(//\\s*\\^+) " + header.id() + "$", "$1 here");
        }
        return words;
    }

    private static Optional<String> source(String id) {
        Optional<String> reference = LanguageReference.pages().stream().filter(page -> id.equals("reference-" + page.id()))
                .map(LanguageReference.Page::markdown).findFirst();
        if (reference.isPresent()) {
            return reference;
        }
        if (OWN.stream().noneMatch(topic -> topic.id().equals(id))) {
            return RulePages.page(id).map(page -> page.markdown().replaceFirst("^# .*\n\n(.*)\n", "# $1\n"));
        }
        try (InputStream page = HelpTopics.class.getResourceAsStream("/help/" + id + ".md")) {
            return page == null ? Optional.empty()
                    : Optional.of(new String(page.readAllBytes(), StandardCharsets.UTF_8).replace("\r\n", "\n"));
        } catch (IOException unreadable) {
            ILog.of(HelpTopics.class).error("The help page " + id + " cannot be read.", unreadable);
            return Optional.empty();
        }
    }
}
