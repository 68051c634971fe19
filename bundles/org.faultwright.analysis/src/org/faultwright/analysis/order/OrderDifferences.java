/*
 * Copyright (c) 2026 The Faultwright contributors
 * SPDX-License-Identifier: EPL-2.0
 */
package org.faultwright.analysis.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.faultwright.analysis.faults.PresumedTable;
import org.faultwright.analysis.trace.FaultWalks;
import org.faultwright.procedure.Fault;
import org.faultwright.procedure.Name;
import org.faultwright.procedure.Outcome;
import org.faultwright.procedure.Procedure;
import org.faultwright.procedure.Step;

/**
 * Where two orders of the same steps part. Every sequence of outcomes of the new tree is walked, those that no fault of the table shows
 * as well, and each in the old tree too, with whatever the old one asks besides left open. The first time round a loop stands for all.
 */
final class OrderDifferences {
    /** More ends than a tree that a person can follow has; beyond them nothing is proved. */
    private static final int MOST = 100_000;

    /** What a difference means. */
    enum Kind {
        /** The old tree comes to no such conclusion with these outcomes. */
        NEVER_BEFORE,
        /** The old tree concludes this fault only behind a test that the new one has not asked. */
        WITHOUT_EVIDENCE,
        /** A single fault shows all of it, and is concluded otherwise. */
        ONE_FAULT,
        /** No fault explains what is shown, and the new tree hands on where the old one may still find something. */
        GIVEN_UP,
        /** Several faults at once, of which another is found first. */
        SEVERAL_FAULTS
    }

    /**
     * One sequence with two ends.
     *
     * @param outcomes what each step shows, in the order of the new tree
     * @param after    the conclusion of the new tree
     * @param before   one that the old tree may come to
     * @param besides  what the old tree asks besides on its way there
     * @param about    the fault, or the test, that it is about; empty where there is none
     */
    record Difference(Kind kind, Map<String, String> outcomes, String after, String before, Map<String, String> besides, String about) {
        /** Whether the new tree means something else than its author did. */
        boolean changesWhatIsMeant() {
            return kind != Kind.SEVERAL_FAULTS;
        }

        @Override
        public String toString() {
            return switch (kind) {
                case NEVER_BEFORE -> listed(outcomes) + " would lead to \"" + after + "\", and leads to \"" + before + "\" as written.";
                case WITHOUT_EVIDENCE -> listed(outcomes) + " would lead to \"" + after + "\" without \"" + about + "\", on which it rests as written.";
                case ONE_FAULT -> listed(outcomes) + more() + " is what \"" + about + "\" shows; it would lead to \"" + after + "\", and leads to \""
                        + before + "\" as written.";
                case GIVEN_UP -> "No fault explains " + listed(outcomes) + "; it would be handed on at once, and as written"
                        + (besides.isEmpty() ? "" : ", with " + listed(besides) + ",") + " may still lead to \"" + before + "\".";
                case SEVERAL_FAULTS -> listed(outcomes) + " leads to \"" + after + "\"; as written"
                        + (besides.isEmpty() ? "" : ", with " + listed(besides) + ",") + " to \"" + before + "\".";
            };
        }

        private String more() {
            return besides.isEmpty() ? "" : " with " + listed(besides);
        }

        private static String listed(Map<String, String> outcomes) {
            return outcomes.isEmpty() ? "this" : outcomes.entrySet().stream().map(entry -> entry.getKey() + " " + entry.getValue())
                    .collect(Collectors.joining(", "));
        }
    }

    /**
     * A way of the old tree, seen from its end: ways share what they have in common, and nothing is copied where they part.
     *
     * @param earlier absent at the beginning, where nothing is asked yet
     */
    private record Walked(Optional<Walked> earlier, String step, String outcome) {
        static final Walked NOTHING = new Walked(Optional.empty(), "", "");

        Walked then(String asked, String shows) {
            return new Walked(Optional.of(this), asked, shows);
        }

        /** From the last step to the first one. */
        Stream<Walked> backwards() {
            return Stream.iterate(this, at -> at.earlier.isPresent(), at -> at.earlier.get());
        }

        /** What it shows besides this, in the order in which it is asked. */
        Map<String, String> besides(Map<String, String> shown) {
            List<Walked> all = new ArrayList<>(backwards().filter(one -> !shown.containsKey(one.step)).toList());
            Collections.reverse(all);
            Map<String, String> more = new LinkedHashMap<>();
            all.forEach(one -> more.put(one.step, one.outcome));
            return more;
        }
    }

