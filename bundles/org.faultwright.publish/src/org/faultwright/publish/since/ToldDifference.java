/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.publish.since;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.compare.Difference;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;
import org.faultwright.publish.Wording;
import org.faultwright.publish.page.PlainText;

/**
 * A difference in words for somebody who knows the card and not the text: things by their titles, and what is gone or new said as that.
 *
 * @param what such as {@code step 11 "Bank voltage": notes read}
 * @param was  empty for what is new
 * @param now  empty for what is gone
 */
public record ToldDifference(Difference.Kind kind, Difference.Loss loss, String what, String was, String now, String meaning) {
    private static final int LONGEST_TITLE = 72;
    private static final Pattern WORD = Pattern.compile("[\\p{L}_][\\p{L}\\p{N}_]*");
    private static final Pattern HUMPS = Pattern.compile("[A-Z][a-z0-9]+([A-Z][a-z0-9]*)+");
    private static final Pattern NOUN = Pattern.compile("^(Step|Routine|Note|Condition|Instrument|Point|Part|Indicator|Fault), ");
    private static final String ASSURED = "proved and tested before it";
    private static final String PASSED = " passed";
    /** What an author says in sentences. */
    private static final Set<String> SENTENCES = Set.of("words", "hazard", "consequence", "avoid", "hint", "report", "meaning", "source", "refers to", "live because", "erases",
            "equipment", "complaints");
    private static final Set<String> LISTS = Set.of("notes read", "needs", "sets", "handles", "hazards", "covers", "protective tests", "tried first", "remedies", "live", "charged",
            "proved at", "proves", "rated");

    /** In the order of the differences. @param numbered what a step of the procedure's own is called on its card, where that is known */
    public static List<ToldDifference> of(SinceRelease since, Function<Step, Optional<String>> numbered) {
        Map<String, String> titles = new HashMap<>();
        titles(since.earlier(), step -> Optional.empty(), titles);
        titles(since.now(), numbered, titles);
        return since.differences().stream().map(one -> told(one, titles)).distinct().toList();
    }

    private static void titles(Procedure procedure, Function<Step, Optional<String>> numbered, Map<String, String> titles) {
        procedure.scope().routines().forEach(routine -> routine.steps().forEach(step -> put(step, Optional.empty(), titles)));
        Stream.concat(procedure.scope().all(), procedure.faults().stream()).forEach(one -> put(one, Optional.empty(), titles));
        procedure.steps().forEach(step -> put(step, numbered.apply(step), titles));
    }

    private static void put(Declaration one, Optional<String> called, Map<String, String> titles) {
        String title = PlainText.line(one instanceof Step step ? Wording.title(step) : one.title());
        if (called.isPresent()) {
            titles.put(one.name().text(), "step " + called.get());
        } else if (!title.isBlank()) {
            titles.put(one.name().text(), "\u201C" + shortened(title) + "\u201D");
        }
    }

    private static String shortened(String title) {
        int space = title.length() <= LONGEST_TITLE ? -1 : title.lastIndexOf(' ', LONGEST_TITLE);
        return title.length() <= LONGEST_TITLE ? title : title.substring(0, space < 1 ? LONGEST_TITLE : space) + "\u2026";
    }

    private static ToldDifference told(Difference one, Map<String, String> titles) {
        int colon = one.what().lastIndexOf(": ");
        String head = colon < 0 ? one.what() : one.what().substring(0, colon);
        String member = colon < 0 ? "" : one.what().substring(colon + 2);
        boolean itself = colon < 0 && !Character.isLowerCase(head.charAt(0));
        String what = colon < 0 && !itself ? head : head(head, titles) + (member.isEmpty() ? "" : ": " + member);
        if (member.equals("name")) {
            return new ToldDifference(one.kind(), one.loss(), what, one.was(), one.now(), one.meaning());
        }
        // a sentence that happens to be a name of the text, such as the title "Supply" of Supply, is told as it stands
        boolean sentence = SENTENCES.contains(member);
        String was = sentence && !one.was().equals(Difference.ABSENT) ? one.was() : absent(one.was(), itself, titles);
        String now = sentence && !one.now().equals(Difference.ABSENT) ? one.now() : absent(one.now(), itself, titles);
        return new ToldDifference(one.kind(), one.loss(), what, was, now, named(one.meaning(), titles));
    }

    private static String absent(String words, boolean spoken, Map<String, String> titles) {
        return words.equals(Difference.ABSENT) ? "" : spoken && !words.startsWith("leads to ") && !words.startsWith("ends at ") ? titles.getOrDefault(words, words) : named(words, titles);
    }

