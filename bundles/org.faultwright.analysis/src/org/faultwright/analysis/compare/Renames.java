/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.faultwright.procedure.ClosingStep;
import org.faultwright.procedure.Declaration;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Note;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Routine;
import org.faultwright.procedure.Step;

/**
 * What is called otherwise today. A step is known again by its words, by what it reads, handles and performs, by the steps before and after it and by
 * the faults that it mends; so that what it lost with its name is told of it.
 */
final class Renames {
    /** Of two steps with less in common nobody could say that they are one. */
    private static final double ENOUGH = 3;
    private static final double WORDS = 4;

    private record Pair(Step was, Step now, double common) {
    }

    private Renames() {
    }

    static Map<String, String> of(Procedure was, Procedure now) {
        Map<String, String> names = new LinkedHashMap<>();
        sameWords(was.steps(), now.steps(), names);
        likely(was, now, names);
        return names;
    }

    /** A step that is gone and a new one of the same kind with the same words, if there is only one of each. */
    private static void sameWords(List<Step> before, List<Step> after, Map<String, String> names) {
        List<Step> gone = without(before, after, names);
        List<Step> fresh = without(after, before, names);
        for (Step step : gone) {
            List<Step> like = fresh.stream().filter(other -> alike(step, other)).toList();
            if (like.size() == 1 && gone.stream().filter(other -> alike(other, step)).count() == 1) {
                names.put(step.name().text(), like.get(0).name().text());
            }
        }
    }

    private static boolean alike(Step one, Step other) {
        return one.getClass() == other.getClass() && !one.title().isEmpty() && one.title().equals(other.title());
    }

    private static List<Step> without(List<Step> these, List<Step> others, Map<String, String> names) {
        return these.stream().filter(step -> !ClosingStep.is(step) && others.stream().noneMatch(other -> other.name().text().equals(step.name().text()))
                && !names.containsKey(step.name().text()) && !names.containsValue(step.name().text())).toList();
    }

    private static void likely(Procedure was, Procedure now, Map<String, String> names) {
        List<Step> gone = without(was.steps(), now.steps(), names);
        List<Step> fresh = without(now.steps(), was.steps(), names);
        List<Pair> pairs = new ArrayList<>();
        gone.forEach(step -> fresh.stream().filter(other -> other.getClass() == step.getClass())
                .forEach(other -> pairs.add(new Pair(step, other, common(was, step, now, other)))));
        pairs.sort(Comparator.comparingDouble(Pair::common).reversed());
        for (Pair pair : pairs) {
            if (pair.common() >= ENOUGH && !names.containsKey(pair.was().name().text()) && !names.containsValue(pair.now().name().text())) {
                names.put(pair.was().name().text(), pair.now().name().text());
            }
        }
    }

    private static double common(Procedure was, Step one, Procedure now, Step other) {
        return WORDS * share(words(one.title()), words(other.title()))
                + 2 * share(mentioned(one), mentioned(other)) + 2 * share(texts(one.frame().handles()), texts(other.frame().handles()))
                + 2 * share(mends(was, one), mends(now, other))
                + share(targets(one), targets(other)) + share(sources(was, one), sources(now, other));
    }

    /** From 0 for nothing in common to 1 for all; nothing where both are empty. */
    static double share(Set<String> one, Set<String> other) {
        Set<String> all = new HashSet<>(one);
        all.addAll(other);
        Set<String> both = new HashSet<>(one);
        both.retainAll(other);
        return all.isEmpty() ? 0 : (double) both.size() / all.size();
    }

    private static Set<String> words(String title) {
        return Arrays.stream(title.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+")).filter(word -> !word.isEmpty()).collect(Collectors.toSet());
    }

    private static Set<String> mentioned(Step step) {
        return step.mentions().stream().map(mention -> mention.thing() + " " + mention.name()).collect(Collectors.toSet());
    }

    private static Set<String> texts(Collection<Name> names) {
        return names.stream().map(Name::text).collect(Collectors.toSet());
    }

    private static Set<String> mends(Procedure procedure, Step step) {
        return procedure.faults().stream().filter(fault -> fault.remedies().stream().anyMatch(remedy -> remedy.text().equals(step.name().text())))
                .map(fault -> fault.name().text()).collect(Collectors.toSet());
    }

    private static Set<String> targets(Step step) {
        return texts(step.outcomes().stream().flatMap(outcome -> outcome.target().stream()).toList());
    }

    private static Set<String> sources(Procedure procedure, Step step) {
        return procedure.steps().stream().flatMap(from -> from.outcomes().stream().filter(outcome -> leads(outcome, step)).map(outcome -> from.name() + " " + outcome.key()))
                .collect(Collectors.toSet());
    }

    private static boolean leads(Outcome outcome, Step step) {
        return outcome.target().filter(target -> target.text().equals(step.name().text())).isPresent();
    }

    /** Declarations gone and new that say the same under another name: a note by its hazard, others by their titles, a routine by its steps too. */
    static Map<String, String> declared(List<? extends Declaration> was, List<? extends Declaration> now) {
        Map<String, String> names = new LinkedHashMap<>();
        List<? extends Declaration> gone = missing(was, now);
        List<? extends Declaration> fresh = missing(now, was);
        for (Declaration one : gone) {
            List<? extends Declaration> like = fresh.stream().filter(other -> other.getClass() == one.getClass() && isLike(one, other)).toList();
            if (like.size() == 1 && !names.containsValue(like.get(0).name().text())) {
                names.put(one.name().text(), like.get(0).name().text());
            }
        }
        return names;
    }

    private static List<? extends Declaration> missing(List<? extends Declaration> these, List<? extends Declaration> others) {
        return these.stream().filter(one -> others.stream().noneMatch(other -> other.name().text().equals(one.name().text()))).toList();
    }

    private static boolean isLike(Declaration one, Declaration other) {
        if (one instanceof Routine first && other instanceof Routine second
                && share(stepNames(first), stepNames(second)) > 0.5) {
            return true;
        }
        boolean sameTitle = !one.title().isBlank() && one.title().equals(other.title());
        return sameTitle || one instanceof Note note && other instanceof Note like && note.hazard().equals(like.hazard());
    }

    private static Set<String> stepNames(Routine routine) {
        return texts(routine.steps().stream().map(Step::name).toList());
    }
}