    private final Procedure before;
    private final Procedure after;
    private final Map<String, String> copies;
    private final FaultWalks walks;
    private final PresumedTable table;
    private final Map<String, Step> writtenSteps = new HashMap<>();
    /** Both trees are walked many times; by the step itself, as comparing two is as long as their texts. */
    private final Map<Step, Map<String, Collection<Step>>> forks = new IdentityHashMap<>();
    /** By step and outcome. */
    private final Map<String, Map<String, BitSet>> showing = new HashMap<>();
    private final List<Difference> found = new ArrayList<>();
    private int ends;

    private OrderDifferences(FaultWalks walks, Procedure before, Procedure after, Map<String, String> copies) {
        this.walks = walks;
        this.before = before;
        this.after = after;
        this.copies = copies;
        this.table = new PresumedTable(walks.table());
        before.steps().forEach(step -> writtenSteps.putIfAbsent(step.name().text(), step));
        Stream.of(before, after).forEach(procedure -> procedure.steps().forEach(step -> forks.computeIfAbsent(step, one -> forks(one, procedure))));
    }

    /**
     * Absent where there are too many sequences to walk them all.
     *
     * @param walks  those of the old procedure
     * @param copies by the name of each step that the new one has a second time, the step it repeats
     */
    static Optional<List<Difference>> between(FaultWalks walks, Procedure before, Procedure after, Map<String, String> copies) {
        OrderDifferences differences = new OrderDifferences(walks, before, after, copies);
        first(after).ifPresent(step -> differences.walk(step, new LinkedHashMap<>(), new HashSet<>()));
        return differences.ends > MOST ? Optional.empty() : Optional.of(List.copyOf(differences.found));
    }

    private static Optional<Step> first(Procedure procedure) {
        return procedure.begin().isPresent() ? procedure.begin().flatMap(procedure::step) : procedure.steps().stream().findFirst();
    }

    private String own(Step step) {
        return copies.getOrDefault(step.name().text(), step.name().text());
    }

    /** @param shown and @param met are as they were when it returns */
    private void walk(Step step, Map<String, String> shown, Set<String> met) {
        String name = own(step);
        if (ends > MOST || !met.add(name)) {
            return;
        }
        if (step instanceof Step.Conclude conclusion) {
            ends++;
            compare(conclusion, shown);
        } else {
            forks.get(step).forEach((outcome, targets) -> {
                if (!outcome.isEmpty()) {
                    shown.put(name, outcome);
                }
                targets.forEach(then -> walk(then, shown, met));
                shown.remove(name);
            });
        }
        met.remove(name);
    }

    /** @param met is as it was when it returns */
    private void ways(Step step, Map<String, String> given, Walked walked, Set<String> met, Map<String, List<Walked>> to) {
        String name = step.name().text();
        if (ends > MOST || !met.add(name)) {
            return;
        }
        if (step instanceof Step.Conclude) {
            ends++;
            to.computeIfAbsent(name, end -> new ArrayList<>()).add(walked);
        } else {
            String known = given.get(name);
            forks.get(step).forEach((outcome, targets) -> {
                if (known == null || outcome.isEmpty() || known.equals(outcome)) {
                    Walked next = outcome.isEmpty() ? walked : walked.then(name, outcome);
                    targets.forEach(then -> ways(then, given, next, met, to));
                }
            });
        }
        met.remove(name);
    }

    /** By outcome, the steps that it may lead to; one entry without a word where all outcomes lead to the same step. */
    private static Map<String, Collection<Step>> forks(Step step, Procedure procedure) {
        Map<String, Map<String, Step>> forks = new LinkedHashMap<>();
        for (Outcome outcome : step.outcomes()) {
            Map<String, Step> targets = new LinkedHashMap<>();
            Stream.concat(outcome.target().stream(), outcome.repeat().map(Outcome.Repeat::otherwise).stream())
                    .flatMap(name -> procedure.step(name).stream()).forEach(target -> targets.putIfAbsent(target.name().text(), target));
            forks.put(outcome.key(), targets);
        }
        boolean together = forks.values().stream().map(Map::keySet).distinct().count() == 1;
        Map<String, Collection<Step>> found = new LinkedHashMap<>();
        forks.forEach((outcome, targets) -> found.put(together ? "" : outcome, targets.values()));
        return found;
    }