    /** Such as {@code "Prove dead", "Read across", gone}. */
    private static String head(String names, Map<String, String> titles) {
        if (titles.containsKey(names)) {
            return titles.get(names);
        }
        List<String> parts = new ArrayList<>();
        StringBuilder rest = new StringBuilder();
        for (String word : names.split(" ")) {
            if (titles.containsKey(word)) {
                take(rest, parts);
                parts.add(titles.get(word));
            } else {
                rest.append(rest.isEmpty() ? "" : " ").append(humps(word));
            }
        }
        take(rest, parts);
        return NOUN.matcher(String.join(", ", parts)).replaceFirst("$1 ").replaceFirst("^Step step ", "step ");
    }

    private static void take(StringBuilder rest, List<String> parts) {
        if (!rest.isEmpty()) {
            parts.add(rest.toString());
            rest.setLength(0);
        }
    }

    private static String humps(String word) {
        return HUMPS.matcher(word).matches() ? word.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(Locale.ROOT) : word;
    }

    /** The names of the text among the words, by their titles. */
    private static String named(String words, Map<String, String> titles) {
        if (titles.containsKey(words)) {
            return titles.get(words);
        }
        int leads = words.startsWith("leads to ") ? "leads to ".length() : 0;
        if (leads > 0 && titles.containsKey(words.substring(leads))) {
            return "leads to " + titles.get(words.substring(leads));
        }
        return WORD.matcher(words).replaceAll(found -> Matcher.quoteReplacement(titles.containsKey(found.group()) ? titles.get(found.group()) : humps(found.group())));
    }

    /** Such as {@code step 11 "Bank voltage": notes read: no longer "Capacitors stay charged"}. */
    public String sentence() {
        return what.endsWith(": " + ASSURED) ? what.substring(0, what.length() - ASSURED.length()) + unassured() : what + change();
    }

    /** Such as {@code a way comes to it without the protective tests conductor, leakage}. */
    private String unassured() {
        List<String> all = List.of(was.split(", "));
        String tests = all.stream().filter(one -> one.endsWith(PASSED)).map(one -> one.substring(0, one.length() - PASSED.length())).collect(Collectors.joining(", "));
        String proofs = all.stream().filter(one -> !one.endsWith(PASSED)).collect(Collectors.joining(", "));
        return "a way comes to it" + (tests.isEmpty() ? "" : " without the protective tests passed before (" + tests + ")") + (tests.isEmpty() || proofs.isEmpty() ? "" : " and")
                + (proofs.isEmpty() ? "" : " without the proof that was made before (" + proofs + ")");
    }

    private String change() {
        String ending = meaning.isEmpty() ? "" : " (" + meaning + ")";
        boolean member = what.contains(": ") || Character.isLowerCase(what.charAt(0)) && !what.startsWith("step ");
        if (was.isEmpty() || now.isEmpty()) {
            String there = was.isEmpty() ? now : was;
            if (!member && what.endsWith("\u201C" + shortened(there) + "\u201D")) {
                return (was.isEmpty() ? " is new" : " is gone") + ending;
            }
            return (member ? ": " + (was.isEmpty() ? "now " : "no longer ") : (was.isEmpty() ? " is new: " : " is gone: ")) + (there.equals("yes") ? "said" : there) + ending;
        }
        if (LISTS.contains(what.substring(what.lastIndexOf(": ") < 0 ? 0 : what.lastIndexOf(": ") + 2))) {
            List<String> then = Arrays.asList(was.split(", "));
            List<String> today = Arrays.asList(now.split(", "));
            String lost = then.stream().filter(item -> !today.contains(item)).collect(Collectors.joining(", "));
            String fresh = today.stream().filter(item -> !then.contains(item)).collect(Collectors.joining(", "));
            if (!lost.isEmpty() || !fresh.isEmpty()) {
                return ": " + (lost.isEmpty() ? "" : "no longer " + lost) + (lost.isEmpty() || fresh.isEmpty() ? "" : "; ") + (fresh.isEmpty() ? "" : "now also " + fresh) + ending;
            }
        }
        return ": " + was + " \u2192 " + now + ending;
    }

    /** Such as {@code Removed}; empty where no protection went. */
    public String weight() {
        return loss == Difference.Loss.NONE ? "" : loss.name().charAt(0) + loss.name().substring(1).toLowerCase(Locale.ROOT);
    }
}