    private void compare(Step.Conclude conclusion, Map<String, String> walked) {
        String end = conclusion.name().text();
        Map<String, List<Walked>> before = new LinkedHashMap<>();
        first(this.before).ifPresent(begin -> ways(begin, walked, Walked.NOTHING, new HashSet<>(), before));
        if (before.keySet().equals(Set.of(end)) && conclusion.finds().isEmpty()) {
            return;
        }
        Map<String, String> shown = new LinkedHashMap<>(walked);
        if (!before.containsKey(end)) {
            before.keySet().stream().findFirst().ifPresent(other -> found.add(new Difference(Kind.NEVER_BEFORE, shown, end, other, Map.of(), "")));
            return;
        }
        Optional<String> missing = conclusion.finds().isEmpty() ? Optional.empty() : missing(before.get(end), shown);
        if (missing.isPresent()) {
            found.add(new Difference(Kind.WITHOUT_EVIDENCE, shown, end, end, Map.of(), missing.get()));
            return;
        }
        before.forEach((other, ways) -> {
            if (!other.equals(end)) {
                found.add(difference(conclusion, shown, other, ways));
            }
        });
    }

    private Difference difference(Step.Conclude conclusion, Map<String, String> shown, String other, List<Walked> ways) {
        String end = conclusion.name().text();
        BitSet showing = showing(shown, step -> true);
        for (Walked way : ways) {
            BitSet both = (BitSet) showing.clone();
            way.backwards().filter(one -> !shown.containsKey(one.step())).forEach(one -> both.and(showing(one.step(), one.outcome())));
            if (!both.isEmpty()) {
                return new Difference(Kind.ONE_FAULT, shown, end, other, way.besides(shown), walks.table().faults().get(both.nextSetBit(0)).name().text());
            }
        }
        Walked nearest = ways.stream().min(Comparator.comparing(way -> way.backwards().filter(one -> !shown.containsKey(one.step())).count())).orElseThrow();
        boolean givenUp = conclusion.finds().isEmpty() && finds(other) && showing(shown, this::tells).isEmpty();
        return new Difference(givenUp && !isRepaired(shown) ? Kind.GIVEN_UP : Kind.SEVERAL_FAULTS, shown, end, other, nearest.besides(shown), "");
    }

    private boolean finds(String conclusion) {
        return step(conclusion).filter(step -> step instanceof Step.Conclude conclude && !conclude.finds().isEmpty()).isPresent();
    }

    /** Whether a repair was tried on the way: what is handed on behind it was explained before. */
    private boolean isRepaired(Map<String, String> shown) {
        return shown.keySet().stream().anyMatch(name -> step(name).filter(walks::judgesRepair).isPresent());
    }

    private Optional<Step> step(String name) {
        return Optional.ofNullable(writtenSteps.get(name));
    }

    /** Whether the fault table says something of what the step shows before a repair. */
    private boolean tells(Step step) {
        return !walks.judgesRepair(step) && step.frame().confirms().isEmpty() && !walks.table().isSilentAbout(step);
    }

    /** The faults that show all of this, as far as it is about these steps, by their numbers in the table. */
    private BitSet showing(Map<String, String> shown, Predicate<Step> about) {
        BitSet showing = new BitSet();
        showing.set(0, walks.table().faults().size());
        shown.forEach((name, outcome) -> {
            if (step(name).filter(about).isPresent()) {
                showing.and(showing(name, outcome));
            }
        });
        return showing;
    }

    /** The faults that may show this at a step. Not to be changed. */
    private BitSet showing(String name, String outcome) {
        return showing.computeIfAbsent(name, any -> new HashMap<>()).computeIfAbsent(outcome, any -> {
            List<Fault> faults = walks.table().faults();
            BitSet may = new BitSet();
            for (int i = 0; i < faults.size(); i++) {
                Fault fault = faults.get(i);
                may.set(i, step(name).map(step -> table.cell(fault, step)).filter(cell -> !cell.isSilent() && !cell.outcomes().contains(outcome)).isEmpty());
            }
            return may;
        });
    }

    /** The test behind which alone the old tree comes to this end, where the new one has not asked it. */
    private Optional<String> missing(List<Walked> ways, Map<String, String> shown) {
        Function<Walked, Optional<String>> last = way -> way.backwards().map(Walked::step).filter(name -> step(name).filter(this::tells).isPresent())
                .findFirst();
        boolean rests = ways.stream().map(last).anyMatch(name -> name.isEmpty() || shown.containsKey(name.get()));
        return rests ? Optional.empty() : ways.stream().map(last).flatMap(Optional::stream).findFirst();
    }
}
